package random

import (
	"fmt"
	"math"
)

// geometric is a whole number of steps, at least one.
type geometric struct {
	mean, step float64
	rate       float64 // -log(1-p) for the chance p = step/mean that a step is the last
}

// Geometric returns the law of step times 1, 2, 3, ...: each step is the last
// with the same chance step/mean. step > 0, mean >= step. It is the waiting
// time of chance events that can only come at the end of a step.
func Geometric(mean, step float64) (Distribution, error) {
	if err := first(positive("geometric", "mean", mean), positive("geometric", "step", step)); err != nil {
		return nil, err
	}
	if mean < step {
		return nil, fmt.Errorf("geometric: mean %g is below the step %g; give a mean of at least one step", mean, step)
	}
	return &geometric{mean, step, stepRate(step / mean)}, nil
}

func (d *geometric) Quantile(p float64) float64 { return float64(d.step * geometricSteps(p, d.rate)) }
func (d *geometric) Mean() float64              { return d.mean }
func (d *geometric) Variance() float64          { return float64(d.mean * (d.mean - d.step)) }
func (d *geometric) String() string {
	return fmt.Sprintf("geometric(mean %g, step %g)", d.mean, d.step)
}

// stepRate returns -log(1-p): the exponential rate per step that leaves the
// same chance of outlasting a whole number of steps.
func stepRate(p float64) float64 {
	if p >= 1 {
		return math.Inf(1)
	}
	return 0 - log1p(-p)
}

// geometricSteps returns the quantile of the number of steps, 1 or more: an
// exponential time at the given rate per step, rounded up.
func geometricSteps(p, rate float64) float64 {
	return max(1, math.Ceil(unitExponential(p)/rate))
}
