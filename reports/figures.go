package reports

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"dwellcast/sim/stats"
)

// interval is short for the statistics' own.
type interval = stats.Interval

// none stands where no difference shows or nothing could be assessed.
const none = "~"

// decimals is how many decimals an uncertainty supports: it is left with one digit, or two when the first is a 1, at
// most two decimals. Without a finite uncertainty there are none.
func decimals(halfWidth float64) int {
	if halfWidth == 0 || math.IsInf(halfWidth, 0) || math.IsNaN(halfWidth) {
		return 0
	}
	return min(max(int(-math.Floor(math.Log10(halfWidth/2))), 0), 2)
}

// fixed prints a number with so many decimals, never as minus zero.
func fixed(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return none
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if value, _ := strconv.ParseFloat(text, 64); value == 0 && text[0] == '-' {
		return text[1:]
	}
	return text
}

// exactly prints a number without spread: up to two decimals, no zeros at the end.
func exactly(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return none
	}
	return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
}

// mean prints an estimate to the digits that its interval supports.
func mean(iv interval) string {
	if iv.Assessed() && iv.HalfWidth() == 0 {
		return exactly(iv.Mean)
	}
	return fixed(iv.Mean, decimals(iv.HalfWidth()))
}

// band prints the bounds of an interval.
func band(iv interval) string {
	switch {
	case !iv.Assessed():
		return none
	case iv.HalfWidth() == 0:
		return "no spread"
	}
	d := decimals(iv.HalfWidth())
	return fixed(iv.Low, d) + " to " + fixed(iv.High, d)
}

// exactWidth prints the half-width of an interval to the digits that it supports.
func exactWidth(iv interval) string {
	if !iv.Assessed() {
		return none
	}
	return fixed(iv.HalfWidth(), decimals(iv.HalfWidth()))
}

// percent prints a share in percent with one decimal, a bare dash for nothing at all.
func percent(share float64) string {
	if share == 0 {
		return "-"
	}
	return fixed(100*share, 1)
}

// inPercent is an interval of shares in percent.
func inPercent(iv interval) interval {
	iv.Mean, iv.Low, iv.High = 100*iv.Mean, 100*iv.Low, 100*iv.High
	return iv
}

// confidence prints a level of confidence: "95 %".
func confidence(level float64) string { return fmt.Sprintf("%.4g %%", 100*level) }

// startWith begins a sentence with our own words in a capital; names out of a file stay as they are.
func startWith(words string) string {
	if strings.HasPrefix(words, "the ") {
		return "The " + words[4:]
	}
	return words
}
