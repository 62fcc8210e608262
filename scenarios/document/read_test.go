package document_test

import (
	"strings"
	"testing"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"github.com/google/go-cmp/cmp"
)

const sample = `title: Oat drink, 64 fl oz cartons, one lane
setting: 1450 cartons/h
shift: {length: 8 h, start_up: 15 min, breaks: [{after: 4 h, length: 20 min}]}
stations:
  - name: erector
    kind: erect
    miss: 0.4 %
    blanks: {holds: 500, low: 80 blanks}
    stops:
      - {cause: blank jam, every: 900 cartons, clear: {lognormal: {mean: 55 s, cv: 0.9}}, scrap: 1}
  - name: sealer
    kind: seal
    dwell: {value: 0.95 s, source: guess, low: 0.8 s, high: 1.2 s}
    open: 0.28 s
    coded: yes
`

func TestReaders(t *testing.T) {
	root := load(t, sample)
	var p document.Problems
	f := root.Map(&p)
	check := func(got, want any) {
		t.Helper()
		if diff := cmp.Diff(want, got); diff != "" {
			t.Error(diff)
		}
	}
	check(f.Require("title").Text(&p), "Oat drink, 64 fl oz cartons, one lane")
	check(f.Require("setting").Rate(&p), 1450.0)
	shift := f.Take("shift").Map(&p)
	check(shift.Take("length").PositiveDuration(&p), 8*time.Hour)
	check(shift.Take("start_up").Duration(&p), 15*time.Minute)
	check(shift.Take("cleaning").Duration(&p), time.Duration(0))
	check(len(shift.Take("breaks").List(&p)), 1)
	shift.Done()
	stations := f.Require("stations").List(&p)
	erector := stations[0].Map(&p)
	check(erector.Require("name").Text(&p), "erector")
	check(erector.Require("kind").OneOf(&p, "erect", "fill"), "erect")
	check(erector.Take("miss").Ratio(&p), 0.004)
	blanks := erector.Take("blanks").Map(&p)
	check(blanks.Take("holds").Count(&p), 500)
	check(blanks.Take("low").Count(&p, document.Limit{Min: "1", Max: "100 blanks"}), 80)
	stop := erector.Take("stops").List(&p)[0].Map(&p)
	check(stop.Take("clear").Has("lognormal"), true)
	check(stop.Take("clear").Map(&p).Take("lognormal").Map(&p).Take("cv").Number(&p), 0.9)
	check(stop.Take("scrap").Int(&p), 1)
	sealer := stations[1].Map(&p)
	check(sealer.Take("dwell").Duration(&p), 950*time.Millisecond)
	check(sealer.Take("coded").Bool(&p), true)
	if err := p.Err(); err != nil {
		t.Fatal(err)
	}
	check(root.Assumptions(), []document.Assumption{{
		Path: "sealer.dwell", At: document.Position{File: "line.yaml", Line: 13, Column: 12},
		Source: "guess", Value: "0.95 s", Low: "0.8 s", High: "1.2 s",
	}})
}

func TestMeasures(t *testing.T) {
	root := load(t, "pitch: 6 in\nto: 110 deg\ndose: 64 fl oz\npacked: 1 gal\n")
	var p document.Problems
	f := root.Map(&p)
	if got := f.Take("pitch").Length(&p); got != 0.1524 {
		t.Errorf("pitch %v m, want 0.1524 (1 in = 25.4 mm, NIST SP 811)", got)
	}
	if got := f.Take("to").Angle(&p); got != 110 {
		t.Errorf("to %v deg, want 110", got)
	}
	if got := f.Take("dose").Measure(&p, quantity.Volume, "gal"); got != 0.5 {
		t.Errorf("dose %v gal, want 0.5 (NIST Handbook 44)", got)
	}
	if got := f.Take("packed").Quantity(&p, quantity.Volume); got.String() != "1 gal" {
		t.Errorf("packed %v", got)
	}
	if err := p.Err(); err != nil {
		t.Error(err)
	}
}

