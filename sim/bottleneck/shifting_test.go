package bottleneck_test

import (
	"testing"
	"time"

	"dwellcast/sim/bottleneck"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// By the definition, moment by moment: walking from choice to choice, a
// moment covered by one bottleneck period is sole, by more is shifting, by
// none has no bottleneck.
func TestShiftingByMoments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log, to := randomLog(t)
		active := grid(log, to)
		bottleneckAt := make([]map[int]bool, to)
		for now := 0; now < int(to); now++ {
			station, start, end := longestRun(active, now)
			if station < 0 {
				continue
			}
			for m := start; m < end; m++ {
				if bottleneckAt[m] == nil {
					bottleneckAt[m] = map[int]bool{}
				}
				bottleneckAt[m][station] = true
			}
			now = end - 1
		}
		want := bottleneck.Shares{Sole: make([]time.Duration, len(log)), Shifting: make([]time.Duration, len(log))}
		for _, stations := range bottleneckAt {
			for i := range stations {
				if len(stations) == 1 {
					want.Sole[i]++
				} else {
					want.Shifting[i]++
				}
			}
			switch {
			case len(stations) == 0:
				want.None++
			case len(stations) > 1:
				want.Shift++
			}
		}
		if diff := gocmp.Diff(want, bottleneck.Shifting(log, 0, to)); diff != "" {
			t.Fatalf("(-moments +rule):\n%s", diff)
		}
	})
}

// grid says for each station and each unit of time whether it is active.
func grid(log bottleneck.Log, to time.Duration) [][]bool {
	active := make([][]bool, len(log))
	for i, periods := range log {
		active[i] = make([]bool, to)
		for _, p := range periods {
			for m := p.Start; m < p.End; m++ {
				active[i][m] = true
			}
		}
	}
	return active
}

// longestRun is the longest run of active units about a moment.
func longestRun(active [][]bool, moment int) (station, start, end int) {
	station = -1
	for i, units := range active {
		if !units[moment] {
			continue
		}
		a, b := moment, moment
		for a > 0 && units[a-1] {
			a--
		}
		for b < len(units) && units[b] {
			b++
		}
		if b-a > end-start {
			station, start, end = i, a, b
		}
	}
	return station, start, end
}
