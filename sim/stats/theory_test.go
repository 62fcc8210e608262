package stats_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// row is one line of the reference table.
type row struct {
	id, model  string
	parameters map[string]string // key=value pairs
	text       string            // the parameters as written
	expected   []float64
	tolerance  float64
}

// theoryRows reads the rows of the topic output-analysis.
func theoryRows(t *testing.T) []row {
	t.Helper()
	file, err := os.Open("../../testdata/theory.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, r := range records[1:] {
		if r[1] == "output-analysis" {
			rows = append(rows, row{
				id: r[0], model: r[2], text: r[3], parameters: keyValues(r[3]),
				expected: numbers(t, r[4]), tolerance: tolerance(r[5]),
			})
		}
	}
	if len(rows) == 0 {
		t.Fatal("no rows of topic output-analysis")
	}
	return rows
}

func keyValues(text string) map[string]string {
	pairs := map[string]string{}
	for part := range strings.SplitSeq(text, ";") {
		if key, value, found := strings.Cut(part, "="); found {
			pairs[strings.TrimSpace(key)] = strings.TrimSpace(value)
		}
	}
	return pairs
}

// tolerance is the last number of the column; "exact" leaves only rounding.
func tolerance(text string) float64 {
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ';' })
	for i := len(fields) - 1; i >= 0; i-- {
		if x, err := strconv.ParseFloat(fields[i], 64); err == nil {
			return x
		}
	}
	return 1e-9
}

// numbers parses values separated by spaces, commas or semicolons.
func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var xs []float64
	for _, field := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;", r) }) {
		x, err := strconv.ParseFloat(field, 64)
		if err != nil {
			t.Fatalf("%q is not a list of numbers: %v", text, err)
		}
		xs = append(xs, x)
	}
	return xs
}

// number is a parameter that is a single number.
func (r row) number(t *testing.T, key string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r.parameters[key], 64)
	if err != nil {
		t.Fatalf("%s: parameter %s of %q: %v", r.id, key, r.text, err)
	}
	return x
}

func (r row) integer(t *testing.T, key string) int { return int(r.number(t, key)) }

// measures lists what the row expects, in its order.
func (r row) measures() []string {
	parts := strings.Split(r.parameters["measure"], "/")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return parts
}

// pick takes the measures of the row from what was computed.
func (r row) pick(t *testing.T, computed map[string]float64) []float64 {
	t.Helper()
	var picked []float64
	for _, name := range r.measures() {
		x, known := computed[name]
		if !known {
			t.Fatalf("%s: nothing computed for measure %q", r.id, name)
		}
		picked = append(picked, x)
	}
	return picked
}

// confidence is the first percentage in the model's description.
func (r row) confidence(t *testing.T) float64 {
	t.Helper()
	m := regexp.MustCompile(`([\d.]+) ?%`).FindStringSubmatch(r.model)
	if m == nil {
		t.Fatalf("%s: no confidence in %q", r.id, r.model)
	}
	percent, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return percent / 100
}

func (r row) compare(t *testing.T, got []float64) {
	t.Helper()
	if len(got) != len(r.expected) {
		t.Fatalf("%s: %d values %v, want %d %v", r.id, len(got), got, len(r.expected), r.expected)
	}
	for i, want := range r.expected {
		if !(math.Abs(got[i]-want) <= r.tolerance) {
			t.Errorf("%s value %d: got %.10g, want %.10g within %g", r.id, i+1, got[i], want, r.tolerance)
		}
	}
}

// series is the data a row describes: literal values, one of two written
// formulas, or the series of another row named by its id.
func series(t *testing.T, text string, rows []row) []float64 {
	t.Helper()
	if m := matched(`^(\d+) zeros then (\d+) values repeating ([\d. ]+)`, text); m != nil {
		return stepSeries(integerOf(t, m[1]), integerOf(t, m[2]), numbers(t, m[3]))
	}
	if m := matched(`round\((\d+)-(\d+)\*exp\(-t/(\d+)\)\)\+\(\((\d+) ?\*?t\) mod (\d+)\)-(\d+)`, text); m != nil {
		extent := matched(`t=1\.\.(\d+)`, text)
		if extent == nil {
			t.Fatalf("series %q has no range", text)
		}
		return approachSeries(integerOf(t, extent[1]), numbers(t, strings.Join(m[1:], " ")))
	}
	for _, other := range rows {
		if strings.Contains(text, other.id) {
			return series(t, other.text, rows)
		}
	}
	return numbers(t, text)
}

// approachSeries is a rounded exponential approach with a sawtooth on it.
func approachSeries(n int, c []float64) []float64 {
	xs := make([]float64, n)
	for i := range xs {
		t := float64(i + 1)
		xs[i] = math.RoundToEven(c[0]-c[1]*math.Exp(-t/c[2])) + math.Mod(c[3]*t, c[4]) - c[5]
	}
	return xs
}

func stepSeries(zeros, values int, cycle []float64) []float64 {
	xs := make([]float64, zeros)
	for i := range values {
		xs = append(xs, cycle[i%len(cycle)])
	}
	return xs
}

func matched(pattern, text string) []string {
	return regexp.MustCompile(pattern).FindStringSubmatch(text)
}

func integerOf(t *testing.T, text string) int {
	t.Helper()
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func (r row) String() string { return fmt.Sprintf("%s (%s)", r.id, r.model) }
