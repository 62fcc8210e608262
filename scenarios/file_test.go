package scenarios_test

import (
	"testing"

	"dwellcast/scenarios"
)

// TestExamples: every embedded example is read without a mistake and without a warning, and can be simulated.
func TestExamples(t *testing.T) {
	for _, name := range scenarios.Examples() {
		t.Run(name, func(t *testing.T) {
			f, err := scenarios.Open("example:"+name, nil)
			if err != nil {
				t.Fatal(err)
			}
			if scenarios.ExampleTitle(name) != f.Line.Title {
				t.Errorf("listed as %q, but its title is %q", scenarios.ExampleTitle(name), f.Line.Title)
			}
			for _, w := range append(f.Warnings, scenarios.BudgetOf(f.Line).Warnings...) {
				t.Errorf("%s: %s", w.About, w.Text)
			}
		})
	}
}
