package decisions_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// theoryRows are the rows of the reference table whose id begins with a prefix.
func theoryRows(t *testing.T, prefix string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/theory.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, head := range lines[0] {
			row[head] = line[i]
		}
		if strings.HasPrefix(row["id"], prefix) {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("no rows %s", prefix)
	}
	return rows
}

func parameter(t *testing.T, row map[string]string, key string) string {
	t.Helper()
	for _, part := range strings.Split(row["parameters"], ";") {
		if name, value, _ := strings.Cut(part, "="); strings.TrimSpace(name) == key {
			return strings.TrimSpace(value)
		}
	}
	t.Fatalf("%s has no parameter %s", row["id"], key)
	return ""
}

func numbersOf(t *testing.T, text, sep string) []float64 {
	t.Helper()
	var list []float64
	for _, part := range strings.Split(text, sep) {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, x)
	}
	return list
}

// tandem is a line file of stations with exponential times of the means given, in seconds, and buffers between them.
func tandem(t *testing.T, means, buffers []float64, hours int) *scenarios.File {
	t.Helper()
	var text strings.Builder
	fmt.Fprintf(&text, "shift: {length: %d h}\nstations:\n", hours)
	for i, mean := range means {
		fmt.Fprintf(&text, "  - {name: s%d, kind: machine, cycle: {exponential: %g s}", i+1, mean)
		if i > 0 {
			fmt.Fprintf(&text, ", after: {buffer: %g cartons}", buffers[i-1])
		}
		text.WriteString("}\n")
	}
	file, err := scenarios.Read("tandem", strings.NewReader(text.String()), nil)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// explained runs the explanation of a line.
func explained(t *testing.T, file *scenarios.File, spec decisions.ExplainSpec) *decisions.Explanation {
	t.Helper()
	lab := scenarios.NewLab(t.Name(), scenarios.Options{Seed: 1, Confidence: spec.Confidence})
	answer, err := decisions.Explain(context.Background(), lab, file, 1, spec)
	if err != nil {
		t.Fatal(err)
	}
	return answer
}

// Elasticities of exponential lines, from their Markov chains (rows bn-elast of the reference table): within 0.01, as the rows
// ask, in runs long enough for the interval at 99 % to be no wider than that. The step of 5 % narrows the interval; what it adds
// to the error, of the order of the step squared, is about 0.001. The sum is 1 when all times are scaled.
func TestElasticitiesOfTheory(t *testing.T) {
	for k, row := range theoryRows(t, "bn-elast") {
		if !long() && k > 0 {
			break
		}
		means, buffers := numbersOf(t, parameter(t, row, "means"), ","), numbersOf(t, parameter(t, row, "b"), ",")
		answer := explained(t, tandem(t, means, buffers, 6), decisions.ExplainSpec{Replications: 20, Step: 0.05, Confidence: 0.99})
		for i, want := range numbersOf(t, row["expected"], ";") {
			got := answer.Elasticities[i].Middle
			if math.Abs(got.Mean-want) > 0.01 || got.HalfWidth() > 0.01 {
				t.Errorf("%s station %d: %v, want %v within 0.01", row["id"], i+1, got, want)
			}
		}
		if !answer.Sum.Middle.Contains(1) || answer.Sum.Middle.HalfWidth() > 0.03 {
			t.Errorf("%s: the elasticities sum to %v, want 1", row["id"], answer.Sum.Middle)
		}
	}
}
