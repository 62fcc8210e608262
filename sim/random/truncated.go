package random

import (
	"fmt"
	"math"
)

// truncated is a normal law cut off at zero.
type truncated struct {
	mean, sd     float64 // of the parent, before the cut
	below, above float64 // the parent's chances of being below and above zero
}

// Normal returns the normal law truncated at zero: the parent normal law of the
// given mean (>= 0) and standard deviation (> 0), given that it is positive.
// The mean and sd given are the parent's; Mean and Variance are those of the
// truncated law, whose mean is higher and variance lower. The two differ by
// less than a thousandth when the parent's mean is at least 3.4 of its sd.
func Normal(mean, sd float64) (Distribution, error) {
	if err := first(nonNegative("normal", "mean", mean), positive("normal", "sd", sd)); err != nil {
		return nil, err
	}
	above, below := normalTails(mean / sd)
	return &truncated{mean, sd, below, above}, nil
}

// Quantile inverts the truncated law, the last hundredth from its upper end,
// where the parent's chance would be too near 1.
func (d *truncated) Quantile(p float64) float64 {
	var z float64
	switch {
	case p <= 0:
		return 0
	case p <= 0.99:
		z = normalQuantile(muladd(p, d.above, d.below))
	default:
		z = -normalQuantile(float64((1 - p) * d.above))
	}
	return max(0, muladd(d.sd, z, d.mean))
}

// Mean returns mean + sd h with h the hazard of the standard normal law at the
// cut (Johnson, Kotz and Balakrishnan 1994, section 13.10; from memory).
func (d *truncated) Mean() float64 { return muladd(d.sd, d.hazard(), d.mean) }

// Variance returns sd^2 (1 + a h - h^2), a = -mean/sd the standardised cut
// (same source).
func (d *truncated) Variance() float64 {
	h := d.hazard()
	share := 1 - float64(h*(h+d.mean/d.sd))
	return float64(squared(d.sd) * share)
}

func (d *truncated) hazard() float64 { return normalDensity(d.mean/d.sd) / d.above }

func (d *truncated) String() string { return fmt.Sprintf("normal(mean %g, sd %g)", d.mean, d.sd) }

// normalDensity returns the standard normal density.
func normalDensity(z float64) float64 { return exp(-squared(z)/2) / rootTwoPi }

const rootTwoPi = math.Sqrt2 * math.SqrtPi

// normalTails returns the chances that a standard normal is below and above z.
// The further tail is Q(1/2, z^2/2) / 2, Q the regularised incomplete gamma
// function. Relative accuracy about 1e-14.
func normalTails(z float64) (below, above float64) {
	if z == 0 {
		return 0.5, 0.5
	}
	logP, logQ, _ := standardGamma(0.5).tails(log(squared(z)))
	beyond, body := exp(logQ)/2, 0.5+exp(logP)/2
	if z < 0 {
		return beyond, body
	}
	return body, beyond
}
