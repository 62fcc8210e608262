package stats

import (
	"math"
	"sort"
)

// Holm adjusts p values for testing several hypotheses at once (step-down,
// Holm 1979): rejecting where the adjusted value is at most alpha keeps the
// chance of any false rejection at or below alpha, whatever the dependence.
// The order of the input is kept. A NaN stays NaN but still counts as a
// hypothesis, which errs on the safe side.
func Holm(ps []float64) []float64 {
	m := len(ps)
	order := make([]int, m)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return lessNaNLast(ps[order[a]], ps[order[b]]) })
	adjusted := make([]float64, m)
	running := 0.0
	for rank, i := range order {
		running = math.Max(running, math.Min(1, float64(m-rank)*ps[i]))
		adjusted[i] = running
	}
	return adjusted
}

// Bonferroni adjusts p values by min(1, m p), m being their number. Simpler
// than Holm and never smaller.
func Bonferroni(ps []float64) []float64 {
	adjusted := make([]float64, len(ps))
	for i, p := range ps {
		adjusted[i] = math.Min(1, float64(len(ps))*p)
	}
	return adjusted
}

// BonferroniConfidence is the confidence that each of m >= 1 intervals needs
// so that all of them hold together with at least the given confidence.
func BonferroniConfidence(confidence float64, m int) float64 {
	return 1 - (1-confidence)/float64(m)
}

func lessNaNLast(a, b float64) bool {
	if math.IsNaN(b) {
		return !math.IsNaN(a)
	}
	return a < b
}
