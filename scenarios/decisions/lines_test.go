package decisions_test

import (
	"context"
	"strings"
	"testing"

	"dwellcast/scenarios"
)

// read reads a line file.
func read(t testing.TB, text string, overrides ...string) *scenarios.File {
	t.Helper()
	f, err := scenarios.Read("line.yaml", strings.NewReader(text), overrides)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// example reads an embedded line.
func example(t testing.TB, name string, overrides ...string) *scenarios.File {
	t.Helper()
	f, err := scenarios.Open("example:"+name, overrides)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// undisturbed takes all that is left to chance off the bench line. Its pace period is 2.4 s, and a cycle of the sealer takes
// 0.60 + 0.02 + 0.28 + dwell + 0.28 s, so that the sealer is critical from a dwell of 1.22 s.
func undisturbed(t testing.TB, overrides ...string) *scenarios.File {
	t.Helper()
	quiet := []string{"erector.miss=0 %", "sealer.reject=0 %", "crew={attendants: 1}"}
	for _, station := range []string{"erector", "filler", "sealer", "robot"} {
		quiet = append(quiet, station+".stops=[]")
	}
	return example(t, "bench-line", append(quiet, overrides...)...)
}

func lab(o scenarios.Options) *scenarios.Lab { return scenarios.NewLab("test", o) }

var background = context.Background()
