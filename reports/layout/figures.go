package layout

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// None stands where no difference shows or nothing could be assessed.
const None = "~"

// Decimals is how many decimals an uncertainty supports: it is left with one digit, or two when the first is a 1, at
// most two decimals. Without a finite uncertainty there are none.
func Decimals(halfWidth float64) int {
	if halfWidth == 0 || math.IsInf(halfWidth, 0) || math.IsNaN(halfWidth) {
		return 0
	}
	return min(max(int(-math.Floor(math.Log10(halfWidth/2))), 0), 2)
}

// Fixed prints a number with so many decimals, never as minus zero.
func Fixed(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return None
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if value, _ := strconv.ParseFloat(text, 64); value == 0 && text[0] == '-' {
		return text[1:]
	}
	return text
}

// Exactly prints a number without spread: up to two decimals, no zeros at the end.
func Exactly(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return None
	}
	return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
}

// Mean prints an estimate to the digits that its interval supports.
func Mean(iv Interval) string {
	if iv.Assessed() && iv.HalfWidth() == 0 {
		return Exactly(iv.Mean)
	}
	return Fixed(iv.Mean, Decimals(iv.HalfWidth()))
}

// Band prints the bounds of an interval.
func Band(iv Interval) string {
	switch {
	case !iv.Assessed():
		return None
	case iv.HalfWidth() == 0:
		return "no spread"
	}
	d := Decimals(iv.HalfWidth())
	return Fixed(iv.Low, d) + " to " + Fixed(iv.High, d)
}

// exactWidth prints the half-width of an interval to the digits that it supports.
func exactWidth(iv Interval) string {
	if !iv.Assessed() {
		return None
	}
	return Fixed(iv.HalfWidth(), Decimals(iv.HalfWidth()))
}

// percent prints a share in percent with one decimal, a bare dash for nothing at all.
func percent(share float64) string {
	if share == 0 {
		return "-"
	}
	return Fixed(100*share, 1)
}

// InPercent is an interval of shares in percent.
func InPercent(iv Interval) Interval {
	iv.Mean, iv.Low, iv.High = 100*iv.Mean, 100*iv.Low, 100*iv.High
	return iv
}

// Confidence prints a level of confidence: "95 %".
func Confidence(level float64) string { return fmt.Sprintf("%.4g %%", 100*level) }

// StartWith begins a sentence with our own words in a capital; names out of a file stay as they are.
func StartWith(words string) string {
	if strings.HasPrefix(words, "the ") {
		return "The " + words[4:]
	}
	return words
}
