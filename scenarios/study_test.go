package scenarios_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// studied writes a study beside the bench line, and opens it.
func studied(t *testing.T, text string, readers map[string]scenarios.SectionReader) (*scenarios.Study, error) {
	t.Helper()
	folder := t.TempDir()
	line, err := scenarios.Example("bench-line")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"line.yaml": string(line), "study.yaml": text} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(folder)
	return scenarios.OpenStudy("study.yaml", nil, readers)
}

func TestStudyCases(t *testing.T) {
	s, err := studied(t, `line: line.yaml
cases:
  by path: {sealer.dwell: 1.3 s, crew.attendants: 2}
  by text: [sealer.dwell = 1.3 s, drop robot.stops.jam]
  lists:
    - {add: {robot.stops: {cause: fault, every: 2000 cartons, clear: 30 s}}}
    - drop: [filler.stops.jam, erector.stops.jam]
  new station: {add: {filler: {name: coder, kind: machine, after: {pitches: 1}, cycle: 0.7 s}}}
  decoupled: {robot.after: {buffer: 10 cartons}, robot.units: 2}
`, nil)
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string]*stations.Line{}
	for _, c := range s.Cases {
		lines[c.Name] = c.File.Line
	}
	if line := lines["by path"]; line.Crew.Attendants != 2 || line.Stations[2].Parts[2].Time.Mean().Seconds() != 1.3 {
		t.Errorf("by path: %d attendants, parts %v", line.Crew.Attendants, line.Stations[2].Parts)
	}
	if line := lines["by text"]; len(line.Stations[3].Stops) != 0 || line.Stations[2].Parts[2].Time.Mean().Seconds() != 1.3 {
		t.Errorf("by text: stops %v, parts %v", line.Stations[3].Stops, line.Stations[2].Parts)
	}
	if line := lines["lists"]; len(line.Stations[3].Stops) != 2 || len(line.Stations[0].Stops)+len(line.Stations[1].Stops) != 0 {
		t.Errorf("lists: robot has %v, erector %v", line.Stations[3].Stops, line.Stations[0].Stops)
	}
	if line := lines["new station"]; len(line.Stations) != 5 || line.Stations[2].Name != "coder" {
		t.Errorf("new station: %d stations, third %s", len(line.Stations), line.Stations[2].Name)
	}
	if st := lines["decoupled"].Stations[3]; st.Units != 2 || st.Feed.Buffer == nil || st.Feed.Buffer.Capacity != 10 {
		t.Errorf("decoupled: %+v", st)
	}
	if len(s.Line.Line.Stations) != 4 || s.Line.Line.Crew.Attendants != 1 {
		t.Error("the cases changed the base")
	}
	want := []string{"sealer.dwell = 1.3 s", "drop robot.stops.jam"}
	if diff := cmp.Diff(want, s.Cases[1].Changes); diff != "" {
		t.Error(diff)
	}
}

// Every mistake is found at once, at its place in the study.
func TestStudyMistakes(t *testing.T) {
	_, err := studied(t, `line: line.yaml
speed: 5
cases:
  typo: {sealer.dwel: 1.3 s}
  nowhere: {sealler.dwell: 1.3 s}
  unit: {sealer.dwell: 1.3 cartons}
  text unit: [sealer.dwell = 1.3 cartons]
  gone: {drop: sealer.stops.jamm}
  headless: {drop: erector}
  nothing: {}
compare: {smallest: 3}
`, map[string]scenarios.SectionReader{"compare": func(n *document.Node, _ *scenarios.Study, p *document.Problems) {
		n.Map(p).Take("smallest").Ratio(p)
	}})
	list, ok := errors.AsType[document.ProblemList](err)
	if !ok {
		t.Fatalf("got %v", err)
	}
	text := list.Error()
	for _, want := range []string{
		`study.yaml:2:1: "speed" is an unknown key`,
		"study.yaml:4:23: sealer: \"dwel\" is an unknown key\n    did you mean dwell?",
		"study.yaml:5:13: sealler.dwell: names nothing in the file\n    did you mean sealer.dwell?",
		`study.yaml:6:24: sealer.dwell: "1.3 cartons" `,
		`study.yaml:7:15: sealer.dwell: "1.3 cartons" `,
		"study.yaml:8:16: sealer.stops.jamm: names nothing in the file\n    did you mean sealer.stops.jam?",
		`study.yaml:9:3: "headless" leads to a mistake in the line: line.yaml:22:12: filler.after: stands at the first station`,
		`study.yaml:10:12: cases.nothing: changes nothing`,
		`study.yaml:11:21: compare.smallest: "3" has no unit`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if t.Failed() {
		t.Log(text)
	}
}

func TestStudyLineMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"line: lime.yaml\ncases: {a: {sealer.dwell: 1 s}}\n":           "study.yaml:1:7: line: \"lime.yaml\" can't be read as the line: no such file",
		"line: example:oat-drunk\n":                                    `study.yaml:1:7: line: "example:oat-drunk" can't be read as the line: no example is called "oat-drunk", did you mean "oat-drink"?`,
		"cases: {a: {sealer.dwell: 1 s}}\n":                            `study.yaml:1:1: "line" is missing`,
		"line: {setting: 5 s, stations: []}\ncases: {a: {lanes: 2}}\n": "study.yaml:1:17: setting: \"5 s\" ",
		"line: line.yaml\ncases: [a, b]\n":                             "study.yaml:2:8: cases: is a list where a map is wanted",
		"line: line.yaml\ncases: {a: 5 s}\n":                           `study.yaml:2:12: cases.a: "5 s" says not what to change`,
		"line: line.yaml\ncases: {a: {lanes: 2}, a: {lanes: 3}}\n":     `"a" is written twice`,
	} {
		_, err := studied(t, text, nil)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives\n%v\nwant %s", text, err, want)
		}
	}
}

