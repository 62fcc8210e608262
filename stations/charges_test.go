package stations_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// lossesOf runs a line once and sums its losses by kind and station.
func lossesOf(t rapid.TB, line *stations.Line) map[stations.Cause]int64 {
	t.Helper()
	s := newSimulation(t, line)
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	sheet := map[stations.Cause]int64{}
	for r, n := range s.Losses(s.Tally, line.Shift.Length) {
		sheet[s.Causes()[r]] += n
	}
	return sheet
}

// TestRestOfAnActBelongsToItsStop: a carton every 10 s, an act of 5 s with the index, and one stop of 20 s in it. The act fits the pace, so
// what the stop makes late is lost to the stop: the 15 s by which its cycle outlasts the pace, a carton and a half.
func TestRestOfAnActBelongsToItsStop(t *testing.T) {
	line := &stations.Line{Lanes: 1, Setting: 360, Shift: stations.Shift{Length: 600 * time.Second}, Conveyors: []stations.Conveyor{{Index: time.Second}},
		Stations: []stations.Station{{Name: "sealer", Kind: stations.Seal, Units: 1, Parts: []stations.Part{{Name: "act", Time: fixed(4)}},
			Stops: []stations.Stop{{Cause: "jam", Trigger: stations.ByRunning, Every: every(52, 1e6), Clear: fixed(20), Unattended: true}}}}}
	for cause, n := range lossesOf(t, line) {
		switch {
		case cause.Kind == stations.SlowAct && n != 0:
			t.Errorf("%d cartons are lost to an act that fits the pace", n)
		case cause.Kind == stations.Stoppage && n != 2 && n != 1:
			t.Errorf("%d cartons are lost to the stop, want one and a half", n)
		}
	}
}

// TestPlannedStopsAreChargedTheirOwn: a wait over several planned stops is charged to each of them, never more than its length.
func TestPlannedStopsAreChargedTheirOwn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shift := stations.Shift{Length: 3600 * time.Second}
		names := []string{"coffee", "lunch", "tea"}
		at := time.Duration(0)
		for _, name := range names {
			at += time.Duration(rapid.IntRange(60, 500).Draw(t, name+" after")) * time.Second
			to := at + time.Duration(rapid.IntRange(60, 400).Draw(t, name+" length"))*time.Second
			shift.Planned = append(shift.Planned, stations.Window{Name: name, From: at, To: to})
			at = to
		}
		// The second machine is slow, so that the first waits for room most of the time, through the stops as well.
		line := &stations.Line{Lanes: 1, Setting: 3600, Shift: shift, Stations: []stations.Station{
			{Name: "a", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(1)}}},
			{Name: "b", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 1}},
				Parts: []stations.Part{{Name: "act", Time: fixed(float64(rapid.IntRange(2, 1500).Draw(t, "slow")))}}}}}
		s := newSimulation(t, line)
		if err := s.Shift(1, 0); err != nil {
			t.Fatal(err)
		}
		for r, cause := range s.Causes() {
			if cause.Kind != stations.PlannedStop {
				continue
			}
			w := shift.Planned[cause.Item]
			if lost := time.Duration(s.Tally.Lost[r]); lost > w.To-w.From {
				t.Errorf("%s of %v is charged %v", w.Name, w.To-w.From, lost)
			}
		}
	})
}

// TestScrapAtTheHeadOfTheLine: a stop of an erector that costs three cartons costs three, the two that come after it too.
func TestScrapAtTheHeadOfTheLine(t *testing.T) {
	for _, onConveyor := range []bool{false, true} {
		line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 1000 * time.Second}, Stations: []stations.Station{{Name: "erector", Kind: stations.Erect,
			Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(4)}},
			Stops: []stations.Stop{{Cause: "jam", Trigger: stations.ByRunning, Every: every(402, 1e6), Clear: fixed(20), Unattended: true, Scrap: 3}}}}}
		if onConveyor {
			line.Conveyors = []stations.Conveyor{{Index: time.Second}}
			line.Stations[0].Feed.Conveyor = 0
		}
		s := newSimulation(t, line)
		if err := s.Shift(1, 0); err != nil {
			t.Fatal(err)
		}
		if got := s.Tally.Flow[stations.Scrapped]; got != 3 {
			t.Errorf("on a conveyor %v: %d cartons are scrapped, want 3", onConveyor, got)
		}
	}
}

