package quantity

import (
	"math/big"
	"strconv"
	"strings"
	"time"
)

// FormatDuration prints a length of time exactly, in the unit a person would take: 8 h, 15 min, 0.95 s,
// 20 ms, 3 us, 7 ns. Parse reads it back to the same nanosecond.
func FormatDuration(d time.Duration) string {
	size := d.Abs()
	switch {
	case d == 0:
		return "0 s"
	case d%time.Hour == 0:
		return inUnits(d, time.Hour, "h")
	case d%time.Minute == 0:
		return inUnits(d, time.Minute, "min")
	case size >= 100*time.Millisecond:
		return inUnits(d, time.Second, "s")
	case size >= time.Millisecond:
		return inUnits(d, time.Millisecond, "ms")
	case size >= time.Microsecond:
		return inUnits(d, time.Microsecond, "us")
	}
	return inUnits(d, time.Nanosecond, "ns")
}

func inUnits(d, one time.Duration, name string) string {
	return decimalText(big.NewRat(int64(d), int64(one))) + " " + name
}

// FormatRate prints a rate given in cartons per hour, to a tenth: 1450 cartons/h.
func FormatRate(perHour float64) string { return brief(perHour, 1) + " cartons/h" }

// FormatRatio prints a fraction in percent, to a ten-thousandth of a percent: 0.004 gives 0.4 %.
func FormatRatio(fraction float64) string { return brief(100*fraction, 4) + " %" }

// FormatCount prints a number of things by their name in the singular: 1 carton, 24 cartons.
func FormatCount(n int64, singular string) string {
	text := strconv.FormatInt(n, 10) + " " + singular
	if n == 1 || n == -1 {
		return text
	}
	if strings.HasSuffix(singular, "ch") {
		return text + "es"
	}
	return text + "s"
}

// brief prints a number with at most so many decimals and no zeros at the end.
func brief(f float64, decimals int) string {
	r := new(big.Rat).SetFloat64(f)
	if r == nil {
		return strconv.FormatFloat(f, 'g', -1, 64)
	}
	rounded, _ := new(big.Rat).SetString(r.FloatString(decimals))
	return decimalText(rounded)
}
