package scenarios_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// row is a reference value of testdata/theory.csv, whose columns carry the source and how the value was verified.
type row struct {
	id, topic, model, parameters, expected string
}

func theoryRows(t testing.TB) []row {
	t.Helper()
	f, err := os.Open("../testdata/theory.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, r := range records[1:] {
		rows = append(rows, row{r[0], r[1], r[2], r[3], r[4]})
	}
	return rows
}

// param is the value of key in "key=value;key=value".
func (r row) param(key string) string {
	for _, part := range strings.Split(r.parameters, ";") {
		if name, value, ok := strings.Cut(part, "="); ok && strings.TrimSpace(name) == key {
			return strings.TrimSpace(value)
		}
	}
	return ""
}

// numbers reads "1,0.8", "[0,0]", "0 0" or "a;b" as numbers.
func numbers(s string) []float64 {
	var out []float64
	for _, field := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(",; []", r) }) {
		if x, err := strconv.ParseFloat(field, 64); err == nil {
			out = append(out, x)
		}
	}
	return out
}

func (r row) number(key string) float64 {
	all := numbers(strings.TrimSuffix(r.param(key), "/h"))
	if len(all) == 0 {
		return math.NaN()
	}
	return all[0]
}

// figure is what a row's measure is called in a forecast.
type figure func(*scenarios.Forecast) float64

// plan is a row as a line file, and what to look at.
type plan struct {
	file     string
	figures  []figure
	expected []float64
	// slack is a relative difference that the reference model itself differs by from discrete cartons; 0 for nearly all.
	slack float64
	// variance asks for the spread of shifts rather than a mean.
	variance bool
	exact    bool
	runs     int
}

const perHour = 1.0 / 3600

func throughput(f *scenarios.Forecast) float64 { return f.GoodRate.Mean * perHour }

func share(station int, s stations.State) figure {
	return func(f *scenarios.Forecast) float64 { return f.Stations[station].Shares[s].Mean }
}

// runs is the number of independent runs that a stochastic row is judged by: twenty in the long checks, else four.
func runs() int {
	if long() {
		return 20
	}
	return 4
}

// TestTheory checks every row that a line file can express through the file and the run command's own code. Exact rows must be
// met exactly; the others are judged together: Student's t on independent runs of each, Holm over all, at 99 %.
func TestTheory(t *testing.T) {
	if testing.Short() {
		t.Skip("long")
	}
	var names []string
	var ps []float64
	for _, c := range observeAll(t) {
		for k, want := range c.plan.expected {
			got := c.values[k]
			switch {
			case c.plan.exact:
				if math.Abs(got[0]-want) > 1e-8*math.Max(1, math.Abs(want)) {
					t.Errorf("%s: got %.10g, want %.10g exactly", c.row.id, got[0], want)
				}
			case c.plan.variance:
				names = append(names, fmt.Sprintf("%s: variance %.6g, want %.6g", c.row.id, got[0], want))
				ps = append(ps, varianceP(got, want))
			default:
				names = append(names, fmt.Sprintf("%s[%d]: mean %.6g, want %.6g", c.row.id, k, mean(got), want))
				ps = append(ps, meanP(got, want, c.plan.slack))
			}
		}
	}
	for i, p := range stats.Holm(ps) {
		if p < 0.01 {
			t.Errorf("%s: adjusted p %.3g", names[i], p)
		}
	}
	t.Logf("%d stochastic figures", len(ps))
}

// check is a row with its plan and, per figure, what each independent run showed.
type check struct {
	row    row
	plan   *plan
	values [][]float64
}

// observeAll runs every row that can be expressed, as many side by side as there are processors.
func observeAll(t *testing.T) []*check {
	var checks []*check
	for _, r := range theoryRows(t) {
		p, why := express(r)
		if p != nil {
			checks = append(checks, &check{row: r, plan: p})
		} else if why != "" {
			t.Logf("%s: not expressed: %s", r.id, why)
		}
	}
	var wait sync.WaitGroup
	next := make(chan *check)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for c := range next {
				if err := c.observe(); err != nil {
					t.Errorf("%s: %v\n%s", c.row.id, err, c.plan.file)
				}
			}
		})
	}
	for _, c := range checks {
		next <- c
	}
	close(next)
	wait.Wait()
	if t.Failed() {
		t.FailNow()
	}
	return checks
}

// observe runs the plan's file with fixed seeds.
func (c *check) observe() error {
	f, err := scenarios.Read(c.row.id, strings.NewReader(c.plan.file), nil)
	if err != nil {
		return err
	}
	n := runs()
	if c.plan.runs > 0 {
		n = c.plan.runs
	}
	c.values = make([][]float64, len(c.plan.figures))
	for seed := range n {
		o := scenarios.Options{Seed: uint64(seed + 1), Workers: 1}
		if c.plan.variance {
			o.Replications = shiftsOfVariance
		}
		out, err := scenarios.Run(context.Background(), f, o)
		if err != nil {
			return err
		}
		for k, figure := range c.plan.figures {
			c.values[k] = append(c.values[k], figure(out))
		}
	}
	return nil
}

func mean(xs []float64) float64 {
	m, _ := meanSD(xs)
	return m
}

func meanSD(xs []float64) (float64, float64) {
	var m stats.Moments
	for _, x := range xs {
		m.Add(x)
	}
	return m.Mean(), m.StdDev()
}

// meanP is the p-value of the mean being want, or within the slack of it.
func meanP(xs []float64, want, slack float64) float64 {
	m, sd := meanSD(xs)
	off := math.Max(0, math.Abs(m-want)-slack*math.Abs(want))
	if off <= 1e-12 {
		return 1
	}
	if sd == 0 {
		return 0
	}
	n := float64(len(xs))
	return 2 * distuv.StudentsT{Sigma: 1, Nu: n - 1}.Survival(off/(sd/math.Sqrt(n)))
}

// shiftsOfVariance is the number of shifts whose variance a variance row is judged by.
const shiftsOfVariance = 2000

// varianceP is the p-value of a variance of nearly normal counts being want, by chi-square.
func varianceP(xs []float64, want float64) float64 {
	const df = shiftsOfVariance - 1
	q := xs[0] / want * df
	c := distuv.ChiSquared{K: df}
	return 2 * math.Min(c.CDF(q), c.Survival(q))
}
