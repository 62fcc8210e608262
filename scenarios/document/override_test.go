package document_test

import (
	"strings"
	"testing"

	"dwellcast/scenarios/document"
	"github.com/google/go-cmp/cmp"
)

func TestPaths(t *testing.T) {
	want := `title
setting
shift.length
shift.start_up
shift.breaks.1.after
shift.breaks.1.length
erector.name
erector.kind
erector.miss
erector.blanks.holds
erector.blanks.low
erector.stops.blank jam.cause
erector.stops.blank jam.every
erector.stops.blank jam.clear.lognormal.mean
erector.stops.blank jam.clear.lognormal.cv
erector.stops.blank jam.scrap
sealer.name
sealer.kind
sealer.dwell.value
sealer.dwell.source
sealer.dwell.low
sealer.dwell.high
sealer.open
sealer.coded`
	if diff := cmp.Diff(want, strings.Join(document.Paths(load(t, sample)), "\n")); diff != "" {
		t.Error(diff)
	}
}

func TestApply(t *testing.T) {
	tests := []struct{ change, path, want string }{
		{"sealer.dwell=1.1s", "sealer.dwell", "1.1s"},
		{"stations.sealer.dwell = 1.1s", "sealer.dwell", "1.1s"},
		{"stations.2.dwell=1.1s", "sealer.dwell", "1.1s"},
		{"setting=1500 cartons/h", "setting", "1500 cartons/h"},
		{"stations.erector.stops.blank jam.every=700 cartons", "erector.stops.1.every", "700 cartons"},
		{"erector.stops.1.clear={exponential: {mean: 40 s}}", "erector.stops.blank jam.clear.exponential.mean", "40 s"},
		{"shift.breaks.1.length=30 min", "shift.breaks.1.length", "30 min"},
		{"shift.cleaning=10 min", "shift.cleaning", "10 min"},
		{"crew={attendants: 2}", "crew.attendants", "2"},
		{"stations+={name: capper, kind: machine}", "capper.kind", "machine"},
		{"erector+={name: coder, kind: machine}", "stations.2.name", "coder"},
		{"sealer.stops+={cause: glue, every: 2 h}", "sealer.stops.glue.every", "2 h"},
		{"erector.stops+={cause: v1.2 film, every: 2 h}", `erector.stops."v1.2 film".every`, "2 h"},
		{`"odd.key"=a=b`, `"odd.key"`, "a=b"},
	}
	for _, tt := range tests {
		root := load(t, sample)
		base, _ := document.Render(root)
		changed := root.Clone()
		if err := document.Apply(changed, tt.change); err != nil {
			t.Errorf("%s: %v", tt.change, err)
			continue
		}
		n, err := document.Find(changed, tt.path)
		if err != nil || n.Raw() != tt.want {
			t.Errorf("%s: %s is %v, %v; want %s", tt.change, tt.path, n, err, tt.want)
		}
		if after, _ := document.Render(root); after != base {
			t.Errorf("%s changed the original of the clone", tt.change)
		}
	}
}

func TestApplyRefusals(t *testing.T) {
	for change, want := range map[string]string{
		"sealr.dwell=1.1s":        "--set sealr.dwell: names nothing in the file\n    did you mean sealer.dwell?",
		"sealer.dwel.mean=1 s":    "--set sealer.dwel.mean: names nothing in the file\n    did you mean sealer.dwell?",
		"sealer.open.part.x=1 s":  "--set sealer.open.part.x: names nothing in the file\n    sealer.open is \"0.28 s\" and has no parts",
		"sealer.open.part=1 s":    "--set sealer.open.part: names nothing in the file\n    sealer.open is \"0.28 s\" and has no parts",
		"robot7.tool.x=1":         "--set robot7.tool.x: names nothing in the file\n    the file has erector, sealer, title, setting, shift, stations; to add robot7 give it whole, as in robot7={tool: ...}",
		"erector.stops.9.every=1": "--set erector.stops.9.every: names nothing in the file\n    erector.stops has blank jam",
		"shift.breaks.2=1":        "--set shift.breaks.2: names nothing in the file\n    did you mean shift.breaks.1?",
		"crew.attendants=2":       "--set crew.attendants: names nothing in the file\n    the file has erector, sealer, title, setting, shift, stations; to add crew give it whole, as in crew={attendants: ...}",
		"setting":                 "--set setting: has no =\n    write path=value, as in sealer.dwell=1.1s",
		"setting=":                "--set setting: has no value\n    write path=value, as in sealer.dwell=1.1s",
		"setting=[1":              "--set setting: a comma or a closing bracket is missing\n    the bracket was opened in line 1, column 1",
		"setting=%5":              "--set setting: a value cannot start here\n    put a text that starts with % in quotes",
		"a..b=1":                  "a..b: is not a path\n    write names joined by points, as in sealer.dwell",
		"=1":                      "--set =1: has no path before the =\n    write path=value, as in sealer.dwell=1.1s",
		"sealer.dwell+=1 s":       "--set sealer.dwell: is a map, not a list\n    write path=value to set it",
	} {
		root := load(t, sample)
		if err := document.Apply(root, change); err == nil || err.Error() != want {
			t.Errorf("%s:\n got %v\nwant %s", change, err, want)
		}
	}
}

