package stats

import "math"

// Moments accumulates the number, mean and variance of observations one at
// a time (Welford 1962). It keeps three numbers whatever the count. Equal
// observations give a variance of exactly zero. The zero value is ready.
//
// The products are rounded explicitly, so that no processor fuses them into
// the following addition and the result is the same everywhere.
type Moments struct {
	n    int
	mean float64
	m2   float64 // sum of squared deviations from the mean
}

// Add takes one observation into account.
func (m *Moments) Add(x float64) {
	m.n++
	delta := x - m.mean
	m.mean += delta / float64(m.n)
	m.m2 += float64(delta * (x - m.mean))
}

// N is the number of observations so far.
func (m *Moments) N() int { return m.n }

// Mean is the sample mean, in the unit of the observations; NaN when there
// are none.
func (m *Moments) Mean() float64 {
	if m.n == 0 {
		return math.NaN()
	}
	return m.mean
}

// Variance is the unbiased sample variance (divisor n-1), in the squared
// unit of the observations; NaN for fewer than two.
func (m *Moments) Variance() float64 {
	if m.n < 2 {
		return math.NaN()
	}
	return m.m2 / float64(m.n-1)
}

// StdDev is the square root of Variance.
func (m *Moments) StdDev() float64 { return math.Sqrt(m.Variance()) }

// Interval is the Student t interval for the mean at the given confidence,
// as MeanInterval.
func (m *Moments) Interval(confidence float64) Interval {
	if m.n < 2 || !isProbability(confidence) {
		return unassessed(m.Mean(), m.n, confidence)
	}
	half := 0.0
	if m.m2 != 0 {
		t := StudentQuantile(1-(1-confidence)/2, float64(m.n-1))
		half = t * math.Sqrt(m.Variance()/float64(m.n))
	}
	return bounded(m.mean, m.mean-half, m.mean+half, m.n, confidence)
}

// momentsOf accumulates all of xs.
func momentsOf(xs []float64) Moments {
	var m Moments
	for _, x := range xs {
		m.Add(x)
	}
	return m
}
