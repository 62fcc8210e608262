package scenarios_test

import (
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
)

// scalars are the paths of all single values below a node.
func scalars(n *document.Node) []string {
	var p document.Problems
	switch n.Kind() {
	case document.List:
		var all []string
		for _, item := range n.List(&p) {
			all = append(all, scalars(item)...)
		}
		return all
	case document.Map:
		var all []string
		for _, entry := range n.Map(&p).Entries() {
			all = append(all, scalars(entry.Value)...)
		}
		return all
	}
	return []string{n.Path()}
}

// TestNoValueBringsItDown: whatever stands in place of any single value of the examples is read, or refused with a message.
func TestNoValueBringsItDown(t *testing.T) {
	if testing.Short() {
		t.Skip("many lines, none of them side by side")
	}
	odd := []string{"{low: 1 s, high: 2 s, source: guess}", "{source: guess}", "{likely: {}, source: guess}", "[]", "{}", "null", "0", "-1 s", "1e-9 s", "1e9 h",
		"1e-9 cartons/h", "1e30 cartons/h", "200000 degC", "0 cartons", "1e9 cartons", "0 mm", "1e9 m", "~", "\"\"", "{value: 1 s, low: 2 s, high: 0 s}"}
	for _, name := range scenarios.Examples() {
		file, err := scenarios.Open("example:"+name, nil)
		if err != nil {
			continue // a study; see TestNoValueBringsAStudyDown
		}
		for i, path := range scalars(file.Document) {
			for k, value := range odd {
				if k < 2 || long() || (i+k)%19 == 0 {
					try(t, name, path+"="+value)
				}
			}
			without(t, file, path)
		}
	}
}

// without reads a line without one of its values.
func without(t *testing.T, file *scenarios.File, path string) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s without %s: panic: %v", file.Name, path, r)
		}
	}()
	root := file.Document.Clone()
	if err := document.Delete(root, path); err != nil {
		t.Errorf("%s without %s: %v", file.Name, path, err)
	}
	if _, err := scenarios.Interpret(file.Name, root); err != nil && err.Error() == "" {
		t.Errorf("%s without %s: refused without a word", file.Name, path)
	}
}

// try reads an example with a change, and times and budgets it where it is accepted.
func try(t *testing.T, name, change string) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s with %s: panic: %v", name, change, r)
		}
	}()
	file, err := scenarios.Open("example:"+name, []string{change})
	if err != nil {
		if err.Error() == "" {
			t.Errorf("%s with %s: refused without a word", name, change)
		}
		return
	}
	scenarios.BudgetOf(file.Line)
	if _, err := scenarios.TimingOf(file); err != nil && file.Line.Setting > 0 {
		t.Errorf("%s with %s: %v", name, change, err)
	}
	if scenarios.Refusal(file) == "" && len(scenarios.BeyondCeiling(file)) > 0 {
		t.Errorf("%s with %s: refused without a word", name, change)
	}
}
