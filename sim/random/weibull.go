package random

import (
	"fmt"
	"math"
)

// weibull is scale times a power of an exponential.
type weibull struct {
	scale, shape float64
	mean, cv     float64
	name         string
}

// Limits of the Weibull law: shapes from 0.1 (a cv of about 430) to 1000.
const (
	weibullLeastShape, weibullMostShape = 0.1, 1000
	weibullLeastCV, weibullMostCV       = 0.01, 100
)

// WeibullShapeScale returns the Weibull law with P(X > x) = exp(-(x/scale)^shape),
// shape 0.1 to 1000, scale > 0. Below shape 1 the hazard falls with age (running
// in), above it rises (wearing out).
func WeibullShapeScale(shape, scale float64) (Distribution, error) {
	const hint = ", where 1 is the exponential law"
	if err := first(within("weibull", "shape", shape, weibullLeastShape, weibullMostShape, hint),
		positive("weibull", "scale", scale)); err != nil {
		return nil, err
	}
	return &weibull{scale, shape, float64(scale * weibullUnitMean(shape)), weibullCV(shape),
		fmt.Sprintf("weibull(shape %g, scale %g)", shape, scale)}, nil
}

// Weibull returns the Weibull law with the given mean (> 0) and coefficient of
// variation cv = standard deviation / mean (0.01 to 100). The shape solves
// Gamma(1+2/k) / Gamma(1+1/k)^2 = 1 + cv^2, by bisection.
func Weibull(mean, cv float64) (Distribution, error) {
	if err := first(positive("weibull", "mean", mean),
		spread("weibull", cv, weibullLeastCV, weibullMostCV)); err != nil {
		return nil, err
	}
	shape := weibullShape(cv)
	return &weibull{mean / weibullUnitMean(shape), shape, mean, cv,
		fmt.Sprintf("weibull(mean %g, cv %g)", mean, cv)}, nil
}

func (d *weibull) Quantile(p float64) float64 {
	e := unitExponential(p)
	if d.shape == 1 {
		return float64(d.scale * e)
	}
	return float64(d.scale * pow(e, 1/d.shape))
}

func (d *weibull) Mean() float64     { return d.mean }
func (d *weibull) Variance() float64 { return squared(float64(d.mean * d.cv)) }
func (d *weibull) String() string    { return d.name }

// weibullUnitMean returns the mean for scale 1, Gamma(1+1/shape).
func weibullUnitMean(shape float64) float64 {
	if shape == 1 {
		return 1
	}
	return exp(logGamma1p(1 / shape))
}

// weibullCV returns the coefficient of variation for a shape.
func weibullCV(shape float64) float64 {
	if shape == 1 {
		return 1
	}
	return math.Sqrt(expm1(logGamma1p(2/shape) - float64(2*logGamma1p(1/shape))))
}

// weibullShape inverts weibullCV, which falls as the shape grows.
func weibullShape(cv float64) float64 {
	if cv == 1 {
		return 1
	}
	low, high := weibullLeastShape, float64(weibullMostShape)
	for {
		middle := math.Sqrt(float64(low * high))
		switch {
		case middle <= low || middle >= high:
			return middle
		case weibullCV(middle) > cv:
			low = middle
		default:
			high = middle
		}
	}
}

// spread reports a coefficient of variation that is out of range.
func spread(law string, cv, least, most float64) error {
	if err := positive(law, "cv", cv); err != nil {
		return err
	}
	return within(law, "cv", cv, least, most, ", or a constant where nothing varies")
}

func squared(x float64) float64 { return float64(x * x) }
