package scenarios_test

import (
	"strings"
	"testing"
	"time"

	"dwellcast/scenarios"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

func TestOddLinesAreWarnedOf(t *testing.T) {
	fixed := random.Fixed
	second, err := random.Exponential(1)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, about, says string
		change            func(*stations.Line)
	}{
		{"fast setting", "setting", "beyond 1800 cartons/h", func(l *stations.Line) { l.Setting = 2000 }},
		{"fill after seal", "station station 3", "already sealed", func(l *stations.Line) {
			l.Stations[1].Kind, l.Stations[2].Kind = stations.Seal, stations.Fill
		}},
		{"after offload", "station station 3", "offloaded", func(l *stations.Line) { l.Stations[1].Kind = stations.Offload }},
		{"erect last", "station station 3", "erects", func(l *stations.Line) {
			l.Stations[1].Kind, l.Stations[2].Kind = stations.Fill, stations.Erect
		}},
		{"nothing to eject", "station station 2", "no station up to it", func(l *stations.Line) { l.Stations[1].Ejects = true }},
		{"many rejects", "station station 2", "rejects 60 %", func(l *stations.Line) { l.Stations[1].Reject = 0.6 }},
		{"rare stop", "stop station 1/gearbox", "once in", func(l *stations.Line) {
			l.Stations[0].Stops = []stations.Stop{{Cause: "gearbox", Chance: 1e-7, Clear: fixed(time.Hour)}}
		}},
		{"small buffer", "buffer station 2", "fewer than the 2 lanes", func(l *stations.Line) {
			l.Lanes, l.Stations[1].Feed.Buffer.Capacity = 2, 1
		}},
		{"slow transit", "buffer station 2", "lets at most 900 cartons/h", func(l *stations.Line) {
			l.Stations[1].Feed.Buffer = &stations.Buffer{Capacity: 5, Transit: 20 * time.Second}
		}},
		{"stand limit", "station station 2", "all are scrapped", func(l *stations.Line) { l.Stations[1].StandLimit = time.Second }},
		{"runs dry", "station station 1", "run out", func(l *stations.Line) {
			l.Stations[0].Materials = []stations.Material{{Name: "blanks", Holds: 100, Low: 10, Reload: 100, Takes: fixed(time.Minute)}}
		}},
		{"busy crew", "crew", "will often wait", func(l *stations.Line) {
			l.Stations[0].Stops = []stations.Stop{{Cause: "jam", Chance: 0.01, Clear: fixed(200 * time.Second)}}
		}},
		{"overloaded crew", "crew", "wait for the crew", func(l *stations.Line) {
			l.Stations[0].Stops = []stations.Stop{{Cause: "jam", Chance: 0.01, Clear: fixed(400 * time.Second)}}
		}},
		{"never ends", "stop station 1/jam", "none ever ends", func(l *stations.Line) {
			l.Stations[0].Stops = []stations.Stop{{Cause: "jam", Trigger: stations.ByRunning, Every: fixed(time.Second), Clear: fixed(time.Second), Unattended: true, Repeat: true}}
		}},
		{"may never end", "stop station 1/jam", "again draws another time", func(l *stations.Line) {
			l.Stations[0].Parts[0].Time = random.Drawn(second)
			l.Stations[0].Stops = []stations.Stop{{Cause: "jam", Trigger: stations.ByRunning, Every: fixed(1000 * time.Second), Clear: fixed(time.Second), Unattended: true, Repeat: true}}
		}},
		{"mostly planned", "shift", "planned stops", func(l *stations.Line) {
			l.Shift.Planned = []stations.Window{{Name: "cleaning", From: 0, To: 5 * time.Hour}}
		}},
	} {
		line := plainLine()
		c.change(line)
		if list := scenarios.BudgetOf(line).Warnings; len(list) != 1 || list[0].About != c.about || !strings.Contains(list[0].Text, c.says) {
			t.Errorf("%s: warnings %q, want one about %q that says %q", c.name, list, c.about, c.says)
		}
	}
}

func TestPlainLineIsNotWarnedOf(t *testing.T) {
	if list := scenarios.BudgetOf(plainLine()).Warnings; len(list) > 0 {
		t.Errorf("warnings %q, want none", list)
	}
}

// plainLine is a line with nothing odd in it.
func plainLine() *stations.Line {
	line := alone(2*time.Second, 2*time.Second, 2*time.Second)
	line.Setting, line.Crew.Attendants = 1500, 1
	for i := range line.Stations[1:] {
		line.Stations[i+1].Feed.Buffer.Capacity = 10
	}
	return line
}
