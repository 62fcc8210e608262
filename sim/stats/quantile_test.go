package stats_test

import (
	"math"
	"slices"
	"testing"

	"dwellcast/sim/stats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func sorted(xs []float64) []float64 {
	ys := slices.Clone(xs)
	slices.Sort(ys)
	return ys
}

// By hand from the definition: the i-th of n stands at p = i/(n-1).
func TestQuantile(t *testing.T) {
	xs := []float64{10, 20, 40, 80}
	for _, c := range []struct{ p, want float64 }{
		{0, 10}, {1, 80}, {1. / 3, 20}, {0.5, 30}, {0.9, 68}, {0.1, 13},
	} {
		if got := stats.Quantile(xs, c.p); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("quantile %g: got %g, want %g", c.p, got, c.want)
		}
	}
	if got := stats.Quantile([]float64{7}, 0.3); got != 7 {
		t.Errorf("of one value: got %g", got)
	}
	if !math.IsNaN(stats.Quantile(nil, 0.5)) {
		t.Error("of no values: want NaN")
	}
}

// The interval for the median of 10 is from the 2nd to the 9th value: each
// side misses with probability 11/1024 = 0.0107, and one further in would
// miss with 56/1024 = 0.0547 (binomial, by hand).
func TestMedianIntervalOfTen(t *testing.T) {
	xs := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	for _, c := range []struct{ confidence, low, high float64 }{
		{0.95, 2, 9}, {1 - 2*11.0/1024 - 1e-9, 2, 9}, {1 - 2*11.0/1024 + 1e-9, 1, 10}, {0.99, 1, 10},
	} {
		iv := stats.QuantileInterval(xs, 0.5, c.confidence)
		if iv.Low != c.low || iv.High != c.high || iv.Mean != 5.5 {
			t.Errorf("at %g: %v, want [%g, %g]", c.confidence, iv, c.low, c.high)
		}
	}
	// 1 - 2/1024 is the most that ten values can give.
	if iv := stats.QuantileInterval(xs, 0.5, 0.999); iv.Assessed() {
		t.Errorf("%v passes for assessed", iv)
	}
	if iv := stats.QuantileInterval(xs, 0.1, 0.5); !math.IsInf(iv.Low, -1) || iv.High != 3 {
		t.Errorf("P10 of ten: %+v, want -Inf to the 3rd", iv)
	}
}

// Against the binomial sum written out: each side misses with at most half
// of the rest, and the next order statistic inwards would miss with more.
func TestQuantileIntervalIsTheTightest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "n")
		p := rapid.Float64Range(0.01, 0.99).Draw(t, "p")
		confidence := rapid.Float64Range(0.5, 0.999).Draw(t, "confidence")
		xs := make([]float64, n)
		below := make([]float64, n+2) // below[l] = P(B < l)
		for i := range xs {
			xs[i] = float64(i + 1)
			below[i+1] = below[i] + binomial(n, i, p)
		}
		below[n+1] = 1
		iv := stats.QuantileInterval(xs, p, confidence)
		tail := (1 - confidence) / 2
		l, u := int(math.Max(iv.Low, 0)), int(math.Min(iv.High, float64(n+1)))
		if l > 0 && below[l] > tail+1e-9 || l < n && below[l+1] < tail-1e-9 {
			t.Fatalf("low is the %d-th of %d: misses with %g, next %g, tail %g", l, n, below[l], below[l+1], tail)
		}
		if u <= n && 1-below[u] > tail+1e-9 || u > 1 && 1-below[u-1] < tail-1e-9 {
			t.Fatalf("high is the %d-th of %d: misses with %g, next %g, tail %g", u, n, 1-below[u], 1-below[u-1], tail)
		}
	})
}

// binomial is P(B = k).
func binomial(n, k int, p float64) float64 {
	ln := func(i int) float64 { g, _ := math.Lgamma(float64(i + 1)); return g }
	return math.Exp(ln(n) - ln(k) - ln(n-k) + float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
}

func TestCoverageBandIsTwoSided(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 300).Draw(t, "n")
		p := rapid.Float64Range(0.01, 0.99).Draw(t, "p")
		lo, hi := stats.CoverageBand(n, p, 0.999)
		inside, below, above := 0.0, 0.0, 0.0
		for k := range n + 1 {
			switch prob := binomial(n, k, p); {
			case k < lo:
				below += prob
			case k > hi:
				above += prob
			default:
				inside += prob
			}
		}
		if below > 0.0005+1e-9 || above > 0.0005+1e-9 || inside < 0.999-1e-9 {
			t.Fatalf("band %d..%d of %d: below %g, inside %g, above %g", lo, hi, n, below, inside, above)
		}
	})
}

func TestHolmKeepsOrderAndNaN(t *testing.T) {
	nan := math.NaN()
	got := stats.Holm([]float64{0.04, nan, 0.01})
	// 0.01 x 3, then 0.04 x 2; by hand
	if diff := cmp.Diff([]float64{0.08, nan, 0.03}, got, cmpopts.EquateNaNs(), cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Error(diff)
	}
	if got := stats.Holm(nil); len(got) != 0 {
		t.Errorf("of none: %v", got)
	}
	if got := stats.BonferroniConfidence(0.95, 5); math.Abs(got-0.99) > 1e-12 {
		t.Errorf("five at 95%% together need %g each, want 0.99", got)
	}
}

// Holm is never larger than Bonferroni, never smaller than the raw value,
// and ordered as the raw values are.
func TestHolmProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := rapid.SliceOf(rapid.Float64Range(0, 1)).Draw(t, "ps")
		holm, bonferroni := stats.Holm(ps), stats.Bonferroni(ps)
		for i := range ps {
			if holm[i] > bonferroni[i] || holm[i] < ps[i] {
				t.Fatalf("p %g: holm %g, bonferroni %g", ps[i], holm[i], bonferroni[i])
			}
			for j := range ps {
				if ps[i] < ps[j] && holm[i] > holm[j] {
					t.Fatalf("order of %g and %g lost", ps[i], ps[j])
				}
			}
		}
	})
}
