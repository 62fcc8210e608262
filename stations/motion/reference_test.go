package motion_test

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

// referenceFile holds the values of all checks in this package with their sources (column 7).
const referenceFile = "../../testdata/motion.csv"

// row is a line of the reference table.
type row struct{ id, topic, model, parameters, expected, tolerance, source string }

// unexpressed lists the models of the table, by the start of their text, that the package cannot express, with the
// reason. It is empty: every row is run.
var unexpressed = map[string]string{}

// TestReferenceRows runs every row of the table: the model's text picks the calculation, the parameters are parsed.
func TestReferenceRows(t *testing.T) {
	rows := readRows(t, referenceFile)
	var calculate calculation
	for i, r := range rows {
		if !strings.HasPrefix(r.model, "as above") { // such a row continues the model of the row before it
			calculate = find(r.model)
		}
		if reason := reasonFor(r.model); reason != "" {
			t.Logf("%s is not run: %s", r.id, reason)
			continue
		}
		t.Run(r.id, func(t *testing.T) {
			if calculate == nil {
				t.Fatalf("no calculation for the model %q", r.model)
			}
			got := calculate(t, parse(r, rows[:i]))
			r.compare(t, got)
		})
	}
}

func reasonFor(model string) string {
	for start, reason := range unexpressed {
		if strings.HasPrefix(model, start) {
			return reason
		}
	}
	return ""
}

func readRows(t *testing.T, name string) []row {
	t.Helper()
	file, err := os.Open(name)
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
		rows = append(rows, row{r[0], r[1], r[2], r[3], r[4], r[5], r[6]})
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", name)
	}
	return rows
}

// compare checks the results against the expected numbers, in their order, within the row's tolerance.
func (r row) compare(t *testing.T, got []float64) {
	t.Helper()
	want := numbers(r.expected)
	if len(want) != len(got) {
		t.Fatalf("expected %q holds %d numbers, calculated %v", r.expected, len(want), got)
	}
	for i := range want {
		if allowed := r.allowed(want[i]); !(math.Abs(got[i]-want[i]) <= allowed) {
			t.Errorf("%s: %s\n got %.12g, want %.12g within %.3g (%s)", r.model, r.parameters, got[i], want[i], allowed, r.tolerance)
		}
	}
}

// allowed is the tolerance of a row: "1e-6 rel" is relative, "exact" is to rounding; a number alone or with a unit is
// absolute, but relative above 1, since large values are printed with fewer decimals.
func (r row) allowed(want float64) float64 {
	if r.tolerance == "exact" {
		return 1e-12 * math.Max(1, math.Abs(want))
	}
	tolerance := numbers(r.tolerance)[0]
	switch {
	case strings.HasSuffix(r.tolerance, "rel"):
		return tolerance * math.Abs(want)
	case strings.TrimSpace(strings.TrimLeft(r.tolerance, "0123456789.e-+")) == "":
		return tolerance * math.Max(1, math.Abs(want))
	}
	return tolerance
}

var number = regexp.MustCompile(`(?:^|[^\w.])(-?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)`)

// numbers are all numbers in a text.
func numbers(text string) []float64 {
	var found []float64
	for _, m := range number.FindAllStringSubmatch(text, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		if err == nil {
			found = append(found, x)
		}
	}
	return found
}

// parameters are a row's, by name; words holds the parts without a name, and all the whole text.
type parameters struct {
	row   row
	named map[string]string
	words []string
	all   string
}

// parse splits "law=cycloidal; fraction=1/6". "as dose-area" takes over the parameters of an earlier row.
func parse(r row, earlier []row) parameters {
	p := parameters{row: r, named: map[string]string{}, all: r.parameters}
	if name, ok := strings.CutPrefix(r.parameters, "as "); ok {
		for _, e := range earlier {
			if strings.HasSuffix(e.id, name) {
				p = parse(e, nil)
				p.row = r
			}
		}
		return p
	}
	for _, part := range strings.Split(r.parameters, ";") {
		keys := strings.Split(part, "=")
		if len(keys) < 2 {
			p.words = append(p.words, strings.TrimSpace(part))
			continue
		}
		value := strings.TrimSpace(keys[len(keys)-1])
		for _, key := range keys[:len(keys)-1] { // "L=b=0.095" names both
			p.named[strings.TrimSpace(key)] = value
		}
	}
	return p
}

// text is the first of the named parameters that the row has.
func (p parameters) text(t *testing.T, names ...string) string {
	t.Helper()
	for _, name := range names {
		if v, ok := p.named[name]; ok {
			return v
		}
	}
	t.Fatalf("%s: no parameter %v in %q", p.row.id, names, p.all)
	return ""
}

// value is a parameter's number, or quotient of two, with its unit taken into SI.
func (p parameters) value(t *testing.T, names ...string) float64 {
	t.Helper()
	x, err := quantity(p.text(t, names...))
	if err != nil {
		t.Fatalf("%s: %v", p.row.id, err)
	}
	return x
}

// valueOr is value, or a default where the row does not give it.
func (p parameters) valueOr(t *testing.T, otherwise float64, names ...string) float64 {
	for _, name := range names {
		if _, ok := p.named[name]; ok {
			return p.value(t, name)
		}
	}
	return otherwise
}

// siUnits are the units that the table uses, with the International System's value of each; inch, ounce and gallon
// are exact (NIST Handbook 44, App. C). Angles stay degrees, temperatures degrees Celsius and settings cartons per
// hour.
var siUnits = map[string]float64{
	"": 1, "in": inch, "in2": inch * inch, "in/s": inch, "in/s2": inch, "in/s3": inch, "m": 1, "m/s": 1, "m/s2": 1, "m2/s": 1, "m2": 1,
	"mm": 1e-3, "mm/s": 1e-3, "mm/s2": 1e-3, "mm/s3": 1e-3, "mm each": 1e-3, "m (each mode)": 1, "s": 1, "ms": 1e-3, "deg": 1, "/h": 1,
	"cartons/h": 1, "L": 1e-3, "L/s": 1e-3, "l/s": 1e-3, "l": 1e-3, "ml": 1e-6, "US gal": 128 * fluidOunce, "fl oz": fluidOunce, "g": 9.80665, "C": 1,
	"pulses/rev": 1, "(each mode)": 1, "rpm": 1, "kg": 1, "Hz": 1,
}

const (
	inch       = 0.0254
	fluidOunce = 231.0 / 128 * inch * inch * inch
)

var leading = regexp.MustCompile(`^(-?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(?:/(\d+\.?\d*))?\s*(.*)$`)

// quantity reads "0.4 m" or "1/6", in SI.
func quantity(text string) (float64, error) {
	if top, bottom, ok := strings.Cut(text, "/("); ok { // "0.18/(930*1340) m2/s"
		product, _, _ := strings.Cut(bottom, ")")
		a, b, _ := strings.Cut(product, "*")
		x, err := quantity(top)
		return x / (first(a) * first(b)), err
	}
	m := leading.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return 0, fmt.Errorf("no number in %q", text)
	}
	x := first(m[1])
	if m[2] != "" {
		x /= first(m[2])
	}
	unit, known := siUnits[strings.TrimSpace(m[3])]
	if !known {
		return 0, fmt.Errorf("unknown unit %q in %q", m[3], text)
	}
	return x * unit, nil
}

func first(text string) float64 {
	if found := numbers(text); len(found) > 0 {
		return found[0]
	}
	return math.NaN()
}