// TestAllMistakesAtOnce: one walk over a bad file reports everything, by position, each once.
func TestAllMistakesAtOnce(t *testing.T) {
	root := load(t, `setting: 8 h
titel: x
shift: {length: 1,5 h}
crew:
stations:
  - kind: sael
    dwell: 0.95
    dwell: 1 s
    open: -1 s
    miss: 1.2
    reject: 0.004
    holds: 3.5
    lanes: two
    share: 120 %
`)
	var p document.Problems
	for range 2 { // the second walk must add nothing
		f := root.Map(&p)
		f.Require("title", "Oat drink").Text(&p)
		f.Require("setting").Rate(&p)
		shift := f.Take("shift").Map(&p)
		shift.Take("length").Duration(&p)
		shift.Done()
		f.Take("crew").Map(&p).Done()
		s := f.Take("stations").List(&p)[0].Map(&p)
		s.Require("name").Text(&p)
		s.Take("kind").OneOf(&p, "fill", "seal")
		s.Take("dwell").PositiveDuration(&p)
		s.Take("open").Duration(&p)
		s.Take("miss").Ratio(&p)
		s.Take("reject").Ratio(&p)
		s.Take("holds").Count(&p)
		s.Take("lanes").Int(&p)
		s.Take("share").Ratio(&p)
		s.Done()
		f.Done()
	}
	want := `line.yaml:1:1: "title" is missing
    add title: Oat drink
line.yaml:1:10: setting: "8 h" is a time where a rate is wanted
    write for example 1450 cartons/h
line.yaml:2:1: "titel" is an unknown key
    did you mean title?
line.yaml:3:17: shift.length: "1" has no unit
    write 1 s, 1 min or 1 h
line.yaml:3:19: shift: "5 h" is an unknown key
    a comma parts the keys in braces; write 1.5 h with a decimal point
line.yaml:4:6: crew: has no value
    write key: value lines, or {key: value, ...}
line.yaml:6:5: stations.1: "name" is missing
    add name:
line.yaml:6:11: stations.1.kind: "sael" is not one of the words allowed here
    did you mean seal? otherwise write fill or seal
line.yaml:7:12: stations.1.dwell: "0.95" has no unit
    write 0.95 s, 0.95 min or 0.95 h
line.yaml:8:5: stations.1: "dwell" is written twice
    keep one; the first is at line.yaml:7:5
line.yaml:9:11: stations.1.open: "-1 s" is less than 0 s
    write 0 s or more
line.yaml:10:11: stations.1.miss: "1.2" has no unit
    write a share between 0 % and 100 %, such as 0.4 %
line.yaml:11:13: stations.1.reject: "0.004" has no unit
    write 0.4 %
line.yaml:12:12: stations.1.holds: "3.5" is not a whole number
    write a whole number such as 24 cartons
line.yaml:13:12: stations.1.lanes: "two" does not start with a number
    write a plain number such as 3 or 0.9
line.yaml:14:12: stations.1.share: "120 %" is more than 100 %
    a share lies between 0 % and 100 %`
	if diff := cmp.Diff(want, p.Err().Error()); diff != "" {
		t.Error(diff)
	}
}

