package random

import (
	"fmt"
	"math"
)

// Distribution is a non-negative law of seconds or of plain counts.
type Distribution interface {
	// Quantile returns the smallest value x that the law stays at or below
	// with probability at least p, 0 <= p <= 1. It never falls as p grows;
	// p = 0 gives the least possible value and p = 1 the largest, which may
	// be +Inf.
	Quantile(p float64) float64
	// Mean returns the expectation.
	Mean() float64
	// Variance returns the variance, in squared units of the values.
	Variance() float64
	// String names the law and its parameters, such as "exponential(mean 20)".
	String() string
}

// positive reports a parameter that is not a finite number above 0.
func positive(law, name string, x float64) error {
	if !finite(x) || x <= 0 {
		return fmt.Errorf("%s: %s is %g; give a number above 0", law, name, x)
	}
	return nil
}

// nonNegative reports a parameter that is not a finite number of 0 or more.
func nonNegative(law, name string, x float64) error {
	if !finite(x) || x < 0 {
		return fmt.Errorf("%s: %s is %g; give a number of 0 or more", law, name, x)
	}
	return nil
}

// within reports a parameter outside low to high, the hint saying what to do
// instead.
func within(law, name string, x, low, high float64, hint string) error {
	if !(x >= low && x <= high) {
		return fmt.Errorf("%s: %s is %g; give %g to %g%s", law, name, x, low, high, hint)
	}
	return nil
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// first returns the first error that is not nil.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
