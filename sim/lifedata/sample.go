// Package lifedata fits distributions to times between events of which some were cut off before their end: how long until the next
// stop, how long until it is cleared. A time that was cut off counts for as long as it was seen to last (right censoring); dropping
// it would make the mean too small.
package lifedata

import (
	"errors"
	"fmt"
	"math"
)

// Time is one time between events, above 0, in any unit that all times of a sample share.
type Time struct {
	Length float64
	// Ended says that the event came; else the time was cut off, and would have lasted longer.
	Ended bool
}

// Errors of samples that allow no fit.
var (
	ErrEmpty    = errors.New("there are no times")
	ErrCensored = errors.New("every time was cut off: no event was seen")
	ErrSame     = errors.New("all events came after the same time: a spread can't be told")
)

// Check says why a sample allows no fit.
func Check(sample []Time) error {
	if len(sample) == 0 {
		return ErrEmpty
	}
	for i, t := range sample {
		if !(t.Length > 0) || math.IsInf(t.Length, 1) {
			return fmt.Errorf("time %d is %g, and must be above 0", i+1, t.Length)
		}
	}
	if Events(sample) == 0 {
		return ErrCensored
	}
	return nil
}

// Events is how many times ended.
func Events(sample []Time) int {
	n := 0
	for _, t := range sample {
		if t.Ended {
			n++
		}
	}
	return n
}

// Total is the sum of all times, cut off or not.
func Total(sample []Time) float64 {
	sum := 0.0
	for _, t := range sample {
		sum += t.Length
	}
	return sum
}

// same says that all that ended were equally long and nothing is known beyond.
func same(sample []Time) bool {
	first := math.NaN()
	for _, t := range sample {
		switch {
		case t.Ended && math.IsNaN(first):
			first = t.Length
		case t.Ended && t.Length != first:
			return false
		}
	}
	for _, t := range sample {
		if t.Length > first {
			return false
		}
	}
	return true
}
