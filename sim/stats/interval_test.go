package stats_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"dwellcast/sim/stats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestTooFewObservationsGiveNoVerdict(t *testing.T) {
	for _, iv := range []stats.Interval{
		stats.MeanInterval(nil, 0.95),
		stats.MeanInterval([]float64{3}, 0.95),
		stats.MeanInterval([]float64{1, 2}, 1),
		stats.MeanInterval([]float64{1, math.NaN()}, 0.95),
		stats.MeanInterval([]float64{1, math.Inf(1)}, 0.95),
		stats.PairedInterval([]float64{1}, []float64{2}, 0.95),
		stats.BatchMeans([]float64{1, 2, 3}, 4, 0.95),
		stats.BatchMeans([]float64{1, 2, 3}, 1, 0.95),
		stats.Wilson(0, 0, 0.95),
		stats.QuantileInterval([]float64{1, 2, 3}, 0.5, 0.95),
	} {
		if iv.Assessed() || !math.IsInf(iv.HalfWidth(), 1) || !iv.Contains(0) {
			t.Errorf("%+v passes for assessed", iv)
		}
	}
	for _, test := range []stats.TTest{
		stats.Welch([]float64{1}, []float64{1, 2}), stats.PairedT([]float64{1}, []float64{2}),
	} {
		if test.Assessed() {
			t.Errorf("%+v passes for assessed", test)
		}
	}
}

func TestEqualObservationsGiveZeroWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e9, 1e9).Draw(t, "x")
		xs := make([]float64, rapid.IntRange(2, 50).Draw(t, "n"))
		for i := range xs {
			xs[i] = x
		}
		want := stats.Interval{Mean: x, Low: x, High: x, N: len(xs), Confidence: 0.9}
		if diff := cmp.Diff(want, stats.MeanInterval(xs, 0.9)); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestMomentsAgreeWithTwoPasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		xs := rapid.SliceOfN(rapid.Float64Range(-1000, 1000), 2, 60).Draw(t, "xs")
		offset := rapid.SampledFrom([]float64{0, 1e6}).Draw(t, "offset")
		var m stats.Moments
		sum, squares := 0.0, 0.0
		for _, x := range xs {
			m.Add(x + offset)
			sum += x
		}
		mean := sum / float64(len(xs))
		for _, x := range xs {
			squares += (x - mean) * (x - mean)
		}
		want := []float64{mean + offset, squares / float64(len(xs)-1)}
		got := []float64{m.Mean(), m.Variance()}
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(1e-9, 1e-6)); diff != "" {
			t.Fatal(diff)
		}
	})
}

// Common random numbers: the paired interval sees only the difference.
func TestPairedIntervalIgnoresWhatIsShared(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 1))
	a, b := make([]float64, 30), make([]float64, 30)
	for i := range a {
		shared := math.Round(1000 * random.NormFloat64())
		a[i], b[i] = shared+5, shared+3
	}
	if iv := stats.PairedInterval(a, b, 0.95); iv.Low != 2 || iv.High != 2 {
		t.Errorf("difference %v, want exactly 2", iv)
	}
	if test := stats.PairedT(a, b); test.P != 0 {
		t.Errorf("p value %g of a difference without variance, want 0", test.P)
	}
	if test := stats.PairedT(a, a); test.P != 1 {
		t.Errorf("p value %g of no difference, want 1", test.P)
	}
	if test := stats.Welch(a, b); test.P < 0.9 {
		t.Errorf("unpaired p value %g, want near 1: the shared part hides the difference", test.P)
	}
}

// The paired p value is below 1 - confidence exactly when the interval
// leaves out zero.
func TestPairedTestAgreesWithInterval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SliceOfN(rapid.Float64Range(-2, 3), 3, 12).Draw(t, "a")
		b := make([]float64, len(a))
		p := stats.PairedT(a, b).P
		for _, confidence := range []float64{0.5, 0.9, 0.99} {
			if math.Abs(p-(1-confidence)) < 1e-9 {
				continue
			}
			if contains := stats.PairedInterval(a, b, confidence).Contains(0); contains != (p > 1-confidence) {
				t.Fatalf("p = %g but the %g interval contains 0: %v", p, confidence, contains)
			}
		}
	})
}

// Intervals for the mean of normal data cover it as often as they say, and
// the order-statistic interval for the median of exponential data at least
// as often, within the 99.9 % band for 1000 runs.
func TestCoverage(t *testing.T) {
	const runs, size = 1000, 30
	random := rand.New(rand.NewPCG(4, 2))
	mean, median := 0, 0
	for range runs {
		normal, exponential := make([]float64, size), make([]float64, size)
		for i := range size {
			normal[i], exponential[i] = random.NormFloat64(), random.ExpFloat64()
		}
		if stats.MeanInterval(normal, 0.95).Contains(0) {
			mean++
		}
		if stats.QuantileInterval(sorted(exponential), 0.5, 0.95).Contains(math.Ln2) {
			median++
		}
	}
	lo, hi := stats.CoverageBand(runs, 0.95, 0.999)
	if mean < lo || mean > hi {
		t.Errorf("t interval covered %d of %d times, want %d to %d", mean, runs, lo, hi)
	}
	if median < lo {
		t.Errorf("median interval covered %d of %d times, want at least %d", median, runs, lo)
	}
}