// TestOverrideInMessages: what an override brought in is reported under its name.
func TestOverrideInMessages(t *testing.T) {
	root := load(t, "stations: [{name: sealer, dwell: 1}]")
	for _, change := range []string{"sealer.dwel=1.1s", "sealer.stop={every: 9}", "dwell=2 s"} {
		if err := document.Apply(root, change); err != nil {
			t.Fatal(err)
		}
	}
	var p document.Problems
	f := root.Map(&p)
	s := f.Take("stations").List(&p)[0].Map(&p)
	s.Take("name")
	s.Take("dwell").Duration(&p)
	s.Take("stop").Map(&p).Take("every").Duration(&p)
	s.Done()
	f.Done()
	want := `line.yaml:1:34: sealer.dwell: "1" has no unit
    write 1 s, 1 min or 1 h
--set sealer.stop: sealer.stop.every: "9" has no unit
    write 9 s, 9 min or 9 h
--set sealer.dwel: sealer: "dwel" is an unknown key
    did you mean dwell?
--set dwell: "dwell" is an unknown key
    did you mean sealer.dwell?`
	if diff := cmp.Diff(want, p.Err().Error()); diff != "" {
		t.Error(diff)
	}
}

// TestNodeOfAnotherDocument: a change from a study keeps its position in the study.
func TestNodeOfAnotherDocument(t *testing.T) {
	root := load(t, sample)
	study, err := document.Load("study.yaml", strings.NewReader("set:\n  sealer.dwell: 1,2 s\nadd: {name: coder}\n"))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range study.Map(&document.Problems{}).Take("set").Map(&document.Problems{}).Entries() {
		if err := document.SetNode(root, e.Key.Raw(), e.Value); err != nil {
			t.Fatal(err)
		}
	}
	coder, _ := document.Find(study, "add")
	if err := document.AppendNode(root, "erector", coder); err != nil {
		t.Fatal(err)
	}
	dwell, _ := document.Find(root, "sealer.dwell")
	var p document.Problems
	dwell.Duration(&p)
	want := "study.yaml:2:17: sealer.dwell: \"1,2 s\" has a comma in the number\n    write 1.2 s"
	if err := p.Err(); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	if second, err := document.Find(root, "stations.2"); err != nil || second.Path() != "coder" {
		t.Errorf("the second station is %v, %v", second, err)
	}
	if err := document.SetNode(root, "nowhere.x", dwell); err == nil || !strings.HasPrefix(err.Error(), "study.yaml:2:17: nowhere.x: names nothing") {
		t.Errorf("got %v", err)
	}
}

func TestDelete(t *testing.T) {
	root := load(t, sample)
	for _, path := range []string{"erector", "shift.breaks.1", "setting"} {
		if err := document.Delete(root, path); err != nil {
			t.Errorf("delete %s: %v", path, err)
		}
		if _, err := document.Find(root, path); err == nil {
			t.Errorf("%s is still there", path)
		}
	}
	if _, err := document.Find(root, "sealer.dwell"); err != nil {
		t.Error(err)
	}
	want := "--set sealer.dwll: names nothing in the file\n    did you mean sealer.dwell?"
	if err := document.Delete(root, "sealer.dwll"); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestFindNothing(t *testing.T) {
	want := "sealer.dwel: names nothing in the file\n    did you mean sealer.dwell?"
	if _, err := document.Find(load(t, sample), "sealer.dwel"); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}
