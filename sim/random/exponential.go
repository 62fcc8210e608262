package random

import "fmt"

// exponential has mean m: no memory, the law of failures that come by chance.
type exponential struct{ mean float64 }

// Exponential returns the exponential law with the given mean (> 0).
func Exponential(mean float64) (Distribution, error) {
	if err := positive("exponential", "mean", mean); err != nil {
		return nil, err
	}
	return exponential{mean}, nil
}

func (d exponential) Quantile(p float64) float64 { return float64(d.mean * unitExponential(p)) }
func (d exponential) Mean() float64              { return d.mean }
func (d exponential) Variance() float64          { return float64(d.mean * d.mean) }
func (d exponential) String() string             { return fmt.Sprintf("exponential(mean %g)", d.mean) }

// unitExponential returns -log(1-p), the quantile of the exponential law of
// mean 1. The small p are kept apart only for the sake of p that 1-p would
// round; for those of a Stream both ways give the same bits.
func unitExponential(p float64) float64 {
	if p < 1./64 {
		return p + logDefect(-p)
	}
	return 0 - log(1-p)
}
