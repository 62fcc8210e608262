package random

import (
	"fmt"
	"math"
)

// lognormal is the exponential of a normal variable.
type lognormal struct {
	logMedian, sigma float64
	mean, cv         float64
	name             string
}

// Lognormal returns the lognormal law with the given mean (> 0) and coefficient
// of variation cv = standard deviation / mean (1e-6 to 1000).
func Lognormal(mean, cv float64) (Distribution, error) {
	if err := first(positive("lognormal", "mean", mean), spread("lognormal", cv, 1e-6, 1000)); err != nil {
		return nil, err
	}
	s2 := log1p(squared(cv))
	return &lognormal{log(mean) - s2/2, math.Sqrt(s2), mean, cv,
		fmt.Sprintf("lognormal(mean %g, cv %g)", mean, cv)}, nil
}

// LognormalMedianSigma returns the lognormal law with the given median (> 0)
// whose logarithm has standard deviation sigma (1e-6 to 5).
func LognormalMedianSigma(median, sigma float64) (Distribution, error) {
	if err := first(positive("lognormal", "median", median),
		within("lognormal", "sigma", sigma, 1e-6, 5, ", the standard deviation of the logarithm")); err != nil {
		return nil, err
	}
	s2 := squared(sigma)
	return &lognormal{log(median), sigma, float64(median * exp(s2/2)), math.Sqrt(expm1(s2)),
		fmt.Sprintf("lognormal(median %g, sigma %g)", median, sigma)}, nil
}

func (d *lognormal) Quantile(p float64) float64 {
	return exp(muladd(d.sigma, normalQuantile(p), d.logMedian))
}
func (d *lognormal) Mean() float64     { return d.mean }
func (d *lognormal) Variance() float64 { return squared(float64(d.mean * d.cv)) }
func (d *lognormal) String() string    { return d.name }
