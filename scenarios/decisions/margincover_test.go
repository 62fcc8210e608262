package decisions_test

import (
	"math"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/stats"
)

// coverLine is one machine at 1200 cartons/h for half an hour, whose margins are known.
func coverLine(t testing.TB, what string) *scenarios.File { return oneMachine(t, "30 min", 1200, what) }

// renewals is the mean number of cartons in so many seconds. One carton comes at once, and then one every 3 s, or, with the chance q,
// after a stop of r seconds: the renewal function to its constant term (Cox 1962, from memory).
func renewals(seconds, q, r float64) float64 {
	mean, variance := 3+q*(r-3), q*(1-q)*(r-3)*(r-3)
	return 1 + seconds/mean + (variance/(mean*mean)-1)/2
}

// marginLines have known margins: of a share of rejects, with 98 % of 95 % to be kept, or 562 of 600 to be made on average, or in
// half of the shifts; and of the length of a stop.
var marginLines = []struct {
	name, what, path string
	spec             decisions.MarginSpec
	margin           float64
}{
	{"kept rejects", "    reject: 5 %\n", "machine.reject", decisions.MarginSpec{Keep: 0.98}, 100 * (1 - 0.98*0.95)},
	{"rejects", "    reject: 5 %\n", "machine.reject", decisions.MarginSpec{Target: 562}, 100 * (1 - 562.0/600)},
	{"rejects by chance", "    reject: 5 %\n", "machine.reject", decisions.MarginSpec{Target: 562, Chance: 0.5}, 100 * shareFor(600, 38)},
	{"clearing", "    stops: [{cause: jam, chance: 0.5 %, clear: 60 s, attendant: false}]\n", "machine.stops.jam.clear", decisions.MarginSpec{Target: 525}, clearFor(525)},
}

// shareFor is the share with which half of all shifts have at most so many rejects of n cartons: a root of the binomial law.
func shareFor(n, most int) float64 {
	return lastWith(0, 1, func(p float64) bool {
		term := math.Pow(1-p, float64(n))
		sum := term
		for k := range most {
			term *= float64(n-k) / float64(k+1) * p / (1 - p)
			sum += term
		}
		return sum >= 0.5
	})
}

// clearFor is the length of a stop with which so many cartons are made on average.
func clearFor(target float64) float64 {
	return lastWith(3, 600, func(r float64) bool { return renewals(1800, 0.005, r) >= target })
}

// lastWith is the last number between two for which something holds that holds for the first and not for the second.
func lastWith(low, high float64, holds func(float64) bool) float64 {
	for range 60 {
		if middle := (low + high) / 2; holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// The interval of a limit holds the true one in 90 to 99 % of studies, at 20, 100 and 400 shifts. What could not come by chance once
// in a thousand times counts as a miss.
func TestMarginCoverage(t *testing.T) {
	needsLong(t)
	for _, line := range marginLines {
		for _, shifts := range []int{20, 100, 400} {
			studies, covered, width := max(8, 800/shifts), 0, 0.0
			for seed := range studies {
				spec := line.spec
				spec.Paths, spec.Replications = []string{line.path}, shifts
				m, err := decisions.FindMargins(background, lab(scenarios.Options{Seed: uint64(seed) + 1}), coverLine(t, line.what), 1, spec)
				if err != nil {
					t.Fatal(err)
				}
				at := m.List[0].At
				width += at.HalfWidth()
				if m.List[0].Found && at.Low <= line.margin && line.margin <= at.High {
					covered++
				}
			}
			least, _ := stats.CoverageBand(studies, 0.9, 0.999)
			_, most := stats.CoverageBand(studies, 0.99, 0.999)
			t.Logf("%s, %d shifts: %d of %d covered, half-width %.4g about %.4g", line.name, shifts, covered, studies, width/float64(studies), line.margin)
			if covered < least || covered > most {
				t.Errorf("%s, %d shifts: the interval holds the limit %d times of %d, want %d to %d", line.name, shifts, covered, studies, least, most)
			}
		}
	}
}
