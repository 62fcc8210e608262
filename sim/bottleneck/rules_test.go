package bottleneck_test

import (
	"testing"
	"time"

	"dwellcast/sim/bottleneck"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Equal shares give no arrow and no turning point, whatever the rounding.
func TestRulesLeaveNoiseAlone(t *testing.T) {
	blocked, starved := []float64{0.3, 0.1 + 0.2, 0}, []float64{0, 0.3, 0.1 + 0.2}
	if got := bottleneck.ArrowRule(blocked, starved, 1e-9).Stations; !cmp.Equal(got, []int{0, 1, 2}) {
		t.Errorf("stations without arrows: %v, want all", got)
	}
	if got := bottleneck.TurningPoint(blocked, starved, 1e-9); got != nil {
		t.Errorf("turning points %v, want none", got)
	}
	if got := bottleneck.ArrowRule(nil, nil, 0); got.Primary != -1 || got.Stations != nil {
		t.Errorf("without stations: %+v", got)
	}
}

// A turning point by hand: 0.3 and 0.1 before, 0.05 = 0.03 + 0.02 at it,
// starved more after it.
func TestTurningPointInside(t *testing.T) {
	blocked := []float64{0.3, 0.1, 0.03, 0.02, 0}
	starved := []float64{0, 0.05, 0.02, 0.1, 0.2}
	if got := bottleneck.TurningPoint(blocked, starved, 0); !cmp.Equal(got, []int{2}) {
		t.Errorf("turning points %v, want [2]", got)
	}
}

// There is always a station from which no arrow points away, and the
// primary is one of them.
func TestArrowRuleFindsOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "n")
		share := rapid.Float64Range(0, 1)
		blocked := rapid.SliceOfN(share, n, n).Draw(t, "blocked")
		starved := rapid.SliceOfN(share, n, n).Draw(t, "starved")
		a := bottleneck.ArrowRule(blocked, starved, 0)
		found := false
		for _, i := range a.Stations {
			found = found || i == a.Primary
		}
		if !found {
			t.Fatalf("primary %d is not among %v", a.Primary, a.Stations)
		}
	})
}

// Periods that touch are one uninterrupted period; empty ones do not count;
// order does not matter. By hand: station 0 is active 0-7 and 9-10, mean 4;
// station 1 3-6, mean 3.
func TestAverageActivePeriodJoins(t *testing.T) {
	log := bottleneck.Log{{{9, 10}, {0, 4}, {4, 4}, {4, 7}, {8, 8}}, {{3, 6}}, nil}
	means, station := bottleneck.AverageActivePeriod(log, 0, 20)
	if diff := cmp.Diff([]time.Duration{4, 3, 0}, means); diff != "" || station != 0 {
		t.Errorf("station %d; (-want +got):\n%s", station, diff)
	}
	if _, station := bottleneck.AverageActivePeriod(bottleneck.Log{nil, nil}, 0, 20); station != -1 {
		t.Errorf("station %d of an idle line, want -1", station)
	}
	// 7/2 and 10/3 round to the same nanosecond
	if _, station := bottleneck.AverageActivePeriod(bottleneck.Log{{{0, 3}, {4, 7}, {8, 12}}, {{0, 3}, {4, 8}}}, 0, 20); station != 1 {
		t.Errorf("station %d, want 1 with the mean of 3.5 over 3.33", station)
	}
}
