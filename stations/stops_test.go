package stations_test

import (
	"math"
	"testing"
	"time"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// sealerWith is a line of one station whose act takes 10 s, on a conveyor that indexes in 1 s or on its own, and that stops
// for 2 s without needing anyone.
func sealerWith(stop stations.Stop, onConveyor bool, length float64) *stations.Line {
	stop.Cause, stop.Clear, stop.Unattended = "jam", fixed(2), true
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: time.Duration(length * 1e9)}, Stations: []stations.Station{{
		Name: "sealer", Kind: stations.Seal, Units: 1, Feed: stations.Feed{Conveyor: -1},
		Parts: []stations.Part{{Name: "act", Time: fixed(10)}}, Stops: []stations.Stop{stop},
	}}}
	if onConveyor {
		line.Conveyors = []stations.Conveyor{{Index: time.Second}}
		line.Stations[0].Feed.Conveyor = 0
	}
	return line
}

func every(seconds ...float64) random.Sampler {
	values := make([]time.Duration, len(seconds))
	for i, s := range seconds {
		values[i] = time.Duration(s * 1e9)
	}
	return must(random.Recorded(values))
}

// Each case says when the first good carton is ready, worked out by hand.
func TestStopsResumeRepeatAndScrap(t *testing.T) {
	const far = 1e5
	for _, c := range []struct {
		name       string
		onConveyor bool
		stop       stations.Stop
		ready      float64
		scrapped   int64
	}{
		{"running, resume", false, stations.Stop{Trigger: stations.ByRunning, Every: every(5, 2, far)}, 14, 0},
		{"running, resume, conveyor", true, stations.Stop{Trigger: stations.ByRunning, Every: every(5, 2, far)}, 15, 0},
		// 5 s of work, stop to 7, 5 s again, stop from 12 to 14, then the whole act
		{"running, repeat", false, stations.Stop{Trigger: stations.ByRunning, Every: every(5, 5, far), Repeat: true}, 24, 0},
		// the index counts as running: 4 s of work, stop from 5 to 7, 5 s, stop from 12 to 14, then the whole act
		{"running, repeat, conveyor", true, stations.Stop{Trigger: stations.ByRunning, Every: every(5, 5, far), Repeat: true}, 24, 0},
		// a stop that falls due in the index comes at its end
		{"running, in the index", true, stations.Stop{Trigger: stations.ByRunning, Every: every(0.5, far)}, 13, 0},
		{"running, scrap", false, stations.Stop{Trigger: stations.ByRunning, Every: every(5, far), Scrap: 1}, 17, 1},
		{"clock, resume", false, stations.Stop{Trigger: stations.ByClock, Every: every(5, far)}, 12, 0},
		{"clock, resume, conveyor", true, stations.Stop{Trigger: stations.ByClock, Every: every(5, far)}, 13, 0},
		{"clock, repeat", false, stations.Stop{Trigger: stations.ByClock, Every: every(5, far), Repeat: true}, 17, 0},
		{"clock, repeat, conveyor", true, stations.Stop{Trigger: stations.ByClock, Every: every(5, far), Repeat: true}, 17, 0},
		{"clock, scrap", false, stations.Stop{Trigger: stations.ByClock, Every: every(5, far), Scrap: 1}, 17, 1},
		// on the conveyor the act goes on without its carton, to 13; the next carton is done 11 s later
		{"clock, scrap, conveyor", true, stations.Stop{Trigger: stations.ByClock, Every: every(5, far), Scrap: 1}, 24, 1},
		// the index goes on under a stop that begins and ends in it
		{"clock, in the index", true, stations.Stop{Trigger: stations.ByClock, Every: every(0.5, far)}, 12.5, 0},
	} {
		for _, step := range []struct {
			length float64
			good   int64
		}{{c.ready - 1e-9, 0}, {c.ready, 1}} {
			line := sealerWith(c.stop, c.onConveyor, step.length)
			tally := shift(t, newSimulation(t, line), 1, 0)
			if good, scrapped := tally.Flow[stations.Good], tally.Flow[stations.Scrapped]; good != step.good || scrapped != c.scrapped {
				t.Errorf("%s: %d good and %d scrapped by %v, want %d and %d", c.name, good, scrapped, line.Shift.Length, step.good, c.scrapped)
			}
		}
	}
}

