package stations_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// pair is a machine before another, or before a conveyor, with a buffer between.
func pair(lanes int, belt *stations.Conveyor, buffer stations.Buffer) *stations.Line {
	act := []stations.Part{{Name: "act", Time: fixed(1)}}
	line := &stations.Line{Lanes: lanes, Shift: stations.Shift{Length: 10 * time.Minute},
		Stations: []stations.Station{
			{Name: "first", Kind: stations.Machine, Feed: stations.Feed{Conveyor: -1}, Units: 1, Parts: act},
			{Name: "second", Kind: stations.Machine, Feed: stations.Feed{Conveyor: -1, Buffer: &buffer}, Units: 1, Parts: act},
		}}
	if belt != nil {
		line.Conveyors = []stations.Conveyor{*belt}
		line.Stations[1].Feed.Conveyor = 0
	}
	return line
}

func TestStandstillIsExplained(t *testing.T) {
	belt := stations.Conveyor{Index: time.Second}
	narrow := pair(3, &belt, stations.Buffer{Capacity: 2})
	clocked := pair(3, &belt, stations.Buffer{Capacity: 2})
	clocked.Stations[0].Stops = []stations.Stop{{Cause: "check", Trigger: stations.ByClock, Every: fixed(20), Clear: fixed(3)}}
	for name, line := range map[string]*stations.Line{"no event left": narrow, "only a clock goes on": clocked} {
		t.Run(name, func(t *testing.T) {
			err := newSimulation(t, line).Shift(1, 0)
			var stuck *stations.StuckError
			if !errors.As(err, &stuck) {
				t.Fatalf("got %v, want a standstill", err)
			}
			if stuck.At != "3s" { // the third carton finds no room
				t.Errorf("standstill after %s", stuck.At)
			}
			for _, part := range []string{"first is blocked", "second is starved"} {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("%q lacks %q", err, part)
				}
			}
		})
	}
}

func TestEndlessInstantIsExplained(t *testing.T) {
	unlimited := stations.Buffer{Capacity: stations.Unlimited}
	zero := stations.Stop{Cause: "jam", Every: fixed(0), Clear: fixed(0), Unattended: true}
	lines := map[string]func() *stations.Line{
		"acts without time": func() *stations.Line {
			line := pair(1, nil, unlimited)
			line.Setting = 0
			line.Stations[0].Parts = nil
			line.Stations[1].Parts = nil
			line.Conveyors = []stations.Conveyor{{Index: time.Second}}
			line.Stations[1].Feed.Conveyor = 0
			return line
		},
		"stops by the clock without time": func() *stations.Line {
			line := pair(1, nil, unlimited)
			zero.Trigger = stations.ByClock
			line.Stations[1].Stops = []stations.Stop{zero}
			return line
		},
		"stops by running without time": func() *stations.Line {
			line := pair(1, nil, unlimited)
			zero.Trigger = stations.ByRunning
			line.Stations[1].Stops = []stations.Stop{zero}
			return line
		},
		"stops by running without time on a conveyor": func() *stations.Line {
			line := pair(1, &stations.Conveyor{Index: time.Second}, unlimited)
			zero.Trigger = stations.ByRunning
			line.Stations[1].Stops = []stations.Stop{zero}
			return line
		},
		"reloads of nothing without time": func() *stations.Line {
			line := pair(1, nil, unlimited)
			line.Stations[0].Materials = []stations.Material{{Name: "glue", Holds: 2, Low: 1, Takes: fixed(0), Unattended: true}}
			return line
		},
	}
	for name, line := range lines {
		t.Run(name, func(t *testing.T) {
			err := newSimulation(t, line()).Shift(1, 0)
			var stuck *stations.StuckError
			if !errors.As(err, &stuck) || stuck.Endless == "" {
				t.Fatalf("got %v, want an endless instant", err)
			}
			if !strings.Contains(err.Error(), "time stands still at") {
				t.Errorf("got %q", err)
			}
		})
	}
}

func TestLinesThatCannotMoveAreRefused(t *testing.T) {
	missing := pair(1, nil, stations.Buffer{Capacity: 1})
	missing.Stations[1].Miss = stations.Miss{Chance: 1, Tries: stations.Endless}
	passing := pair(1, &stations.Conveyor{Index: time.Second, RunsEmpty: true}, stations.Buffer{Transit: time.Second})
	timeless := pair(1, nil, stations.Buffer{Capacity: 1})
	timeless.Stations[0].Parts = nil
	for name, line := range map[string]*stations.Line{"every act misses": missing, "hands over to nobody": passing, "nothing takes time": timeless} {
		if _, err := stations.New(line); err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

// Whatever the buffers, and with times of 0, a line runs its shift or its standstill is explained.
func TestAnyLineRunsOrIsExplained(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, false)
		g := &lines{t: t}
		for i := range line.Stations {
			st := &line.Stations[i]
			if b := st.Feed.Buffer; b != nil {
				b.Capacity = g.count("any capacity", stations.Unlimited, 4)
			}
			for k := range st.Parts {
				if g.chance("no time", 3) {
					st.Parts[k].Time = random.Sampler{}
				}
			}
		}
		s, err := stations.New(line)
		if err != nil {
			return
		}
		var stuck *stations.StuckError
		if err := s.Shift(1, 0); err != nil && !errors.As(err, &stuck) && !errors.Is(err, sim.ErrOverfull) {
			t.Fatal(err)
		}
	})
}

// TestClearedAtTheEndIsNoStandstill: both units of a machine stand, the carton for them waits, and they are cleared at the very end of the shift.
func TestClearedAtTheEndIsNoStandstill(t *testing.T) {
	const q = 72 * time.Millisecond
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 3 * time.Minute}, Stations: []stations.Station{
		{Name: "a", Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1}, Parts: []stations.Part{{Name: "act", Time: random.Fixed(2 * q)}}},
		{Name: "b", Kind: stations.Machine, Units: 2, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Transit: q}}, Parts: []stations.Part{{Name: "act", Time: random.Fixed(q)}},
			Stops: []stations.Stop{{Cause: "jam", Trigger: stations.ByClock, Every: random.Fixed(25 * q), Clear: random.Fixed(225 * q)}}}}}
	shift(t, newSimulation(t, line), 1, 0)
}
