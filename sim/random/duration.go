package random

import "time"

// Longest is the longest time that is ever drawn, about 73 years; longer values
// are cut to it, so that a clock of nanoseconds can add several.
const Longest = time.Duration(1 << 61)

// nanoseconds rounds a number of nanoseconds to the nearest whole one, halves
// up, within 0 to Longest. What is not a number counts as 0.
func nanoseconds(x float64) time.Duration {
	if x >= float64(Longest) {
		return Longest
	}
	if x > 0 {
		return time.Duration(x + 0.5)
	}
	return 0
}

// scaled returns k times d within 0 to Longest.
func scaled(d time.Duration, k float64) time.Duration {
	if k == 1 {
		return d
	}
	return nanoseconds(float64(float64(d) * k))
}

// checkScale panics on a scale that no caller can mean.
func checkScale(k float64) {
	if !finite(k) || k < 0 {
		panic("random: a time can be scaled only by a finite number of 0 or more")
	}
}