// A stop by the clock that comes while all wait for the pace holds up the next index, and only that counts as lost.
func TestStopWhileWaitingForThePace(t *testing.T) {
	line := sealerWith(stations.Stop{Trigger: stations.ByClock, Every: every(20, 1e5)}, true, 50)
	line.Setting = 3600. / 21
	line.Stations = append(line.Stations, line.Stations[0])
	line.Stations[0].Name, line.Stations[0].Stops = "filler", nil
	line.Stations[1].Feed.Pitches = 1
	s := newSimulation(t, line)
	tally := shift(t, s, 1, 0)
	// index and act to 11, stop from 20 to 22, pace out at 21; second cycle from 22 with the next pace at 43
	for _, want := range []struct {
		station int
		state   stations.State
		time    time.Duration
	}{
		{0, stations.Working, (11 + 11 + 7) * time.Second},
		{0, stations.Paced, (9 + 10) * time.Second},
		{0, stations.Interlocked, 2 * time.Second},
		{1, stations.Starved, 20 * time.Second},
		{1, stations.Clearing, 2 * time.Second},
		{1, stations.Working, (11 + 7) * time.Second},
		{1, stations.Paced, 10 * time.Second},
	} {
		if got := time.Duration(*tally.State(want.station, want.state)); got != want.time {
			t.Errorf("station %d is %v for %v, want %v", want.station+1, want.state, got, want.time)
		}
	}
	if lost := time.Duration(tally.Lost[s.Reason(stations.Stoppage, 1, 0)]); lost != time.Second {
		t.Errorf("the stop costs %v, want 1s", lost)
	}
	if lost := sum(tally.Lost); lost != int64(time.Second) {
		t.Errorf("%v lost in all, want 1s", time.Duration(lost))
	}
	if n := *tally.At(1, stations.LastClear); n != 1 || tally.PacedCycles[0] != 1 {
		t.Errorf("the stop decided %d cycles, the pace %d; want 1 each", n, tally.PacedCycles[0])
	}
}

// Two units share a pace: each loses a carton per two pace periods that it stands.
func TestUnitsShareThePace(t *testing.T) {
	line := sealerWith(stations.Stop{Trigger: stations.ByClock, Every: every(10, 1e5)}, false, 1995)
	st := &line.Stations[0]
	st.Units, st.Stops[0].Clear = 2, fixed(600)
	line.Setting = 360 // one carton every 10 s, each unit one every 20 s
	s := newSimulation(t, line)
	tally := shift(t, s, 1, 0)
	losses := s.Losses(tally, line.Shift.Length)
	// Each unit stands from 10, its first act over, to 610: its second cycle begins then rather than at 20.
	if lost := losses[s.Reason(stations.Stoppage, 0, 0)]; lost != 59 {
		t.Errorf("%d cartons lost to the stops, want 2 x 590 s / 20 s = 59", lost)
	}
	if ideal := s.Ideal(line.Shift.Length); ideal != 199 || ideal != tally.Flow[stations.Good]+sum(losses) {
		t.Errorf("ideal %d, good %d, lost %d", ideal, tally.Flow[stations.Good], sum(losses))
	}
}

func TestScrapAfterMissesLeavesNoCarton(t *testing.T) {
	line := sealerWith(stations.Stop{}, false, 100)
	st := &line.Stations[0]
	st.Stops = nil
	st.Miss = stations.Miss{Chance: 1, Tries: 2, Stop: &stations.Stop{Cause: "dropped", Clear: fixed(5), Unattended: true, Scrap: 1}}
	f := shift(t, newSimulation(t, line), 1, 0).Flow
	// 2 x 10 s of tries, then 5 s of clearing: scrapped at 20, 45, 70 and 95
	if f[stations.Good] != 0 || f[stations.Scrapped] != 4 || f[stations.Entered] != 4 {
		t.Errorf("%d entered, %d good, %d scrapped", f[stations.Entered], f[stations.Good], f[stations.Scrapped])
	}
}

// TestActDrawnAnewForgetsTheStop: an act of an exponential time that starts again with a time drawn anew after each stop ends as often in
// running time as without stops, since such a time has no memory. One that keeps the time drawn before ends less often, and one that is longer
// than the constant interval of stops never.
func TestActDrawnAnewForgetsTheStop(t *testing.T) {
	const hours = 200
	goods := map[bool]float64{}
	for _, afresh := range []bool{true, false} {
		line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: hours * time.Hour}, Stations: []stations.Station{{Name: "packer", Kind: stations.Machine, Units: 1,
			Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: drawn(t)(random.Exponential(10))}},
			Stops: []stations.Stop{{Cause: "jam", Trigger: stations.ByRunning, Every: random.Fixed(30 * time.Second), Clear: fixed(5), Unattended: true, Repeat: true, Afresh: afresh}}}}}
		s := newSimulation(t, line)
		tally := shift(t, s, 1, 0)
		goods[afresh] = float64(tally.Flow[stations.Good])
		if running := float64(*tally.State(0, stations.Working)) / 1e9; afresh {
			if want := running / 10; math.Abs(goods[true]-want) > 4*math.Sqrt(want) {
				t.Errorf("%g acts end in %g s of running, want %.0f", goods[true], running, want)
			}
		}
	}
	if goods[false] > goods[true]/100 {
		t.Errorf("%g acts end though one is sure to be longer than the interval of stops", goods[false])
	}
}
