package scenarios_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"dwellcast/scenarios"
	"dwellcast/sim/random"
	"dwellcast/stations"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// wholly compares values with all that is in them, the laws of times included.
var wholly = cmp.Exporter(func(reflect.Type) bool { return true })

func readLine(t rapid.TB, text string, overrides ...string) *scenarios.File {
	t.Helper()
	f, err := scenarios.Read("line.yaml", strings.NewReader(text), overrides)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return f
}

func sure[T any](t rapid.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func takes(s float64) random.Sampler { return random.Fixed(time.Duration(s*1e9 + 0.5)) }

// TestBenchLine: the bench line as its description says, number by number.
func TestBenchLine(t *testing.T) {
	f, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	law := sure[random.Distribution](t)
	jam := func(acts, clear float64) []stations.Stop {
		return []stations.Stop{{Cause: "jam", Chance: 1 / acts, Clear: random.Drawn(law(random.Lognormal(clear, 0.9469)))}}
	}
	on := func(pitches int) stations.Feed { return stations.Feed{Conveyor: 0, Pitches: pitches} }
	part := func(name string, s float64) stations.Part {
		return stations.Part{Name: name, Does: sealParts[name], Time: takes(s)}
	}
	want := &stations.Line{
		Title: "Bench line", Setting: 1500, Lanes: 1, Shift: stations.Shift{Length: 8 * time.Hour},
		Crew:      stations.Crew{Attendants: 1, Reaction: random.Drawn(law(random.Exponential(20)))},
		Conveyors: []stations.Conveyor{{Index: 600 * time.Millisecond, Revolution: 1900 * time.Millisecond}},
		Stations: []stations.Station{
			{Name: "erector", Kind: stations.Erect, Feed: on(0), Units: 1, Parts: []stations.Part{part("bottom seal", 0.9)},
				Miss: stations.Miss{Chance: 0.004}, Stops: jam(900, 60)},
			{Name: "filler", Kind: stations.Fill, Feed: on(2), Units: 1, ActsEmpty: true, Parts: []stations.Part{part("fill", 1.3)}, Stops: jam(2500, 90)},
			{Name: "sealer", Kind: stations.Seal, Feed: on(2), Units: 1, Reject: 0.002, Stops: jam(1500, 120),
				Parts: []stations.Part{part("lag", 0.02), part("close", 0.28), part("dwell", 1.15), part("open", 0.28)}},
			{Name: "robot", Kind: stations.Offload, Feed: on(2), Units: 1, Parts: []stations.Part{part("cycle", 1.5)}, Stops: jam(3000, 75)},
		},
	}
	if diff := cmp.Diff(want, f.Line, wholly); diff != "" {
		t.Error(diff)
	}
}

// everything uses each key that the example lines leave out.
const everything = `
setting: 1400 cartons/h
lanes: 2
target: 1000 cartons/h
shift: {length: 10 h, start_up: 15 min, breaks: [{after: 6 h, length: 20 min}, {name: tea, after: 2 h, length: 10 min}], cleaning: 30 min}
crew: {attendants: unlimited, reaction: 20 s}
conveyor: {pitch: 6 in, revolution: pace, index: {from: 10 deg, to: 100 deg, law: cycloidal}, release: at cam zero, run_out: 4}
stations:
  - name: printer
    kind: machine
    steps: [{name: place, takes: 0.5 s}, {name: print, takes: {uniform: {from: 0.2 s, to: 0.4 s}}}]
    units: 3
    materials: [{name: ink, holds: 1000, reload: 900 each, takes: 3 min, attendant: no}]
  - name: erector
    kind: erect
    after: {buffer: unlimited, transit: 4 s}
    cycle: 0.9 s
    turns: 2
    acts_empty: yes
    miss: {chance: 2 %, tries: 3, then: {cause: no blank, clear: 10 s, scrap: 1, attendant: no}, by_setting: [{at: 1000 cartons/h, factor: 1}, {at: 1800 cartons/h, factor: 2}]}
    blanks: {holds: 500, low: 80, reload: 400, takes: 35 s}
  - name: sealer
    kind: seal
    after: {pitches: 3}
    lag: 10 ms
    close: 0.2 s
    dwell: {value: {normal: {mean: 0.8 s, cv: 0.1}}, source: measured}
    open: 0.2 s
    reject: {chance: 1 %, by_setting: [{at: 1500 cartons/h, factor: 3}, {at: 1600 cartons/h, factor: 4}]}
    stand_limit: 2 min
    stops:
      - {cause: by chance, chance: 0.5 %, clear: 1 min, by_setting: [{at: 1000 cartons/h, factor: 0.5}, {at: 1400 cartons/h, factor: 1.5}]}
      - {cause: by count, every: {constant: 900 cartons}, clear: 1 min, by_setting: [{at: 1400 cartons/h, factor: 2}]}
      - {cause: by running, every: {weibull: {shape: 2, scale: 40 min}}, clear: 1 min, after: repeat, by_setting: [{at: 1400 cartons/h, factor: 2}]}
      - {cause: by clock, every: 2 h, clock: calendar, clear: 1 min, attendant: no, scrap: 2 cartons}
      - {cause: never, every: 2 h, clear: 1 min, by_setting: [{at: 1400 cartons/h, factor: 0}]}
  - name: packer
    kind: machine
    after: {buffer: 4 cartons}
    conveyor: {index: 0.4 s, runs_empty: yes}
    cycle: 1 s
    miss: {chance: 1 %, tries: unlimited}
    ejects: yes
  - name: robot
    kind: offload
    after: {pitches: 1}
    cycle: 2 s
    away: 0.7 s
    units: 2
    pallet: {every: 120 cartons, takes: 25 s, by: attendant, places: 2}
`

// TestEverything: what each key comes to in the line.
func TestEverything(t *testing.T) {
	f := readLine(t, everything)
	law := sure[random.Distribution](t)
	minute, pace := random.Fixed(time.Minute), 3600.0*2/1400
	mean, cv := 0.8, 0.1
	want := &stations.Line{
		Title: "line", Setting: 1400, Lanes: 2,
		Shift: stations.Shift{Length: 10 * time.Hour, Planned: []stations.Window{
			{Name: "start-up", From: 0, To: 15 * time.Minute}, {Name: "tea", From: 2 * time.Hour, To: 130 * time.Minute},
			{Name: "break", From: 6 * time.Hour, To: 380 * time.Minute}, {Name: "cleaning", From: 570 * time.Minute, To: 10 * time.Hour}}},
		Crew: stations.Crew{Reaction: takes(20)},
		Conveyors: []stations.Conveyor{
			{Index: time.Duration(pace/4*1e9 + 0.5), Revolution: time.Duration(pace*1e9 + 0.5), Release: stations.AtCamZero, RunOut: 4},
			{Index: 400 * time.Millisecond, RunsEmpty: true}},
		Stations: []stations.Station{
			{Name: "printer", Kind: stations.Machine, Feed: stations.Feed{Conveyor: -1}, Units: 3,
				Parts:     []stations.Part{{Name: "place", Time: takes(0.5)}, {Name: "print", Time: random.Drawn(law(random.Uniform(0.2, 0.4)))}},
				Materials: []stations.Material{{Name: "ink", Holds: 1000, Reload: 900, Takes: takes(180), Unattended: true}}},
			{Name: "erector", Kind: stations.Erect, Units: 1, Turns: 2, ActsEmpty: true,
				Feed: stations.Feed{Conveyor: 0, Buffer: &stations.Buffer{Capacity: stations.Unlimited, Transit: 4 * time.Second}}, Parts: []stations.Part{{Name: "cycle", Time: takes(0.9)}},
				Miss:      stations.Miss{Chance: 0.02 * 1.5, Tries: 3, Stop: &stations.Stop{Cause: "no blank", Clear: takes(10), Scrap: 1, Unattended: true}},
				Materials: []stations.Material{{Name: "blanks", Holds: 500, Low: 80, Reload: 400, Takes: takes(35)}}},
			{Name: "sealer", Kind: stations.Seal, Feed: stations.Feed{Conveyor: 0, Pitches: 3}, Units: 1, Reject: 0.03, StandLimit: 2 * time.Minute,
				Parts: []stations.Part{{Name: "lag", Does: stations.LagPart, Time: takes(0.01)}, {Name: "close", Does: stations.ClosePart, Time: takes(0.2)},
					{Name: "dwell", Does: stations.DwellPart, Time: random.Drawn(law(random.Normal(mean, mean*cv)))}, {Name: "open", Does: stations.OpenPart, Time: takes(0.2)}},
				Stops: []stations.Stop{
					{Cause: "by chance", Chance: 0.005 * 1.5, Clear: minute},
					{Cause: "by count", Acts: law(random.Constant(900)), Clear: minute},
					{Cause: "by running", Trigger: stations.ByRunning, Every: random.Drawn(law(random.WeibullShapeScale(2, 2400))).Scale(0.5), Clear: minute, Repeat: true},
					{Cause: "by clock", Trigger: stations.ByClock, Every: random.Drawn(law(random.Exponential(7200))), Clear: minute, Unattended: true, Scrap: 2},
					{Cause: "never", Clear: minute},
				}},
			{Name: "packer", Kind: stations.Machine, Feed: stations.Feed{Conveyor: 1, Buffer: &stations.Buffer{Capacity: 4}}, Units: 1,
				Parts: []stations.Part{{Name: "cycle", Time: takes(1)}}, Miss: stations.Miss{Chance: 0.01, Tries: stations.Endless}, Ejects: true},
			{Name: "robot", Kind: stations.Offload, Feed: stations.Feed{Conveyor: 1, Pitches: 1}, Units: 2, Away: 700 * time.Millisecond,
				Parts:     []stations.Part{{Name: "cycle", Time: takes(2)}},
				Materials: []stations.Material{{Name: "empty pallet", Holds: 240, Low: 120, Reload: 120, Takes: takes(25)}}},
		},
	}
	byCount := f.Line.Stations[2].Stops[1].Acts
	if byCount.Mean() != 450 || byCount.Quantile(0.3) != 450 || byCount.Variance() != 0 {
		t.Errorf("900 cartons at twice the rate: %v", byCount)
	}
	f.Line.Stations[2].Stops[1].Acts = want.Stations[2].Stops[1].Acts
	if diff := cmp.Diff(want, f.Line, wholly); diff != "" {
		t.Error(diff)
	}
	travels := []scenarios.Travel{{Pitch: 0.1524, Shared: true, From: 10, To: 100, Law: "cycloidal"}, {}}
	if diff := cmp.Diff(travels, f.Travels); diff != "" {
		t.Error(diff)
	}
	if f.Target != 10_000 || f.Steady != nil {
		t.Errorf("target %v, steady %v", f.Target, f.Steady)
	}
	if len(f.Assumptions) != 1 || f.Assumptions[0].Path != "sealer.dwell" || f.Assumptions[0].Source != "measured" {
		t.Errorf("assumptions: %+v", f.Assumptions)
	}
	if len(f.Warnings) != 1 || !strings.Contains(f.Warnings[0].Text, "sealer.reject.by_setting is given from 1500 cartons/h to 1600 cartons/h") {
		t.Errorf("warnings: %+v", f.Warnings)
	}
}

// TestLongRun: a long run takes the place of the shift, whose length remains the unit of figures per shift.
func TestLongRun(t *testing.T) {
	const line = "run: {length: 200 h, warm_up: 2 h}\nshift: {length: 10 h}\ntarget: 100 cartons/h\nstations: [{name: a, kind: machine, cycle: 2 s}]\n"
	want := scenarios.SteadySpec{Length: 200 * time.Hour, WarmUp: 2 * time.Hour, Batches: 20, Shift: 10 * time.Hour}
	f := readLine(t, line)
	if diff := cmp.Diff(&want, f.Steady); diff != "" {
		t.Error(diff)
	}
	if f.Line.Shift.Length != 200*time.Hour || f.Target != 1000 {
		t.Errorf("length %v, target %v", f.Line.Shift.Length, f.Target)
	}
	want.WarmUp, want.Batches = 0, 10
	f = readLine(t, line, "run.warm_up=auto", "run.batches=10")
	if diff := cmp.Diff(&want, f.Steady); diff != "" {
		t.Error(diff)
	}
}

// TestDefaults: what a line is where its file says nothing.
func TestDefaults(t *testing.T) {
	f := readLine(t, "stations: [{name: a, kind: machine, cycle: 2 s}]\n")
	want := &stations.Line{Title: "line", Lanes: 1, Shift: stations.Shift{Length: 8 * time.Hour}, Stations: []stations.Station{
		{Name: "a", Kind: stations.Machine, Feed: stations.Feed{Conveyor: -1}, Units: 1, Parts: []stations.Part{{Name: "cycle", Time: takes(2)}}}}}
	if diff := cmp.Diff(want, f.Line, wholly); diff != "" {
		t.Error(diff)
	}
	f = readLine(t, `
conveyor: {revolution: 2 s, index: 0.6 s}
stations:
  - {name: erector, kind: erect, bottom_seal: 1 s}
  - {name: filler, kind: fill, after: {pitches: 2}}
  - {name: packer, kind: machine, after: {buffer: 0}, cycle: 1 s}
`)
	if c := f.Line.Conveyors[0]; c.RunOut != 1 || c.Release != stations.WhenClear {
		t.Errorf("conveyor %+v", c)
	}
	if f.Line.Stations[0].Turns != 3 {
		t.Errorf("turns %d", f.Line.Stations[0].Turns)
	}
	if filler := f.Line.Stations[1]; !filler.ActsEmpty || filler.Parts[0].Time.Mean() != 1400*time.Millisecond {
		t.Errorf("filler %+v", filler)
	}
	if b := f.Line.Stations[2].Feed; b.Conveyor != -1 || b.Buffer.Capacity != 0 {
		t.Errorf("packer %+v", b)
	}
}

// TestOverrides: an override changes the line, a wrong one is reported with all other mistakes.
func TestOverrides(t *testing.T) {
	f, err := scenarios.Open("example:oat-drink", []string{"sealer.dwell=1.1s", "lanes=2", `erector.stops.blank jam.every=40 min`, "robot.units=2"})
	if err != nil {
		t.Fatal(err)
	}
	if got := f.Line.Stations[2].Parts[2].Time.Mean(); got != 1100*time.Millisecond || f.Line.Lanes != 2 || f.Line.Stations[3].Units != 2 {
		t.Errorf("dwell %v, lanes %d", got, f.Line.Lanes)
	}
	if f.Line.Stations[0].Stops[0].Trigger != stations.ByRunning {
		t.Errorf("stop %+v", f.Line.Stations[0].Stops[0])
	}
	_, err = scenarios.Open("example:oat-drink", []string{"sealer.dwel=1.1s", "sealr.dwell=1.1s", "sealer.dwell", "sealer.open=1"})
	const want = `--set sealr.dwell: names nothing in the file
    did you mean sealer.dwell?
--set sealer.dwell: has no =
    write path=value, as in sealer.dwell=1.1s
--set sealer.open: "1" has no unit
    write 1 s, 1 min or 1 h
--set sealer.dwel: sealer: "dwel" is an unknown key
    did you mean dwell?`
	if err == nil {
		t.Fatal("accepted")
	}
	if diff := cmp.Diff(strings.Split(want, "\n"), strings.Split(err.Error(), "\n")); diff != "" {
		t.Error(diff)
	}
}

// TestOpenNothing: what can't be read at all.
func TestOpenNothing(t *testing.T) {
	for path, want := range map[string]string{
		"testdata":               "testdata: is a directory",
		"testdata/no.yaml":       "testdata/no.yaml: no such file",
		"example:oat-drnk":       `example:oat-drnk: no example is called "oat-drnk", did you mean "oat-drink"?`,
		"example:../linelaw":     `no example is called`,
		"example:":               `no example is called`,
		"testdata/mistakes.txt.": "no such file",
	} {
		_, err := scenarios.Open(path, nil)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", path, err, want)
		}
	}
}

