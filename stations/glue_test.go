package stations_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// gluedLine is a conveyor with an index of 1 s, a station that lays glue in 2 s, and one two pitches on that takes 1 s to close it and
// presses for 1 s.
func gluedLine(open time.Duration) *stations.Line {
	part := func(name string, seconds int) stations.Part {
		return stations.Part{Name: name, Time: random.Fixed(time.Duration(seconds) * time.Second)}
	}
	return &stations.Line{Title: "glued", Lanes: 1, Shift: stations.Shift{Length: 300 * time.Second}, Conveyors: []stations.Conveyor{{Index: time.Second}},
		Stations: []stations.Station{
			{Name: "gun", Kind: stations.Machine, Units: 1, Parts: []stations.Part{part("lay", 2)}},
			{Name: "press", Kind: stations.Seal, Units: 1, Feed: stations.Feed{Pitches: 2}, Parts: []stations.Part{part("close", 1), part("dwell", 1)},
				Glue: &stations.Glue{From: 0, Open: open, Closes: 1}},
		}}
}

// tooLate is how many cartons of a shift were closed too late.
func tooLate(t *testing.T, line *stations.Line) int64 {
	t.Helper()
	s := newSimulation(t, line)
	tally := shift(t, s, 1, 0)
	f := tally.Flow
	if lost := tally.Gone[s.Reason(stations.Dried, 1, 0)]; lost != f[stations.Bad]+f[stations.Scrapped] {
		t.Errorf("%d charged to the glue, %d rejected and %d scrapped", lost, f[stations.Bad], f[stations.Scrapped])
	}
	return f[stations.Bad] + f[stations.Scrapped]
}

// TestGlueLiesOpen: a cycle lasts 3 s, so that glue is closed 2 x 3 s + 1 s after it was laid.
func TestGlueLiesOpen(t *testing.T) {
	every := func(acts float64) random.Distribution { return must(random.Constant(acts)) }
	for _, c := range []struct {
		name   string
		open   time.Duration
		change func(gun, press *stations.Station, line *stations.Line)
		late   int64
	}{
		{"just in time", 7 * time.Second, nil, 0},
		{"too slow", 7*time.Second - 1, nil, 98}, // cycles 3 to 100
		{"the gun stands: two cartons lie open meanwhile", 7 * time.Second, func(gun, _ *stations.Station, _ *stations.Line) {
			gun.Stops = []stations.Stop{{Cause: "jam", Acts: every(30), Clear: random.Fixed(2 * time.Second)}}
		}, 6}, // after acts 30, 60 and 90
		{"the press stands once it has closed: the two behind lie open", 7 * time.Second, func(_, press *stations.Station, _ *stations.Line) {
			press.Stops = []stations.Stop{{Cause: "jam", Acts: every(30), Clear: random.Fixed(2 * time.Second)}}
		}, 6},
		{"one more cycle of time", 10 * time.Second, func(gun, _ *stations.Station, _ *stations.Line) {
			gun.Stops = []stations.Stop{{Cause: "jam", Acts: every(30), Clear: random.Fixed(3 * time.Second)}}
		}, 0},
		{"a break", 7 * time.Second, func(_, _ *stations.Station, line *stations.Line) {
			line.Shift.Planned = []stations.Window{{Name: "break", From: 100 * time.Second, To: 120 * time.Second}}
		}, 2},
		{"the press starts again before it has closed", 7 * time.Second, func(_, press *stations.Station, _ *stations.Line) {
			press.Stops = []stations.Stop{{Cause: "slip", Trigger: stations.ByRunning, Every: random.Fixed(151500 * time.Millisecond), Repeat: true}}
		}, 3}, // half a second into its 51st act; the stop takes no time, but what it did was in vain, and the two behind wait for it
		{"the press starts again after it has closed", 8 * time.Second, func(_, press *stations.Station, _ *stations.Line) {
			press.Stops = []stations.Stop{{Cause: "slip", Trigger: stations.ByRunning, Every: random.Fixed(152500 * time.Millisecond), Repeat: true}}
		}, 2}, // the carton was closed by then; the two behind wait 1.5 s more
	} {
		t.Run(c.name, func(t *testing.T) {
			line := gluedLine(c.open)
			if c.change != nil {
				c.change(&line.Stations[0], &line.Stations[1], line)
			}
			if got := tooLate(t, line); got != c.late {
				t.Errorf("%d closed too late, not %d", got, c.late)
			}
			line.Stations[1].Glue.Scraps = true
			if got := tooLate(t, line); got != c.late {
				t.Errorf("%d scrapped, not %d", got, c.late)
			}
		})
	}
}

// TestGlueIsTimedWhereCyclesRepeat: cartons whose glue is just closed in time, on a conveyor that jams now and then.
func TestGlueIsTimedWhereCyclesRepeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := &lines{t: t, lanes: 1}
		line := &stations.Line{Title: "glued", Lanes: 1, Crew: stations.Crew{Attendants: 1}, Shift: stations.Shift{Length: 10 * time.Minute}, Conveyors: []stations.Conveyor{{Index: g.span("index", 1, 12)}}}
		cycle := time.Duration(0)
		pitches := 0
		for i := range g.count("stations", 2, 4) {
			act := g.span("act", 1, 15)
			st := stations.Station{Name: g.name(), Kind: stations.Machine, Units: 1, Parts: []stations.Part{{Name: "act", Time: random.Fixed(act)}},
				Stops: []stations.Stop{{Cause: "jam", Chance: 0.004, Clear: g.time("clear", 0, 40)}}}
			if i > 0 {
				st.Feed.Pitches = g.count("pitches", 1, 6)
				pitches += st.Feed.Pitches
			}
			cycle = max(cycle, line.Conveyors[0].Index+act)
			line.Stations = append(line.Stations, st)
		}
		last := &line.Stations[len(line.Stations)-1]
		last.Glue = &stations.Glue{Open: time.Duration(pitches)*cycle + g.span("spare", 0, 40), Closes: 0}
		t.Log(describe(line))
		followsRecursion(t, line)
	})
}
