package random_test

import (
	"math"
	"testing"

	"dwellcast/sim/random"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// Chances at which every quantile is looked at, to the ends that a stream reaches.
func chances() []float64 {
	var ps []float64
	for e := -53.0; e < -1; e++ {
		ps = append(ps, math.Ldexp(1, int(e)))
	}
	for p := 0.251; p < 0.75; p += 0.0173 {
		ps = append(ps, p)
	}
	for e := -2.0; e >= -53; e-- {
		ps = append(ps, 1-math.Ldexp(1, int(e)))
	}
	return ps
}

// The reference's chance at the quantile must be p again: to 1e-10 of the nearer
// tail, to what the last places of the quantile itself amount to, and where the
// reference subtracts two chances to their rounding.
func TestQuantileAgainstReference(t *testing.T) {
	for _, l := range laws(t) {
		for _, p := range chances() {
			x := l.d.Quantile(p)
			if x < 1e-300 && p > 0 && !l.discrete {
				continue // below the reference's reach
			}
			if l.discrete {
				checkStep(t, l, p, x)
				continue
			}
			tol := 1e-10 * min(p, 1-p)
			tol += l.cdf(x*(1+4e-16)) - l.cdf(x*(1-4e-16))
			if p > 0.25 || l.subtracts {
				tol += 4e-15
			}
			if off := l.cdf(x) - p; math.Abs(off) > tol {
				t.Errorf("%s: reference is off by %.3g at the quantile of %g (%.17g), tolerance %.3g", l.name, off, p, x, tol)
			}
		}
	}
}

// Far in the upper tail the reference's survival function must be 1-p again.
func TestUpperTailAgainstReference(t *testing.T) {
	survival := map[string]func(float64) float64{
		"exponential":      distuv.Exponential{Rate: 1. / 20}.Survival,
		"erlang 4":         distuv.Gamma{Alpha: 4, Beta: 4. / 3}.Survival,
		"gamma cv 2":       distuv.Gamma{Alpha: 0.25, Beta: 0.025}.Survival,
		"gamma cv 0.1":     distuv.Gamma{Alpha: 100, Beta: 10}.Survival,
		"weibull early":    distuv.Weibull{K: 0.6, Lambda: 30}.Survival,
		"lognormal median": distuv.LogNormal{Mu: math.Log(40), Sigma: 0.5}.Survival,
		"normal half":      func(x float64) float64 { return 2 * distuv.Normal{Sigma: 2}.Survival(x) },
	}
	for _, l := range laws(t) {
		f, listed := survival[l.name]
		if !listed {
			continue
		}
		for e := -53; e < -1; e++ {
			beyond := math.Ldexp(1, e)
			x := l.d.Quantile(1 - beyond)
			tol := 1e-10*beyond + f(x*(1-4e-16)) - f(x*(1+4e-16))
			if got := f(x); math.Abs(got-beyond) > tol {
				t.Errorf("%s: reference leaves %.17g beyond %g, want %.17g", l.name, got, x, beyond)
			}
		}
	}
}

// checkStep wants the reference to step over p at x.
func checkStep(t *testing.T, l law, p, x float64) {
	t.Helper()
	if before, at := l.cdf(x*(1-1e-9)), l.cdf(x); before >= p+4e-15 || at < p-4e-15 {
		t.Errorf("%s: quantile of %g is %g, where the reference steps from %g to %g", l.name, p, x, before, at)
	}
}

func TestQuantileMonotone(t *testing.T) {
	for _, l := range laws(t) {
		rapid.Check(t, func(t *rapid.T) {
			p := rapid.Float64Range(0, 1).Draw(t, "p")
			q := rapid.Float64Range(0, 1).Draw(t, "q")
			p, q = min(p, q), max(p, q)
			if q-p < 1e-13*q {
				q = p
			}
			if a, b := l.d.Quantile(p), l.d.Quantile(q); !(0 <= a && a <= b) {
				t.Fatalf("%s: quantiles of %v and %v are %v and %v", l.name, p, q, a, b)
			}
		})
	}
}

// The ends: the quantile at 0 and 1 is the support.
func TestSupport(t *testing.T) {
	inf := math.Inf(1)
	want := map[string][2]float64{
		"constant": {2.5, 2.5}, "uniform": {1, 4}, "triangular": {1, 7}, "exponential": {0, inf}, "erlang 4": {0, inf},
		"gamma cv 2": {0, inf}, "weibull shape": {0, inf}, "lognormal": {0, inf}, "normal": {0, inf},
		"normal cut": {0, inf}, "empirical": {1, 5}, "geometric": {2, inf},
	}
	for _, l := range laws(t) {
		w, listed := want[l.name]
		if !listed {
			continue
		}
		if low, high := l.d.Quantile(0), l.d.Quantile(1); low != w[0] || high != w[1] {
			t.Errorf("%s: support %g to %g, want %g to %g", l.name, low, high, w[0], w[1])
		}
	}
}

// Mean and Variance must be the integrals of the quantile.
func TestMomentsAreIntegralsOfQuantile(t *testing.T) {
	for _, l := range laws(t) {
		mean := integral(l, func(x float64) float64 { return x })
		variance := integral(l, func(x float64) float64 { return (x - mean) * (x - mean) })
		if math.Abs(mean-l.d.Mean()) > 1e-6*mean {
			t.Errorf("%s: quantile integrates to mean %.10g, Mean says %.10g", l.name, mean, l.d.Mean())
		}
		if math.Abs(variance-l.d.Variance()) > 1e-5*variance {
			t.Errorf("%s: quantile integrates to variance %.10g, Variance says %.10g", l.name, variance, l.d.Variance())
		}
	}
}

// integral is the expectation of f under the quantile of l.
func integral(l law, f func(float64) float64) float64 {
	if l.discrete {
		return sumOverSteps(l.d, f)
	}
	const end, n = 8.2, 8192
	unit, sum := distuv.UnitNormal, 0.0
	for i := range n { // midpoints in the standard normal variable
		z := -end + 2*end*(float64(i)+0.5)/n
		p := unit.CDF(z)
		sum += f(l.d.Quantile(p)) * unit.Prob(z) * 2 * end / n
	}
	return sum
}

// sumOverSteps walks the steps of a discrete law's quantile.
func sumOverSteps(d random.Distribution, f func(float64) float64) float64 {
	sum := 0.0
	for p := 0.0; p < 1-1e-15; {
		x, end := d.Quantile(math.Nextafter(p, 1)), 1.0
		if d.Quantile(1-1e-16) != x {
			low, high := math.Nextafter(p, 1), 1.0
			for range 64 {
				if m := (low + high) / 2; d.Quantile(m) == x {
					low = m
				} else {
					high = m
				}
			}
			end = low
		}
		sum += f(x) * (end - p)
		p = end
	}
	return sum
}

// Fixed seeds; 99 % over the whole family by Holm's rule.
func TestSampleMoments(t *testing.T) {
	const n = 100_000
	var family checks
	for _, l := range laws(t) {
		if l.d.Variance() == 0 {
			continue
		}
		var stream random.Stream
		stream.Seed(random.Key(l.name, "moments"), 1, 0)
		mean, variance, sum, squares := l.d.Mean(), l.d.Variance(), 0.0, 0.0
		for range n {
			x := l.d.Quantile(stream.Uniform()) - mean
			sum += x
			squares += x * x
		}
		family.normal(l.name+" mean", sum/n/math.Sqrt(variance/n))
		if !l.heavy {
			fourth := integral(l, func(x float64) float64 { return math.Pow(x-mean, 4) })
			family.normal(l.name+" variance", (squares/n-variance)/math.Sqrt((fourth-variance*variance)/n))
		}
	}
	family.judge(t)
}
