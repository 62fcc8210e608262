package decisions_test

import (
	"errors"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// FuzzStudy: whatever the text of a study and the change to its line, reading ends with a study or with problems that say where and what.
func FuzzStudy(f *testing.F) {
	for _, name := range []string{"what-if", "size-line"} {
		text, err := scenarios.Example(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text), "sealer.dwell=+0.1s")
	}
	f.Add("line: example:bench-line\nsize: {demand: {low: 1 cartons/year, high: 2 cartons/year, source: guess}, candidates: [{name: a}]}", "setting=+5 %")
	f.Add("line: example:bench-line\nsize: {waste: {low: 1 money/carton, source: guess}}", "")
	f.Add("line: example:bench-line\ncases: {a: {sealer.dwell: -5 %}, b: [drop sealer.stops.jam]}", "")
	f.Fuzz(func(t *testing.T, text, override string) {
		in, err := scenarios.LoadText("study.yaml", strings.NewReader(text))
		if err == nil {
			var spec decisions.SizeSpec
			var overrides []string
			if override != "" {
				overrides = []string{override}
			}
			_, err = in.Study(overrides, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&spec)})
		}
		if err == nil {
			return
		}
		list, ok := errors.AsType[document.ProblemList](err)
		if !ok || len(list) == 0 {
			t.Fatalf("%T: %v", err, err)
		}
		for _, problem := range list {
			if problem.Message == "" || problem.At.String() == "" {
				t.Errorf("says nothing or names no place: %+v", problem)
			}
		}
	})
}
