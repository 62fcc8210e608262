package stations_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// serialLine draws a line of free-running stations without stops, of at least so many stations and at most so many units each.
// Their times are recorded, and may be 0 but for the first station's.
func serialLine(t *rapid.T, least, units int) *stations.Line {
	g := &lines{t: t, lanes: 1}
	line := &stations.Line{Title: "serial", Lanes: 1, Shift: stations.Shift{Length: g.span("shift", 100, 4000)}}
	for i := range g.count("stations", least, 5) {
		values := make([]time.Duration, g.count("values", 1, 12))
		for k := range values {
			values[k] = g.span("value", max(0, 1-i), 9)
		}
		st := stations.Station{Name: g.name(), Kind: stations.Machine, Units: g.count("units", 1, units),
			Feed:  stations.Feed{Conveyor: -1},
			Parts: []stations.Part{{Name: "cycle", Time: must(random.Recorded(values))}}}
		if i > 0 {
			st.Feed.Buffer = &stations.Buffer{Capacity: g.count("capacity", stations.Unlimited, 4), Transit: g.span("transit", 0, 6)}
		}
		line.Stations = append(line.Stations, st)
	}
	if g.chance("set", 3) {
		line.Setting = 3600e9 / float64(g.span("pace", 1, 12))
	}
	t.Log(describe(line))
	return line
}

// visit is a carton's stay in a station: taken, ready, and gone to the next.
type visit struct{ taken, ready, gone time.Duration }

// departures computes a serial line without any clock, by the recursion for blocking after service (Buzacott & Shanthikumar
// 1993, from memory): carton i leaves station j when it is ready and when there is room behind, which carton i-b makes by
// being taken out of the b places there, or, if there is none, the station behind by being free. The first station begins no
// two cycles within the pace.
func departures(line *stations.Line, until time.Duration) [][]visit {
	n := len(line.Stations)
	sources := make([]random.Source, n)
	for j, st := range line.Stations {
		sources[j] = random.NewSource(st.Parts[0].Time, random.Key(st.Name, st.Parts[0].Name))
		sources[j].Reset(1, 0)
	}
	var visits [][]visit
	for i := 0; ; i++ {
		row := make([]visit, n)
		for j := range row {
			v := &row[j]
			if i > 0 {
				v.taken = visits[i-1][j].gone
			}
			if j > 0 {
				v.taken = max(v.taken, row[j-1].gone+line.Stations[j].Feed.Buffer.Transit)
			} else if i > 0 {
				v.taken = max(v.taken, visits[i-1][0].taken+line.Pace())
			}
			v.ready = v.taken + sources[j].Next()
			v.gone = max(v.ready, roomBehind(line, visits, i, j))
		}
		visits = append(visits, row)
		if row[0].taken > until {
			return visits
		}
	}
}

// roomBehind is when there is room for carton i behind station j.
func roomBehind(line *stations.Line, visits [][]visit, i, j int) time.Duration {
	if j+1 == len(line.Stations) {
		return 0
	}
	places := line.Stations[j+1].Feed.Buffer.Capacity
	switch {
	case places < 0 || i < max(places, 1):
		return 0
	case places == 0:
		return visits[i-1][j+1].gone
	}
	return visits[i-places][j+1].taken
}

// stays reads the visits of each carton to each station off the stretches in which it was worked on or blocked there; times
// past the end are cut to it.
func stays(line *stations.Line, stretches map[unitOf][]stations.Stretch, cartons int) [][]visit {
	end := line.Shift.Length
	visits := make([][]visit, cartons)
	for i := range visits {
		visits[i] = make([]visit, len(line.Stations))
		for j := range visits[i] {
			visits[i][j] = visit{end, end, end}
		}
	}
	for j, st := range line.Stations {
		for _, x := range stretches[unitOf{st.Name, 0}] {
			if x.Carton == 0 {
				continue
			}
			v := &visits[x.Carton-1][j]
			switch x.State {
			case stations.Working:
				*v = visit{x.From, x.To, x.To}
			case stations.Blocked:
				v.gone = x.To
			}
		}
	}
	return visits
}

func TestSerialLinesFollowTheRecursion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := serialLine(t, 1, 1)
		end := line.Shift.Length
		want := departures(line, end)
		s := newSimulation(t, line)
		got := stays(line, traced(t, s, 1, 0), len(want))
		var good int64
		for i, row := range want {
			for j, v := range row {
				v = visit{min(v.taken, end), min(v.ready, end), min(v.gone, end)}
				if v.ready == v.taken { // an act that takes no time leaves no trace; the next station shows its end
					continue
				}
				if got[i][j] != v {
					t.Fatalf("carton %d at station %d: simulated %v, computed %v", i+1, j+1, got[i][j], v)
				}
			}
			if last := row[len(row)-1]; last.gone <= end && last.taken < end { // nothing begins at the end
				good++
			}
		}
		if n := s.Tally.Flow[stations.Good]; n != good {
			t.Fatalf("%d cartons simulated, %d computed", n, good)
		}
	})
}
