package document_test

import (
	"strings"
	"testing"

	"dwellcast/scenarios/document"
	"github.com/google/go-cmp/cmp"
)

// TestRender: a what-if keeps the layout of the file it came from.
func TestRender(t *testing.T) {
	root := load(t, `title: "Oat: drink" # invented
setting: 1450 cartons/h
shift: {length: 8 h, breaks: []}
stations:
  - name: filler
    coded: yes
  - name: sealer
    dwell: 0.95 s
notes: |
  first
  second
`)
	for _, change := range []string{"sealer.dwell={value: 1.2 s, source: measured}", "filler+={name: coder, kind: machine}", "crew={attendants: 2}"} {
		if err := document.Apply(root, change); err != nil {
			t.Fatal(err)
		}
	}
	want := `title: "Oat: drink"
setting: 1450 cartons/h
shift: {length: 8 h, breaks: []}
stations:
- name: filler
  coded: yes
- {name: coder, kind: machine}
- name: sealer
  dwell: {value: 1.2 s, source: measured}
notes: |
  first
  second
crew: {attendants: 2}
`
	got, err := document.Render(root)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestAssumedDistribution: a caller can look inside an assumption for a distribution.
func TestAssumedDistribution(t *testing.T) {
	root := load(t, "clear: {value: {lognormal: {mean: 55 s, cv: 0.9}}, source: measured}\n")
	var p document.Problems
	clear := root.Map(&p).Take("clear").Assumed(&p)
	if !clear.Has("lognormal") || clear.Kind() != document.Map || p.Err() != nil {
		t.Errorf("inside is %v, %v", clear.Kind(), p.Err())
	}
	want := []document.Assumption{{Path: "clear", At: document.Position{File: "line.yaml", Line: 1, Column: 8}, Source: "measured"}}
	if diff := cmp.Diff(want, root.Assumptions()); diff != "" {
		t.Error(diff)
	}
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := document.Load("line.yaml", strings.NewReader(sample)); err != nil {
			b.Fatal(err)
		}
	}
}