// TestScrapDoesNotDependOnTheStandLimit: a stop by the clock loses the carton that waits in the station for room, whether or not some
// other rule limits how long it may stand.
func TestScrapDoesNotDependOnTheStandLimit(t *testing.T) {
	var scrapped []int64
	for _, limit := range []time.Duration{0, 24 * time.Hour} {
		line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 4000 * time.Second}, Stations: []stations.Station{
			{Name: "a", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(1)}}, StandLimit: limit,
				Stops: []stations.Stop{{Cause: "jam", Trigger: stations.ByClock, Every: random.Fixed(97 * time.Second), Clear: fixed(3), Unattended: true, Scrap: 1}}},
			{Name: "b", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 2}}, Parts: []stations.Part{{Name: "act", Time: fixed(10)}}}}}
		s := newSimulation(t, line)
		if err := s.Shift(1, 0); err != nil {
			t.Fatal(err)
		}
		scrapped = append(scrapped, s.Tally.Flow[stations.Scrapped])
	}
	if scrapped[0] != scrapped[1] || scrapped[0] == 0 {
		t.Errorf("%d cartons are scrapped without a limit, %d with one", scrapped[0], scrapped[1])
	}
}

// TestNoSumWraps: a buffer of 10,000 places, full for a year, and the sum of 100,000 such shifts.
func TestNoSumWraps(t *testing.T) {
	const year = 8760 * time.Hour
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: year}, Stations: []stations.Station{
		{Name: "a", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(10)}}},
		{Name: "b", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 10_000}}, Parts: []stations.Part{{Name: "act", Time: fixed(86400)}}}}}
	s := newSimulation(t, line)
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	totals := s.NewTotals()
	for range 100_000 {
		stations.Sum(totals, s.Tally)
	}
	if mean := totals.Content(1) / 1e5 / float64(year); mean < 9900 || mean > 10_000 {
		t.Errorf("the mean content is %g, want nearly 10,000", mean)
	}
	if busy := *totals.State(1, stations.Working) / 1e5; busy < 0.99*float64(year) || busy > float64(year) {
		t.Errorf("the second machine works for %g ns of a year", busy)
	}
}

// TestActThatFitsThePaceLosesNothing: on any line whose stations are sure to act within the pace, whatever the setting paces is late for
// stops, reloads and waits, and never for an act of its own.
func TestActThatFitsThePaceLosesNothing(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		if line.Setting == 0 {
			line.Setting = 3600 * float64(line.Lanes)
		}
		pace := time.Duration(3600e9 * float64(line.Lanes) / line.Setting)
		for i := range line.Stations {
			st := &line.Stations[i]
			room := pace
			if c := st.Feed.Conveyor; c >= 0 {
				line.Conveyors[c].Index = min(line.Conveyors[c].Index, pace/2)
				room -= line.Conveyors[c].Index
			}
			st.Miss, st.Away = stations.Miss{}, 0
			st.Parts = []stations.Part{{Name: "act", Time: random.Fixed(time.Duration(rapid.IntRange(1, 4).Draw(t, "quarters")) * room / 4)}}
		}
		s := newSimulation(t, line)
		tally := shift(t, s, 1, 0)
		for r, c := range s.Causes() {
			if c.Kind == stations.SlowAct && paced(line, c.Station) && tally.Lost[r] != 0 {
				t.Errorf("%s loses %v to an act that fits the pace", c.Where, time.Duration(tally.Lost[r]))
			}
		}
	})
}

// paced says that the setting paces the station: it is on the first conveyor, or the head of a line without one.
func paced(line *stations.Line, station int) bool {
	return len(line.Conveyors) == 0 && station == 0 || len(line.Conveyors) > 0 && line.Stations[station].Feed.Conveyor == 0
}

// TestScrapOfStopsThatFollowEachOther: a stop at the head of a line still costs what it costs when another follows at once.
func TestScrapOfStopsThatFollowEachOther(t *testing.T) {
	stop := func(cause string, after float64) stations.Stop {
		return stations.Stop{Cause: cause, Trigger: stations.ByRunning, Every: every(after, 1e6), Clear: fixed(20), Unattended: true, Scrap: 5}
	}
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 1000 * time.Second}, Stations: []stations.Station{{Name: "erector", Kind: stations.Erect,
		Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: fixed(4)}},
		Stops: []stations.Stop{stop("jam", 402), stop("glue", 406)}}}}
	s := newSimulation(t, line)
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	for r, c := range s.Causes() {
		if c.Kind == stations.Stoppage && s.Tally.Gone[r] != 5 {
			t.Errorf("%s costs %d cartons, want 5", c.What, s.Tally.Gone[r])
		}
	}
}
