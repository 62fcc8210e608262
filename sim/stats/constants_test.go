package stats_test

import (
	"math"
	"testing"

	"dwellcast/sim/stats"
)

// The bound that defines eta: (k-1)/2 (1+2 eta)^(-(n0-1)/2) = alpha (Kim &
// Nelson 2001).
func TestKNConstantsMeetTheirBound(t *testing.T) {
	for _, k := range []int{2, 3, 10, 100} {
		for _, n0 := range []int{2, 10, 50} {
			eta, h2 := stats.KNConstants(k, n0, 0.05)
			bound := float64(k-1) / 2 * math.Pow(1+2*eta, -float64(n0-1)/2)
			if math.Abs(bound-0.05) > 1e-9 || math.Abs(h2-2*eta*float64(n0-1)) > 1e-9*h2 {
				t.Errorf("k=%d n0=%d: bound %g, h2 %g", k, n0, bound, h2)
			}
		}
	}
}

// For two systems and n0 = 2 Student's t is Cauchy's distribution, whose
// difference is a Cauchy of scale 2: h1 = 2 tan(pi (P* - 1/2)). For two
// systems Rinott's constant is the same integral.
func TestConstantsForTwoSystemsAndTwoReplications(t *testing.T) {
	for _, pStar := range []float64{0.6, 0.9, 0.99} {
		want := 2 * math.Tan(math.Pi*(pStar-0.5))
		for name, find := range map[string]func(int, int, float64) (float64, error){
			"Rinott": stats.RinottH, "Dudewicz & Dalal": stats.DudewiczDalalH,
		} {
			if h, err := find(2, 2, pStar); err != nil || math.Abs(h-want) > 1e-6*want {
				t.Errorf("%s at %g: %g %v, want %g", name, pStar, h, err, want)
			}
		}
	}
}

// The weights make the second stage's share such that
// (w1^2/n0 + w2^2/(n-n0)) S^2 = (delta/h1)^2 (Dudewicz & Dalal 1975).
func TestDudewiczDalalWeights(t *testing.T) {
	const n0, delta, h1 = 20, 0.7, 2.342
	for _, variance := range []float64{0.01, 1, 40} {
		n := stats.DudewiczDalalSize(h1, delta, n0, variance)
		w1, w2 := stats.DudewiczDalalWeights(h1, delta, n0, n, variance)
		got := (w1*w1/n0 + w2*w2/float64(n-n0)) * variance
		if want := delta * delta / (h1 * h1); math.Abs(got-want) > 1e-9 || math.Abs(w1+w2-1) > 1e-12 {
			t.Errorf("variance %g, n %d: %g, want %g; weights %g %g", variance, n, got, want, w1, w2)
		}
	}
	if w1, w2 := stats.DudewiczDalalWeights(h1, delta, n0, 21, 0); w1 != 20.0/21 || w2 != 1-w1 {
		t.Errorf("without variance: %g %g", w1, w2)
	}
}
