package stats

import "math"

// Quantile is the p quantile (0 <= p <= 1) of observations sorted in
// ascending order, by definition 7 of Hyndman & Fan (1996): linear between
// the order statistics, the i-th of n (from 0) standing at p = i/(n-1). NaN
// when there are none.
func Quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	at := p * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + float64((at-float64(i))*(sorted[i+1]-sorted[i]))
}

// QuantileInterval is the interval between two order statistics that holds
// the p quantile (0 < p < 1) with at least the given confidence, whatever
// the distribution (David & Nagaraja, Order Statistics, 2003, ch. 7): each
// side misses with at most half the rest. Its Mean is Quantile. A side for
// which there are too few observations is infinite, and the interval then
// not assessed.
func QuantileInterval(sorted []float64, p, confidence float64) Interval {
	n := len(sorted)
	if n == 0 || !isProbability(p) || !isProbability(confidence) {
		return unassessed(math.NaN(), n, confidence)
	}
	tail := (1 - confidence) / 2
	iv := unassessed(Quantile(sorted, p), n, confidence)
	// With B of the observations below the quantile, B is binomial(n, p):
	// the l-th of them (from 1) is above the quantile when B < l, and the
	// u-th below it when B >= u.
	if l := largestMissing(n, p, tail); l >= 1 {
		iv.Low = sorted[l-1]
	}
	if u := binomialQuantile(n, p, 1-tail) + 1; u <= n {
		iv.High = sorted[u-1]
	}
	return iv
}

// largestMissing is the largest l with P(B <= l-1) <= tail, or 0.
func largestMissing(n int, p, tail float64) int {
	q := binomialQuantile(n, p, tail) // smallest q with P(B <= q) >= tail
	if binomialCDF(q, n, p) <= tail {
		return q + 1
	}
	return q
}