// TestBriefFile: a file that says little of each station.
func TestBriefFile(t *testing.T) {
	f := readLine(t, `
title: Oat drink, 64 fl oz cartons, one lane        # invented demonstration data
setting: 1450 cartons/h
shift: {length: 8 h, start_up: 15 min, breaks: [{after: 4 h, length: 20 min}]}
crew: {attendants: 1, reaction: {lognormal: {mean: 20 s, cv: 0.7}}}
conveyor: {pitch: 6 in, revolution: 2.0 s, index: {from: 0 deg, to: 110 deg, law: modified sine}}
stations:
  - name: erector
    kind: erect
    bottom_seal: 0.85 s
    miss: 0.4 %
    blanks: {holds: 500, low: 80, reload: 400, takes: 35 s}
    stops:
      - {cause: blank jam, every: 900 cartons, clear: {lognormal: {mean: 55 s, cv: 0.9}}, scrap: 1}
  - name: filler
    kind: fill
    after: {pitches: 2}
  - name: sealer
    kind: seal
    after: {pitches: 2}
    close: 0.28 s
    dwell: 0.95 s
    open: 0.28 s
  - name: robot
    kind: offload
    after: {buffer: 24 cartons, transit: 4 s}
    cycle: 2.1 s
    pallet: {every: 120 cartons, takes: 25 s}
`)
	want := []stations.Conveyor{{Index: 611111111, Revolution: 2 * time.Second, RunOut: 1}} // 2 s x 110/360
	if diff := cmp.Diff(want, f.Line.Conveyors); diff != "" {
		t.Error(diff)
	}
	if robot := f.Line.Stations[3]; robot.Feed.Conveyor != -1 || robot.Materials[0].Holds != 120 || !robot.Materials[0].Unattended {
		t.Errorf("robot: %+v", robot)
	}
}

// sealParts are the kinds of part that a sealer's act is made of.
var sealParts = map[string]stations.PartKind{"lag": stations.LagPart, "close": stations.ClosePart, "dwell": stations.DwellPart, "open": stations.OpenPart}
