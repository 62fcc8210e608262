package decisions_test

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/scenarios/decisions"
	"dwellcast/stations"
)

// tradeRow is a reference value of testdata/trade.csv, whose columns carry the source and how the value was verified.
type tradeRow struct{ id, inputs, expected string }

func tradeRows(t *testing.T, topic string) []tradeRow {
	t.Helper()
	f, err := os.Open("../../testdata/trade.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []tradeRow
	for _, r := range records[1:] {
		if r[1] == topic {
			rows = append(rows, tradeRow{r[0], r[2], r[3]})
		}
	}
	if len(rows) == 0 {
		t.Fatalf("no rows of %s", topic)
	}
	return rows
}

// amount finds a number by a pattern whose one group it is, with k for thousands; NaN where there is none.
func amount(text, pattern string) float64 {
	m := regexp.MustCompile(strings.ReplaceAll(pattern, "#", `([-+]?[0-9]*\.?[0-9]+(?:[eE][-+]?[0-9]+)?[kM]?)`)).FindStringSubmatch(text)
	if m == nil {
		return math.NaN()
	}
	scale := 1.0
	number := m[1]
	if strings.HasSuffix(number, "k") {
		scale, number = 1e3, strings.TrimSuffix(number, "k")
	} else if strings.HasSuffix(number, "M") {
		scale, number = 1e6, strings.TrimSuffix(number, "M")
	}
	x, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return math.NaN()
	}
	return scale * x
}

// expect compares with the number that a row expects, if it has it, and counts.
func expect(t *testing.T, row tradeRow, what, pattern string, got, tolerance float64) int {
	t.Helper()
	want := amount(row.expected, pattern)
	if math.IsNaN(want) {
		return 0
	}
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %s is %.7g, want %.7g", row.id, what, got, want)
	}
	return 1
}

// Rows of topic economics, such as TR057: "250k first cost, 70k/y saving, 10 y, 12%". Their source: textbook compound-interest factors.
func TestEconomicsRows(t *testing.T) {
	for _, row := range tradeRows(t, "economics") {
		first, saving := amount(row.inputs, `#\s*first cost`), amount(row.inputs, `#/y(?:ear)? saving`)
		life, rate := amount(row.inputs, `#\s*y(?:ears?)?\b(?:[^/]|$)`), amount(row.inputs, `#\s*%`)/100
		salvage := amount(row.inputs, `salvage\s*#`)
		if math.IsNaN(salvage) {
			salvage = 0
		}
		c := decisions.CashFlow{First: first, Salvage: salvage}
		for range int(life) {
			c.Years = append(c.Years, saving)
		}
		n := expect(t, row, "P/A", `\(?P/A\)?\s*=\s*#`, decisions.PresentWorthFactor(rate, life), 5e-7)
		n += expect(t, row, "NPV", `NPV\s*=?\s*#`, c.NetPresentValue(rate), 1e-4*math.Abs(amount(row.expected, `NPV\s*=?\s*#`)))
		n += expect(t, row, "EAC", `EA[CW]?\s*=\s*#`, math.Abs(c.EquivalentAnnual(rate)), 1e-4*math.Abs(c.EquivalentAnnual(rate)))
		n += expect(t, row, "simple payback", `simple payback\s*=?\s*#`, c.Payback(0), 5.01e-4)
		n += expect(t, row, "discounted payback", `discounted(?: payback)?\s*=?\s*#`, c.Payback(rate), 5.01e-4)
		n += expect(t, row, "IRR", `IRR\s*=?\s*#`, 100*c.RateOfReturn(), 5.01e-4)
		if n == 0 {
			t.Errorf("%s: nothing in %q was checked", row.id, row.expected)
		}
	}
}

// Rows of topic sizing, such as TR055: days x shifts x hours, what is taken off, efficiency and quality.
func TestSizingRows(t *testing.T) {
	for _, row := range tradeRows(t, "sizing") {
		calendar := decisions.Calendar{
			Days: int(amount(row.inputs, `#\s*d x`)), Shifts: int(amount(row.inputs, `d x\s*#`)),
			Breaks: hours(amount(row.inputs, `breaks\s*#`)), Cleaning: hours(amount(row.inputs, `cleaning\s*#`)), Changeovers: hours(amount(row.inputs, `changeovers?\s*#`)),
		}
		shift := stations.Shift{Length: hours(amount(row.inputs, `d x [0-9]+ x\s*#`))}
		net := calendar.Net(shift)
		need := amount(row.inputs, `#\s*good/y`) / net
		setting := decisions.SettingFor(need, amount(row.inputs, `efficiency\s*#`), amount(row.inputs, `quality\s*#`))
		n := expect(t, row, "net hours", `net\s*#`, net, 1e-3)
		n += expect(t, row, "good rate", `need\s*#`, need, 1e-3)
		n += expect(t, row, "setting", `set\s*#`, setting, 1e-3)
		n += expect(t, row, "setting per minute", `\(#/min\)`, setting/60, 1e-3)
		if n == 0 {
			t.Errorf("%s: nothing in %q was checked", row.id, row.expected)
		}
	}
}

