package scenarios_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// FuzzRead: whatever the text, Read ends with a line or with problems that say where and what; and a line that it accepts
// can be simulated, at least for its first second.
func FuzzRead(f *testing.F) {
	for _, name := range scenarios.Examples() {
		text, err := scenarios.Example(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text), "sealer.dwell=1.1s")
	}
	mistakes, err := os.ReadFile("testdata/mistakes.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, part := range strings.Split(string(mistakes), "\n-- ") {
		f.Add(part[strings.Index(part, "\n")+1:], "stations.1.cycle={exponential: 1 s}")
	}
	f.Add(everything, "")
	f.Add("0", "=1")
	f.Fuzz(func(t *testing.T, text, override string) {
		var overrides []string
		if override != "" {
			overrides = []string{override}
		}
		file, err := scenarios.Read("line.yaml", strings.NewReader(text), overrides)
		if err != nil {
			checkProblems(t, err)
			return
		}
		simulateStart(t, file.Line)
	})
}

func checkProblems(t *testing.T, err error) {
	t.Helper()
	list, ok := errors.AsType[document.ProblemList](err)
	if !ok || len(list) == 0 {
		t.Fatalf("%T: %v", err, err)
	}
	for _, problem := range list {
		if problem.Message == "" || problem.At.String() == "" {
			t.Errorf("says nothing or names no place: %+v", problem)
		}
	}
}

func simulateStart(t *testing.T, line *stations.Line) {
	t.Helper()
	if line.Shift.Length > time.Second {
		line.Shift = stations.Shift{Length: time.Second}
	}
	sim, err := stations.New(line)
	if err != nil {
		t.Fatal(err)
	}
	if err := sim.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
}
