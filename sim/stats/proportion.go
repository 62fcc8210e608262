package stats

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// Wilson is the score interval for a probability of which k of n trials were
// successes, without continuity correction (Wilson 1927). Its Mean is k/n.
// Without trials, or with k outside 0..n, it is not assessed.
func Wilson(k, n int, confidence float64) Interval {
	if n < 1 || k < 0 || k > n || !isProbability(confidence) {
		return unassessed(math.NaN(), n, confidence)
	}
	z := distuv.UnitNormal.Quantile(1 - (1-confidence)/2)
	nf, p := float64(n), float64(k)/float64(n)
	center := p + z*z/(2*nf)
	reach := z * math.Sqrt(p*(1-p)/nf+z*z/(4*nf*nf))
	scale := 1 + z*z/nf
	low, high := (center-reach)/scale, (center+reach)/scale
	if k == 0 {
		low = 0 // exactly, where rounding would leave a trace
	}
	if k == n {
		high = 1
	}
	return bounded(p, low, high, n, confidence)
}

// CoverageBand is the range of counts, both ends included, within which the
// number of covering intervals among runs independent ones falls when their
// true coverage is nominal: the binomial quantiles at (1-level)/2 and
// (1+level)/2. A level of 0.999 raises a false alarm at most once in a
// thousand. It needs runs >= 1 and both probabilities between 0 and 1;
// otherwise the band is empty (1, 0).
func CoverageBand(runs int, nominal, level float64) (lo, hi int) {
	if runs < 1 || !isProbability(nominal) || !isProbability(level) {
		return 1, 0
	}
	tail := (1 - level) / 2
	return binomialQuantile(runs, nominal, tail), binomialQuantile(runs, nominal, 1-tail)
}

// binomialQuantile is the smallest k with P(X <= k) >= q.
func binomialQuantile(n int, p, q float64) int {
	lo, hi := 0, n
	for lo < hi {
		mid := lo + (hi-lo)/2
		if binomialCDF(mid, n, p) >= q {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// binomialCDF is P(X <= k) for n trials of probability p, through the
// regularized incomplete beta function.
func binomialCDF(k, n int, p float64) float64 {
	switch {
	case k < 0:
		return 0
	case k >= n:
		return 1
	}
	return mathext.RegIncBeta(float64(n-k), float64(k+1), 1-p)
}
