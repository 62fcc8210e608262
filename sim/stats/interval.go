package stats

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Interval is a point estimate with its confidence bounds, in the unit of
// the observations. Where the data allow no verdict the bounds are -Inf and
// +Inf, so that the half-width is infinite, every value is contained, and
// Assessed is false.
type Interval struct {
	Mean       float64 // point estimate; NaN when there is none
	Low        float64 // lower bound
	High       float64 // upper bound
	N          int     // observations behind it
	Confidence float64 // nominal two-sided confidence, between 0 and 1
}

// HalfWidth is half the distance between the bounds; +Inf when the interval
// is not assessed.
func (iv Interval) HalfWidth() float64 { return (iv.High - iv.Low) / 2 }

// Assessed reports whether there were data enough for estimate and bounds.
func (iv Interval) Assessed() bool {
	return isFinite(iv.Mean) && isFinite(iv.Low) && isFinite(iv.High)
}

// Contains reports whether x lies within the bounds, bounds included. For a
// paired difference, Contains(0) means that no difference shows.
func (iv Interval) Contains(x float64) bool { return iv.Low <= x && x <= iv.High }

// String is the interval for a log or a test failure.
func (iv Interval) String() string {
	if !iv.Assessed() {
		return fmt.Sprintf("not assessed (n=%d)", iv.N)
	}
	return fmt.Sprintf("%g [%g, %g] (%g%%, n=%d)", iv.Mean, iv.Low, iv.High, 100*iv.Confidence, iv.N)
}

// MeanInterval is the Student t interval for the mean of independent
// observations: mean -+ t(n-1, 1-a/2) s/sqrt(n) with a = 1 - confidence.
// Fewer than two observations, or a confidence not between 0 and 1, give an
// interval that is not assessed; two or more equal ones give zero width.
func MeanInterval(xs []float64, confidence float64) Interval {
	m := momentsOf(xs)
	return m.Interval(confidence)
}

// PairedInterval is the Student t interval for the mean of a[i] - b[i], for
// two systems run on common random numbers. It panics when the lengths
// differ, since then the pairs are not known.
func PairedInterval(a, b []float64, confidence float64) Interval {
	m := differences(a, b)
	return m.Interval(confidence)
}

// StudentQuantile is the p quantile (0 < p < 1) of Student's t distribution
// with df > 0 degrees of freedom.
func StudentQuantile(p, df float64) float64 {
	if !isProbability(p) || !(df > 0) {
		return math.NaN()
	}
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: df}.Quantile(p)
}

// differences accumulates a[i] - b[i].
func differences(a, b []float64) Moments {
	if len(a) != len(b) {
		panic(fmt.Sprintf("stats: paired samples of different lengths %d and %d", len(a), len(b)))
	}
	var m Moments
	for i := range a {
		m.Add(a[i] - b[i])
	}
	return m
}

// bounded is an interval with finite bounds, unless the data were not.
func bounded(mean, low, high float64, n int, confidence float64) Interval {
	if !isFinite(mean) || !isFinite(low) || !isFinite(high) {
		return unassessed(mean, n, confidence)
	}
	return Interval{Mean: mean, Low: low, High: high, N: n, Confidence: confidence}
}

// unassessed is an interval without a verdict.
func unassessed(mean float64, n int, confidence float64) Interval {
	return Interval{Mean: mean, Low: math.Inf(-1), High: math.Inf(1), N: n, Confidence: confidence}
}

func isFinite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// isProbability reports whether p lies strictly between 0 and 1.
func isProbability(p float64) bool { return p > 0 && p < 1 }
