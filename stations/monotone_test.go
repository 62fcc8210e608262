package stations_test

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/stations"
)

// goods counts the good cartons of a shift with common random numbers.
func goods(t rapid.TB, line *stations.Line) int64 {
	t.Helper()
	return shift(t, newSimulation(t, line), 5, 2).Flow[stations.Good]
}

// altered returns a copy of the line in which station i is changed.
func altered(line *stations.Line, i int, change func(st *stations.Station)) *stations.Line {
	other := *line
	other.Stations = slices.Clone(line.Stations)
	st := &other.Stations[i]
	st.Parts = slices.Clone(st.Parts)
	if b := st.Feed.Buffer; b != nil {
		b := *b
		st.Feed.Buffer = &b
	}
	change(st)
	return &other
}

// The departure times of a serial line of single units with blocking are maxima of sums of service times: none falls when a
// service time grows, and none rises when a buffer does, on the same numbers (Tsoucas & Walrand 1989; Glasserman & Yao 1994;
// both from memory). Jams that clear by themselves are part of the service. The setting, here as part of the first station's
// recursion, and transit times keep the form.
func TestSerialLinesAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := serialLine(t, 1, 1)
		g := &lines{t: t, lanes: 1}
		for i := range line.Stations {
			st := &line.Stations[i]
			if g.chance("drawn", 2) {
				st.Parts[0].Time = g.time("cycle", 1, 9)
			}
			st.Miss.Chance, st.Miss.Tries = g.probability("retry"), stations.Endless
			if g.chance("jams", 3) {
				st.Stops = []stations.Stop{{Cause: "jam", Chance: 0.05, Clear: g.time("clear", 0, 60), Unattended: true}}
			}
		}
		i := g.count("which", 0, len(line.Stations)-1)
		base := goods(t, line)
		slow := goods(t, altered(line, i, func(st *stations.Station) {
			st.Parts[0].Time = st.Parts[0].Time.Scale(rapid.Float64Range(1, 2).Draw(t, "factor"))
		}))
		if slow > base {
			t.Errorf("%d cartons with station %d slower, %d before", slow, i+1, base)
		}
		if b := line.Stations[i].Feed.Buffer; b != nil && b.Capacity > 0 {
			small := goods(t, altered(line, i, func(st *stations.Station) { st.Feed.Buffer.Capacity = g.count("smaller", 0, b.Capacity-1) }))
			if small > base {
				t.Errorf("%d cartons with the buffer before station %d smaller, %d before", small, i+1, base)
			}
			far := goods(t, altered(line, i, func(st *stations.Station) { st.Feed.Buffer.Transit += g.span("further", 1, 20) }))
			if far > base {
				t.Errorf("%d cartons with a longer way to station %d, %d before", far, i+1, base)
			}
		}
	})
}

// The cycles of an indexing conveyor begin at maxima of sums of act times, and which acts are made and jam does not depend on
// time: so a longer dwell, a slower index or a lower setting never adds cartons. There is always an attendant free, as the
// order of calls to a busy one depends on the times.
func TestConveyorsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := jammedLine(t)
		line.Crew.Attendants = 0
		g := &lines{t: t, lanes: 1}
		i := g.count("which", 0, len(line.Stations)-1)
		base := goods(t, line)
		longer := altered(line, i, func(st *stations.Station) {
			st.Parts = append(st.Parts, stations.Part{Name: "more dwell", Time: g.time("more", 1, 10)})
		})
		if n := goods(t, longer); n > base {
			t.Errorf("%d cartons with a longer dwell at station %d, %d before", n, i+1, base)
		}
		slower := *line
		slower.Conveyors = slices.Clone(line.Conveyors)
		slower.Conveyors[0].Index += time.Duration(g.count("slower", 1, 1000)) * time.Millisecond
		if n := goods(t, &slower); n > base {
			t.Errorf("%d cartons with a slower index, %d before", n, base)
		}
		slower.Conveyors = line.Conveyors
		if slower.Setting /= 1.5; line.Setting > 0 && goods(t, &slower) > base {
			t.Errorf("%d cartons at a lower setting, %d before", goods(t, &slower), base)
		}
	})
}
