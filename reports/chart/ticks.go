package chart

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// scale maps values to places along one direction of the drawing.
type scale struct {
	from, to float64 // values
	lo, hi   float64 // places in points
}

// at is the place of a value.
func (s scale) at(v float64) float64 { return s.lo + (v-s.from)/(s.to-s.from)*(s.hi-s.lo) }

// step is the least of 1, 2, 5 times a power of ten that cuts a span into at most n parts.
func step(span float64, n int) float64 {
	raw := span / float64(max(n, 1))
	unit := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{1, 2, 5} {
		if k*unit >= raw*(1-1e-9) {
			return k * unit
		}
	}
	return 10 * unit
}

// ticks lists the multiples of a step inside a range.
func ticks(from, to, step float64) []float64 {
	var out []float64
	for k := math.Ceil(from/step - 1e-6); k*step <= to+1e-6*step; k++ {
		v := k * step
		if math.Abs(v) < 1e-9*step {
			v = 0
		}
		out = append(out, v)
	}
	return out
}

// tickWords writes ticks with the decimals that their step needs.
func tickWords(values []float64, step float64) []string {
	decimals := max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = minus(strconv.FormatFloat(v, 'f', decimals, 64))
	}
	return out
}

// minus sets a true minus sign, and none before a zero.
func minus(s string) string {
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		if strings.Trim(rest, "0.") == "" {
			return rest
		}
		return "−" + rest
	}
	return s
}

// brief writes a value with four significant digits, and all digits before the point, in groups where they are many.
func brief(v float64) string {
	size := math.Abs(v)
	switch {
	case math.IsNaN(v):
		return "none"
	case size >= 1e12 || size > 0 && size < 1e-4:
		power := math.Floor(math.Log10(size))
		return fmt.Sprintf("%s×10^%s", brief(v/math.Pow(10, power)), strconv.FormatFloat(power, 'f', 0, 64))
	case size >= 99999.5:
		return minus(grouped(strconv.FormatFloat(v, 'f', 0, 64)))
	case size >= 1000:
		return minus(strconv.FormatFloat(v, 'f', 0, 64))
	}
	decimals := 3
	if size > 0 {
		decimals = 3 - int(math.Floor(math.Log10(size)))
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return minus(s)
}

// grouped sets spaces that don't break between groups of three digits.
func grouped(digits string) string {
	for i := len(digits) - 3; i > 0 && digits[i-1] != '-'; i -= 3 {
		digits = digits[:i] + "\u00a0" + digits[i:]
	}
	return digits
}

// withUnit joins a value and its unit.
func withUnit(value, unit string) string {
	if unit == "" {
		return value
	}
	return value + " " + unit
}

// thousands is the power of a thousand that keeps an axis' numbers short, as an exponent of ten: 6 for millions.
func thousands(largest float64) int {
	if largest == 0 || largest < 1e6 && largest >= 1e-3 {
		return 0
	}
	return 3 * int(math.Floor(math.Log10(largest)/3+1e-9))
}
