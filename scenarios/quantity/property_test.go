package quantity_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"dwellcast/scenarios/quantity"
	"pgregory.net/rapid"
)

// TestPrintedDurationReadsBack: any length of time survives printing and parsing to the nanosecond.
func TestPrintedDurationReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := time.Duration(rapid.Int64Range(-math.MaxInt64, math.MaxInt64).Draw(t, "ns"))
		if rapid.Bool().Draw(t, "short") {
			d %= 1 << rapid.IntRange(1, 60).Draw(t, "bits")
		}
		q, err := quantity.Parse(quantity.FormatDuration(d))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := q.Duration(); got != d || err != nil {
			t.Fatalf("%s reads back as %d ns, want %d: %v", q, got, d, err)
		}
	})
}

// TestPrintedQuantityReadsBack: a parsed quantity survives printing and parsing exactly, and conversion to
// another unit and back to the last bits.
func TestPrintedQuantityReadsBack(t *testing.T) {
	families := [][]string{
		{"s", "min", "h", "ms", "days"}, {"in", "mm", "ft", "m"}, {"floz", "gal", "mL", "in3", "cm3"},
		{"cartons/h", "pieces/min", "/s"}, {"deg", "rev", "rad"}, {"rpm", "deg/s", "rad/s"}, {"degC", "degF", "K"},
		{"floz/in", "mL/mm", "cm2"}, {"W/m2K"}, {"kg m2", "lb in2"}, {"%", "fraction", "ppm"},
	}
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SampledFrom(families).Draw(t, "units")
		from, to := rapid.SampledFrom(units).Draw(t, "from"), rapid.SampledFrom(units).Draw(t, "to")
		q, err := quantity.Of(rapid.Float64Range(1e-3, 1e9).Draw(t, "number"), from)
		if err != nil {
			t.Fatal(err)
		}
		again, err := quantity.Parse(q.String())
		if err != nil || !again.Equal(q) {
			t.Fatalf("%s reads back as %s: %v", q, again, err)
		}
		converted, err := q.In(to)
		if err != nil {
			t.Fatal(err)
		}
		back, err := quantity.Of(converted, to)
		if err != nil {
			t.Fatal(err)
		}
		tolerance := 1e-14 * math.Abs(q.SI())
		if q.Is(quantity.Temperature) {
			tolerance += 459.67 * 0x1p-53 // the rounding of a float64 near absolute zero in degF
		}
		if a, b := q.SI(), back.SI(); math.Abs(a-b) > tolerance {
			t.Fatalf("%s is %s: %g and %g in SI", q, back, a, b)
		}
	})
}

// TestSpacedIsEven: equal steps, both ends hit.
func TestSpacedIsEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 50).Draw(t, "n")
		a, _ := quantity.Of(float64(rapid.IntRange(0, 10000).Draw(t, "a"))/100, "s")
		b, _ := quantity.Of(float64(rapid.IntRange(0, 10000).Draw(t, "b"))/100, "min")
		values, err := quantity.Spaced(a, b, n)
		if err != nil {
			t.Fatal(err)
		}
		step := (b.SI() - a.SI()) / float64(n-1)
		for i, v := range values {
			if want := a.SI() + float64(i)*step; math.Abs(v.SI()-want) > 1e-9*(1+math.Abs(want)) {
				t.Fatalf("value %d of %s..%s is %s, want %g", i, a, b, v, want)
			}
		}
		if !values[0].Equal(a) || !values[n-1].Equal(b) {
			t.Fatalf("ends are %s and %s, want %s and %s", values[0], values[n-1], a, b)
		}
	})
}

// FuzzParse: never a panic; every refusal has a hint; every acceptance prints and reads back.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"0.95 s", "1450 cartons/h", "10 fl oz/in", "0.4%", "1,5 s", "NaN", "0x1p3 s", "45 money/1000 cartons",
		"1e30 m4/s4", "5 W/(m2 K)", "-.5e-3 µs", "1/4 in", "\xff s", "5 /", "5 /(/)", "0·", "2-5 s", "1.500 cartons/h", "20 lb in"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := quantity.Parse(text)
		if err != nil {
			var e *quantity.Error
			if !errors.As(err, &e) || e.Hint == "" || e.Message == "" {
				t.Fatalf("Parse(%q) gave %v", text, err)
			}
			return
		}
		again, err := quantity.Parse(q.String())
		if err != nil || !again.Equal(q) {
			t.Fatalf("%q prints as %q and reads back as %q: %v", text, q, again, err)
		}
		_, _ = q.Duration()
		_, _ = q.Count()
		q.SI()
	})
}