// TestMessages holds the text of every complaint of a reader.
func TestMessages(t *testing.T) {
	at := func(n *document.Node, p *document.Problems) *document.Node { return n.Map(p).Take("x") }
	tests := []struct {
		text string
		read func(n *document.Node, p *document.Problems)
		want string
	}{
		{"x: [1]", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:4: x: is a list where a single value is wanted; write for example 0.95 s`},
		{"x: 5", func(n *document.Node, p *document.Problems) { at(n, p).List(p) }, `line.yaml:1:4: x: "5" is a single value where a list is wanted; write a line with a dash for each item, or [...]`},
		{"x: 5", func(n *document.Node, p *document.Problems) { at(n, p).Map(p) }, `line.yaml:1:4: x: "5" is a single value where a map is wanted; write key: value lines, or {key: value, ...}`},
		{"x:", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:3: x: has no value; write for example 0.95 s`},
		{"x: ''", func(n *document.Node, p *document.Problems) { at(n, p).Text(p) }, `line.yaml:1:4: x: is an empty text; write a text`},
		{"x: maybe", func(n *document.Node, p *document.Problems) { at(n, p).Bool(p) }, `line.yaml:1:4: x: "maybe" is neither yes nor no; write yes or no`},
		{"x: blue", func(n *document.Node, p *document.Problems) { at(n, p).OneOf(p, "erect", "fill", "seal") }, `line.yaml:1:4: x: "blue" is not one of the words allowed here; write erect, fill or seal`},
		{"x: 2.5", func(n *document.Node, p *document.Problems) { at(n, p).Int(p) }, `line.yaml:1:4: x: "2.5" is not a whole number; write a whole number`},
		{"x: 0", func(n *document.Node, p *document.Problems) { at(n, p).Int(p, document.Limit{Min: "1"}) }, `line.yaml:1:4: x: "0" is less than 1; write 1 or more`},
		{"x: 1e12", func(n *document.Node, p *document.Problems) { at(n, p).Int(p) }, `line.yaml:1:4: x: "1e12" is more than 1000000000; write 1000000000 or less`},
		{"x: 1", func(n *document.Node, p *document.Problems) {
			at(n, p).Number(p, document.Limit{Below: "1", Hint: "keep it small"})
		}, `line.yaml:1:4: x: "1" is not less than 1; keep it small`},
		{"x: 3 s", func(n *document.Node, p *document.Problems) { at(n, p).Number(p) }, `line.yaml:1:4: x: "3 s" has a unit where a plain number is wanted; write 3`},
		{"x: .nan", func(n *document.Node, p *document.Problems) { at(n, p).Number(p) }, `line.yaml:1:4: x: ".nan" is not a finite number; write a plain number such as 3 or 0.9`},
		{"x: 0 s", func(n *document.Node, p *document.Problems) { at(n, p).PositiveDuration(p) }, `line.yaml:1:4: x: "0 s" is not more than 0 s; write more than 0 s`},
		{"x: 10 h", func(n *document.Node, p *document.Problems) {
			at(n, p).PositiveDuration(p, document.Limit{Max: "60 s"})
		}, `line.yaml:1:4: x: "10 h" is more than 60 s; write 60 s or less`},
		{"x: 1e20 h", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:4: x: "1e20 h" is more than 100 years; write 100 years or less`},
		{"x: 0 /h", func(n *document.Node, p *document.Problems) { at(n, p).Rate(p) }, `line.yaml:1:4: x: "0 /h" is not more than 0 cartons/h; write more than 0 cartons/h`},
		{"x: -1", func(n *document.Node, p *document.Problems) { at(n, p).Count(p) }, `line.yaml:1:4: x: "-1" is less than 0; write 0 or more`},
		{"x: 1e10 cartons", func(n *document.Node, p *document.Problems) { at(n, p).Count(p) }, `line.yaml:1:4: x: "1e10 cartons" is more than 1000000000; write 1000000000 or less`},
		{"x: {source: guess}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:4: x: "value" is missing; add value: 0.95 s`},
		{"x: {value: 1 s, source: gess}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:25: x.source: "gess" is not one of the words allowed here; did you mean guess? otherwise write guess, supplier or measured`},
		{"x: {value: 1 s, sorce: guess}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:17: x: "sorce" is an unknown key; did you mean source?`},
		{"x: {value: 1 s, likely: 2 s}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:25: x.likely: "2 s" stands beside a value; keep value or likely`},
		{"x: {low: 3 s, likely: 2 s}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:10: x.low: "3 s" is more than the value 2 s; write low, likely and high in rising order`},
		{"x: {likely: 2, high: 1}", func(n *document.Node, p *document.Problems) { at(n, p).Int(p) }, `line.yaml:1:22: x.high: "1" is less than the value 2; write low, likely and high in rising order`},
		{"x: {value: 1 s, low: 5 %}", func(n *document.Node, p *document.Problems) { at(n, p).Duration(p) }, `line.yaml:1:22: x.low: "5 %" is a share where a time is wanted; write for example 0.95 s`},
		{"[1, 2]", func(n *document.Node, p *document.Problems) { at(n, p).Text(p) }, `line.yaml:1:1: is a list where a map is wanted; write key: value lines, or {key: value, ...}`},
		{"abc", func(n *document.Node, p *document.Problems) { at(n, p).Text(p) }, `line.yaml:1:1: "abc" is a single value where a map is wanted; write key: value lines, or {key: value, ...}`},
		{"x: " + strings.Repeat("y", 70), func(n *document.Node, p *document.Problems) { at(n, p).Bool(p) }, `line.yaml:1:4: x: "` + strings.Repeat("y", 60) + `..." is neither yes nor no; write yes or no`},
		{"colour: red", func(n *document.Node, p *document.Problems) {
			f := n.Map(p)
			f.Take("dwell")
			f.Take("close")
			f.Done()
		}, `line.yaml:1:1: "colour" is an unknown key; known here: close, dwell`},
	}
	for _, tt := range tests {
		var p document.Problems
		tt.read(load(t, tt.text), &p)
		list, _ := p.Err().(document.ProblemList)
		if len(list) != 1 || list[0].Error() != tt.want {
			t.Errorf("%s:\n got %v\nwant %s", tt.text, list, tt.want)
		}
	}
}

// TestEntries: a table whose keys are quantities.
func TestEntries(t *testing.T) {
	root := load(t, "{1200 cartons/h: 1, 1500 cartons/h: 1.6}")
	var p document.Problems
	f := root.Map(&p)
	var got [][2]float64
	for _, e := range f.Entries() {
		got = append(got, [2]float64{e.Key.Rate(&p), e.Value.Number(&p)})
	}
	f.Done()
	if diff := cmp.Diff([][2]float64{{1200, 1}, {1500, 1.6}}, got); diff != "" || p.Err() != nil {
		t.Error(diff, p.Err())
	}
}

// TestAbsent: readers of an absent node are silent.
func TestAbsent(t *testing.T) {
	var p document.Problems
	var n *document.Node
	f := n.Map(&p)
	f.Require("x").Duration(&p)
	f.Entries()
	f.Done()
	n.List(&p)
	n.Text(&p)
	n.Bool(&p)
	n.OneOf(&p, "a")
	n.Number(&p)
	n.Count(&p)
	n.Ratio(&p)
	n.Rate(&p)
	n.Length(&p)
	n.Assumed(&p)
	if n.Has("x") || f.Has("x") || p.Err() != nil {
		t.Errorf("an absent node reports %v", p.Err())
	}
}

func load(t *testing.T, text string) *document.Node {
	t.Helper()
	root, err := document.Load("line.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return root
}