func TestParseCase(t *testing.T) {
	base, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := scenarios.ParseCase(base, "long dwell: sealer.dwell=1.3s; sealer.close = 0.3 s;drop robot.stops.jam; filler.stops+={cause: x, every: 1 h, clear: 5 s}")
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"sealer.dwell = 1.3s", "sealer.close = 0.3 s", "drop robot.stops.jam", "filler.stops += {cause: x, every: 1 h, clear: 5 s}"}
	if diff := cmp.Diff(want, c.Changes); diff != "" || c.Name != "long dwell" {
		t.Errorf("%s: %s", c.Name, diff)
	}
	if c, err := scenarios.ParseCase(base, "sealer.dwell=1.3s"); err != nil || c.Name != "sealer.dwell=1.3s" {
		t.Errorf("without a name: %q, %v", c.Name, err)
	}
	for text, want := range map[string]string{
		"a: sealer.dwel=1 s":   `--case "a": sealer: "dwel" is an unknown key`,
		"a: seler.dwell=1 s":   "names nothing in the file\n    did you mean sealer.dwell?",
		"a:":                   "changes nothing",
		"a: sealer.dwell":      "has no =",
		"a: sealer.dwell=1 kg": `--case "a": sealer.dwell: "1 kg"`,
	} {
		if _, err := scenarios.ParseCase(base, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives\n%v\nwant %s", text, err, want)
		}
	}
}

// A variant does not touch the line that it is made from, shares its luck, and is kept under its tag.
func TestVariant(t *testing.T) {
	base, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	lab := scenarios.NewLab("test", scenarios.Options{Replications: 20, Seed: 3, Workers: 1})
	halve := func(line *stations.Line) { line.Stations[2].Stops[0].Chance /= 2 }
	rarer, err := lab.Variant(base, "half the jams of the sealer", halve)
	if err != nil {
		t.Fatal(err)
	}
	same, err := lab.Variant(base, "nothing", func(*stations.Line) {})
	if err != nil {
		t.Fatal(err)
	}
	plain, err := lab.Shifts(base)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []*scenarios.Shifts{rarer, same, plain} {
		if _, err := s.Extend(context.Background(), 20); err != nil {
			t.Fatal(err)
		}
	}
	if !slices.Equal(same.Good(), plain.Good()) || slices.Equal(rarer.Good(), plain.Good()) {
		t.Errorf("base %v\nsame %v\nrarer %v", plain.Good(), same.Good(), rarer.Good())
	}
	if again, err := lab.Variant(base, "half the jams of the sealer", halve); err != nil || again != rarer {
		t.Errorf("a second request gives other shifts: %v", err)
	}
}

func TestExampleStudy(t *testing.T) {
	s, err := scenarios.OpenStudy("example:what-if", nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Cases) != 5 || !isStudy(t, "example:what-if") || isStudy(t, "example:oat-drink") {
		t.Errorf("%d cases", len(s.Cases))
	}
	if slices.Contains(scenarios.Examples(), "what-if") {
		t.Error("a study is listed among the lines")
	}
}

func isStudy(t *testing.T, path string) bool {
	t.Helper()
	in, err := scenarios.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return in.IsStudy()
}
