package stations_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// blamedLine draws a line of two to four sections with buffers, of which none is as slow as another or the setting: they differ by 6 % or more. Nothing
// on it is left to chance but, where stops are asked for, when they come.
func blamedLine(t *rapid.T, stops bool) *stations.Line {
	g := &lines{t: t, lanes: 1}
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 2 * time.Hour}}
	if g.chance("set", 2) {
		line.Setting = 3600 / math.Pow(1.12, float64(g.count("pace", 0, 9))+0.5)
	}
	speeds := rapid.Permutation([]float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}).Draw(t, "speeds")
	for k := range g.count("sections", 2, 4) {
		st := stations.Station{Name: g.name(), Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}}
		act := time.Duration(1e9 * math.Pow(1.12, speeds[k]))
		if k > 0 {
			st.Feed.Buffer = &stations.Buffer{Capacity: g.count("capacity", 1, 12), Transit: g.span("transit", 0, 20)}
		}
		if g.chance("belt", 3) {
			st.Feed.Conveyor = len(line.Conveyors)
			line.Conveyors = append(line.Conveyors, stations.Conveyor{Index: act / 4})
			act -= act / 4
		}
		st.Parts = []stations.Part{{Name: "act", Time: random.Fixed(act)}}
		if stops && g.chance("stops", 2) {
			st.Stops = []stations.Stop{{Cause: "jam", Chance: 1 / float64(g.count("every", 50, 300)), Clear: random.Fixed(g.span("clear", 100, 900)), Unattended: true}}
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}

// faster is the line with one station's act a tenth shorter.
func faster(line *stations.Line, i int) *stations.Line {
	return altered(line, i, func(st *stations.Station) { st.Parts[0].Time = st.Parts[0].Time.Scale(0.9) })
}

// charges lists what a station's waits are charged to, per state and reason.
func charges(s *stations.Simulation, tally *stations.Tally, i int) map[stations.State][]int64 {
	n := len(s.Causes())
	return map[stations.State][]int64{stations.Starved: tally.Starved[i*n : (i+1)*n], stations.Blocked: tally.Blocked[i*n : (i+1)*n]}
}

// TestBlamedStationIsWorthFixing: on any line, whoever is charged waiting of another over a tenth of the shift for its own cycle shortens that waiting
// when its act is a tenth shorter, and what it is charged. Whoever
// the loss sheet charges anything for it never costs cartons by that.
func TestBlamedStationIsWorthFixing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { blamedIsWorthFixing(t, blamedLine(t, rapid.Bool().Draw(t, "stops"))) })
}

func blamedIsWorthFixing(t *rapid.T, line *stations.Line) {
	s := newSimulation(t, line)
	tally := shift(t, s, 5, 2)
	for r, c := range s.Causes() {
		if c.Kind != stations.SlowAct {
			continue
		}
		other := newSimulation(t, faster(line, c.Station))
		after := shift(t, other, 5, 2)
		if tally.Lost[r] > 0 && after.Flow[stations.Good] < tally.Flow[stations.Good] {
			t.Fatalf("%v are lost to %s's own cycle; with that a tenth shorter there are %d good cartons, before %d\n%s", time.Duration(tally.Lost[r]),
				c.Where, after.Flow[stations.Good], tally.Flow[stations.Good], describe(line))
		}
		for i := range line.Stations {
			for state, was := range charges(s, tally, i) {
				if was[r] < int64(line.Shift.Length/10) {
					continue
				}
				now := charges(other, after, i)[state]
				if now[r] >= was[r] || sum(now) >= sum(was) {
					t.Fatalf("%s is %v for %v, of which %v because of %s's own cycle; with that a tenth shorter %v, of which %v\n%s", line.Stations[i].Name, state,
						time.Duration(sum(was)), time.Duration(was[r]), c.Where, time.Duration(sum(now)), time.Duration(now[r]), describe(line))
				}
			}
		}
	}
}

// TestStopOfOneUnitIsChargedWhatTheLineLoses: behind a paced head and a buffer stand two or three units that fit the pace together, and whose
// stops are all that can hold the head up. Then all that the shift lacks is charged to these stops, whichever unit they stop, and leaving them
// out brings it back, but for the cartons that are on the line.
func TestStopOfOneUnitIsChargedWhatTheLineLoses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := &lines{t: t, lanes: 1}
		units, capacity := g.count("units", 2, 3), g.count("capacity", 1, 20)
		act := g.span("act", 20, 40)
		head := act * time.Duration(g.count("slack", 102, 150)) / 100 / time.Duration(units)
		line := &stations.Line{Lanes: 1, Setting: 3600e9 / float64(head), Shift: stations.Shift{Length: 4 * time.Hour}, Stations: []stations.Station{
			{Name: "maker", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: random.Fixed(head / 2)}}},
			{Name: "packer", Kind: stations.Machine, Units: units, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: capacity}},
				Parts: []stations.Part{{Name: "act", Time: random.Fixed(act)}}, Stops: []stations.Stop{{Cause: "jam", Chance: 1 / float64(g.count("every", 50, 400)),
					Clear: g.time("clear", 100, 3000), Unattended: true}}}}}
		charged := lossesOf(t, line)[stations.Cause{Kind: stations.Stoppage, Station: 1, Where: "packer", What: "jam"}]
		s := newSimulation(t, line)
		good := shift(t, s, 1, 0).Flow[stations.Good]
		without := newSimulation(t, altered(line, 1, func(st *stations.Station) { st.Stops = nil }))
		brings := shift(t, without, 1, 0).Flow[stations.Good] - good
		if most := int64(capacity + units + 2); charged < brings-most || charged > brings+most {
			t.Errorf("the stops are charged %d cartons, without them there are %d more", charged, brings)
		}
	})
}
