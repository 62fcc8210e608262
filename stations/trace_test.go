package stations_test

import (
	"cmp"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/bottleneck"
	"dwellcast/stations"
)

// unitOf names a unit of a station.
type unitOf struct {
	station string
	unit    int
}

// traced runs a shift and returns its stretches, unit by unit, in the order in which they were told.
func traced(t rapid.TB, s *stations.Simulation, seed uint64, replication int) map[unitOf][]stations.Stretch {
	t.Helper()
	stretches := map[unitOf][]stations.Stretch{}
	s.Trace = func(x stations.Stretch) {
		u := unitOf{x.Station, x.Unit}
		stretches[u] = append(stretches[u], x)
	}
	shift(t, s, seed, replication)
	s.Trace = nil
	return stretches
}

func TestTraceTilesTheShift(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		s := newSimulation(t, line)
		stretches := traced(t, s, 1, 0)
		states := map[string]*[stations.NumStates]int64{}
		for u, list := range stretches {
			if states[u.station] == nil {
				states[u.station] = new([stations.NumStates]int64)
			}
			at := time.Duration(0)
			for _, x := range list {
				if x.From != at || x.To <= x.From {
					t.Fatalf("%v: stretch %+v follows %v", u, x, at)
				}
				at = x.To
				states[u.station][x.State] += int64(x.To - x.From)
			}
			if at != line.Shift.Length {
				t.Fatalf("%v: trace ends at %v", u, at)
			}
		}
		for i, st := range line.Stations {
			for state := range stations.NumStates {
				if got, want := states[st.Name][state], *s.Tally.State(i, state); got != want {
					t.Errorf("%s %v: %v traced, %v accounted", st.Name, state, time.Duration(got), time.Duration(want))
				}
			}
		}
	})
}

// The bottleneck of a line follows from when each station is active, as read off the trace. A station of several units counts
// as waiting while one of them waits: it could do more.
func TestBottleneckSharesFollowFromTheTrace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := serialLine(t, 2, 3)
		s := newSimulation(t, line)
		log := make(bottleneck.Log, len(line.Stations))
		waits := waitsOf(traced(t, s, 1, 0))
		for i, st := range line.Stations {
			log[i] = complement(waits[st.Name], line.Shift.Length)
		}
		shares := bottleneck.Shifting(log, 0, line.Shift.Length)
		toTheLastUnbroken(log, &shares, line.Shift.Length)
		for k := range line.Stations {
			if got, want := time.Duration(s.Tally.Sole[k]), shares.Sole[k]; got != want {
				t.Errorf("section %d is the sole bottleneck for %v, by its trace %v", k, got, want)
			}
			if got, want := time.Duration(s.Tally.Shifting[k]), shares.Shifting[k]; got != want {
				t.Errorf("section %d shares the bottleneck for %v, by its trace %v", k, got, want)
			}
		}
	})
}

// toTheLastUnbroken gives the bottleneck to the last of several stations that are active from before the middle of the shift to its end.
func toTheLastUnbroken(log bottleneck.Log, shares *bottleneck.Shares, end time.Duration) {
	first, last := -1, -1
	var began, since time.Duration
	for k, periods := range log {
		if n := len(periods); n > 0 && periods[n-1].End == end && end-periods[n-1].Start > end/2 {
			if at := periods[n-1].Start; first < 0 || at < began {
				first, began = k, at
			}
			last, since = k, periods[n-1].Start
		}
	}
	if first != last {
		moved := min(end-since, shares.Sole[first])
		shares.Sole[first] -= moved
		shares.Sole[last] += moved
	}
}

// TestLastOfTwoThatNeverWaitLimits: a machine that fills a buffer without limit before a slower one is not the bottleneck, though its
// active period is the longest.
func TestLastOfTwoThatNeverWaitLimits(t *testing.T) {
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: time.Hour}, Stations: []stations.Station{
		{Name: "fast", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(1)}}},
		{Name: "slow", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: stations.Unlimited}},
			Parts: []stations.Part{{Name: "act", Time: fixed(2)}}}}}
	s := newSimulation(t, line)
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	if share := float64(s.Tally.Sole[1]) / float64(time.Hour); share < 0.99 {
		t.Errorf("the slow machine holds the bottleneck for %g of the time", share)
	}
}

// waitsOf lists when any unit of each station is starved or blocked, by start.
func waitsOf(stretches map[unitOf][]stations.Stretch) map[string][]bottleneck.Period {
	waits := map[string][]bottleneck.Period{}
	for u, list := range stretches {
		for _, x := range list {
			if x.State == stations.Starved || x.State == stations.Blocked {
				waits[u.station] = append(waits[u.station], bottleneck.Period{Start: x.From, End: x.To})
			}
		}
	}
	for _, list := range waits {
		slices.SortFunc(list, func(a, b bottleneck.Period) int { return cmp.Compare(a.Start, b.Start) })
	}
	return waits
}

// complement is the time to end outside sorted periods.
func complement(periods []bottleneck.Period, end time.Duration) []bottleneck.Period {
	var rest []bottleneck.Period
	at := time.Duration(0)
	for _, p := range periods {
		if p.Start > at {
			rest = append(rest, bottleneck.Period{Start: at, End: p.Start})
		}
		at = max(at, p.End)
	}
	return append(rest, bottleneck.Period{Start: at, End: end})
}