func hours(x float64) time.Duration {
	if math.IsNaN(x) {
		return 0
	}
	return time.Duration(math.Round(x * float64(time.Hour)))
}

// Factors of the compound-interest tables that textbooks of engineering economy print, from memory.
func TestPresentWorthFactor(t *testing.T) {
	for _, c := range []struct{ i, n, want float64 }{
		{0.05, 10, 7.7217}, {0.06, 20, 11.4699}, {0.08, 5, 3.9927}, {0.08, 10, 6.7101}, {0.10, 5, 3.7908},
		{0.10, 10, 6.1446}, {0.10, 20, 8.5136}, {0.12, 5, 3.6048}, {0.15, 10, 5.0188}, {0.20, 10, 4.1925}, {0, 7, 7},
	} {
		if got := decisions.PresentWorthFactor(c.i, c.n); math.Abs(got-c.want) > 5.1e-5 {
			t.Errorf("(P/A, %g, %g) = %.5f, want %.4f", c.i, c.n, got, c.want)
		}
	}
}

// The internal rate of return takes the net present value to 0; the discounted payback takes the running balance there; and equal
// yearly amounts give the closed forms.
func TestCashFlowLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := decisions.CashFlow{First: rapid.Float64Range(1, 1e6).Draw(t, "first"), Salvage: rapid.Float64Range(0, 1e5).Draw(t, "salvage")}
		for range rapid.IntRange(1, 40).Draw(t, "life") {
			c.Years = append(c.Years, rapid.Float64Range(1, 3e5).Draw(t, "amount"))
		}
		if r := c.RateOfReturn(); math.Abs(c.NetPresentValue(r)) > 1e-6*c.First {
			t.Fatalf("at the rate of return of %g the net present value is %g", r, c.NetPresentValue(r))
		}
		i := rapid.Float64Range(0, 0.5).Draw(t, "rate")
		if simple, discounted := c.Payback(0), c.Payback(i); discounted < simple-1e-9 {
			t.Fatalf("discounted payback %g comes before the simple one, %g", discounted, simple)
		}
		n := float64(len(c.Years))
		level := decisions.CashFlow{First: c.First}
		for range c.Years {
			level.Years = append(level.Years, c.Years[0])
		}
		want := c.Years[0]*decisions.PresentWorthFactor(i, n) - c.First
		if got := level.NetPresentValue(i); math.Abs(got-want) > 1e-9*(c.First+math.Abs(want)) {
			t.Fatalf("net present value %g, want %g", got, want)
		}
		if got := level.EquivalentAnnual(i) * decisions.PresentWorthFactor(i, n); math.Abs(got-want) > 1e-9*(c.First+math.Abs(want)) {
			t.Fatalf("equivalent annual amounts are worth %g, want %g", got, want)
		}
		if i > 0 && want >= 0 {
			closed := -math.Log1p(-i*c.First/c.Years[0]) / math.Log1p(i)
			if got := level.Payback(i); math.Abs(got-closed) > 1e-6*n {
				t.Fatalf("discounted payback %g, want %g", got, closed)
			}
		}
	})
}

// Where the amounts change their sign twice there may be two rates of return, and none is given: -100, +230, -132 has 10 % and 20 %.
func TestRateOfReturnOfManySigns(t *testing.T) {
	c := decisions.CashFlow{First: 100, Years: []float64{230, -132}}
	if math.Abs(c.NetPresentValue(0.1)) > 1e-9 || math.Abs(c.NetPresentValue(0.2)) > 1e-9 {
		t.Fatal("the example is wrong")
	}
	if r := c.RateOfReturn(); !math.IsNaN(r) {
		t.Errorf("rate of return %g, want none", r)
	}
	if p := (decisions.CashFlow{First: 100, Years: []float64{30, 30}}).Payback(0); !math.IsNaN(p) {
		t.Errorf("payback %g, want none", p)
	}
}

// A ramp from 50 % over half a year costs an eighth of a year's output; over two years, 3/8 of the first and 1/8 of the second.
func TestRampUp(t *testing.T) {
	for _, c := range []struct {
		ramp decisions.RampUp
		want []float64
	}{
		{decisions.RampUp{}, []float64{1, 1}},
		{decisions.RampUp{Takes: 0.5, From: 0.5}, []float64{0.875, 1}},
		{decisions.RampUp{Takes: 2, From: 0.5}, []float64{0.625, 0.875, 1}},
	} {
		for k, want := range c.want {
			if got := c.ramp.Share(k + 1); math.Abs(got-want) > 1e-12 {
				t.Errorf("%+v makes %g of year %d, want %g", c.ramp, got, k+1, want)
			}
		}
	}
}
