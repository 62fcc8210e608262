package scenarios_test

import (
	"context"
	"errors"
	"testing"

	"dwellcast/scenarios"
)

// A long run that is interrupted at any moment says what is known by then, or that nothing is: within a warm-up that is given.
func TestLongRunsMayBeInterruptedAtAnyMoment(t *testing.T) {
	for _, changes := range [][]string{
		{"run.length=400 h"},
		{"run.length=400 h", "run.warm_up=200 h"},
	} {
		file, err := scenarios.Open("example:tandem", changes)
		if err != nil {
			t.Fatal(err)
		}
		known, unknown := 0, 0
		for _, stop := range []int{0, 1, 2, 5, 10, 199, 201, 2500} {
			ctx, cancel := context.WithCancel(context.Background())
			if stop == 0 {
				cancel()
			}
			f, err := scenarios.Run(ctx, file, scenarios.Options{Seed: 1, Progress: func(done, _ int) {
				if done >= stop {
					cancel()
				}
			}})
			cancel()
			switch {
			case errors.Is(err, scenarios.ErrNothingYet):
				unknown++
			case err != nil:
				t.Errorf("%q, stopped after %d: %v", changes, stop, err)
			case !f.Interrupted:
				t.Errorf("%q, stopped after %d: it does not say that it was interrupted", changes, stop)
			default:
				known++
			}
		}
		if known == 0 || len(changes) > 1 && unknown == 0 {
			t.Errorf("%q: %d known, %d unknown", changes, known, unknown)
		}
	}
}
