package random_test

import (
	"testing"
	"time"

	"dwellcast/sim/random"

	"pgregory.net/rapid"
)

func every(t *testing.T, interval random.Sampler) random.Every {
	t.Helper()
	e, err := random.NewEvery(interval, 1)
	if err != nil {
		t.Fatal(err)
	}
	e.Reset(1, 0)
	return e
}

func TestEveryByHand(t *testing.T) {
	e := every(t, recorded(t, 10, 4))
	for i, c := range []struct {
		run, ran time.Duration
		came     bool
		left     time.Duration
	}{
		{3, 3, false, 7}, {9, 7, true, 4}, {2, 2, false, 2}, {2, 2, true, 10}, {0, 0, false, 10}, {10, 10, true, 4},
	} {
		if ran, came := e.Run(c.run); ran != c.ran || came != c.came || e.Left() != c.left {
			t.Errorf("step %d: ran %v, came %v, left %v; want %v, %v, %v", i, ran, came, e.Left(), c.ran, c.came, c.left)
		}
	}
}

func TestEveryThatNeverComes(t *testing.T) {
	var e random.Every
	e.Reset(1, 0)
	if ran, came := e.Run(time.Hour); ran != time.Hour || came || e.Left() != 0 {
		t.Errorf("ran %v, came %v, left %v", ran, came, e.Left())
	}
}

// However the running time is cut up, the events come at the same moments.
func TestEveryDoesNotDependOnSteps(t *testing.T) {
	law, err := random.Weibull(50e-9, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	events := func(steps func() time.Duration) (moments []time.Duration) {
		e, clock := every(t, random.Drawn(law)), time.Duration(0)
		for clock < 3000 {
			for d := steps(); d > 0; {
				ran, came := e.Run(d)
				clock += ran
				d -= ran
				if came && clock <= 3000 {
					moments = append(moments, clock)
				}
			}
		}
		return moments
	}
	want := events(func() time.Duration { return 1 })
	rapid.Check(t, func(t *rapid.T) {
		longest := rapid.Int64Range(1, 400).Draw(t, "longest")
		got := events(func() time.Duration { return time.Duration(rapid.Int64Range(1, longest).Draw(t, "step")) })
		if len(got) != len(want) {
			t.Fatalf("%d events, want %d", len(got), len(want))
		}
		for i := range got {
			if got[i] != want[i] {
				t.Fatalf("event %d at %v, want %v", i, got[i], want[i])
			}
		}
	})
}
