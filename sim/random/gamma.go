package random

import (
	"fmt"
	"math"
)

// gamma is the law of a sum of exponential stages, for any number of them.
type gamma struct {
	shape, mean float64
	name        string
	table       *gammaTable // nil for shape 1, the exponential law
}

// Limits of the gamma law: shapes from 0.01 (a cv of 10) to 10^6 (a cv of 0.001).
const (
	gammaLeastShape, gammaMostShape = 0.01, 1e6
	gammaLeastCV, gammaMostCV       = 0.001, 10
)

// Erlang returns the law of the sum of k exponential stages (1 to 10^6) with
// the given total mean (> 0); its coefficient of variation is 1/sqrt(k).
func Erlang(k int, mean float64) (Distribution, error) {
	if k < 1 || k > gammaMostShape {
		return nil, fmt.Errorf("erlang: k is %d; give a whole number of stages, 1 to 1000000", k)
	}
	if err := positive("erlang", "mean", mean); err != nil {
		return nil, err
	}
	return newGamma(float64(k), mean, fmt.Sprintf("erlang(k %d, mean %g)", k, mean)), nil
}

// Gamma returns the gamma law with the given mean (> 0) and coefficient of
// variation cv = standard deviation / mean (0.001 to 10); its shape is 1/cv^2.
func Gamma(mean, cv float64) (Distribution, error) {
	if err := first(positive("gamma", "mean", mean), spread("gamma", cv, gammaLeastCV, gammaMostCV)); err != nil {
		return nil, err
	}
	return newGamma(1/squared(cv), mean, fmt.Sprintf("gamma(mean %g, cv %g)", mean, cv)), nil
}

// GammaShapeScale returns the gamma law with density in proportion to
// x^(shape-1) exp(-x/scale): shape 0.01 to 10^6, scale > 0.
func GammaShapeScale(shape, scale float64) (Distribution, error) {
	const hint = ", where 1 is the exponential law"
	if err := first(within("gamma", "shape", shape, gammaLeastShape, gammaMostShape, hint),
		positive("gamma", "scale", scale)); err != nil {
		return nil, err
	}
	return newGamma(shape, float64(shape*scale), fmt.Sprintf("gamma(shape %g, scale %g)", shape, scale)), nil
}

func newGamma(shape, mean float64, name string) *gamma {
	d := &gamma{shape: shape, mean: mean, name: name}
	if shape != 1 {
		d.table = newGammaTable(standardGamma(shape))
	}
	return d
}

// Quantile reads the table for every p that a Stream can draw, and solves for
// the rest.
func (d *gamma) Quantile(p float64) float64 {
	switch {
	case d.table == nil:
		return float64(d.mean * unitExponential(p))
	case p <= 0:
		return 0
	case p >= 1:
		return math.Inf(1)
	}
	return float64(d.mean * exp(d.table.logRatio(p)))
}

func (d *gamma) Mean() float64     { return d.mean }
func (d *gamma) Variance() float64 { return float64(d.mean*d.mean) / d.shape }
func (d *gamma) String() string    { return d.name }
