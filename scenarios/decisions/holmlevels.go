package decisions

import (
	"slices"

	"dwellcast/sim/stats"
)

// adjust takes into account that several cases are looked at: p values by Holm (1979), and intervals at the levels at which his
// procedure tests, so that an interval leaves out 0 exactly where the test finds a difference.
func (c *Comparison) adjust() {
	var ps []float64
	for i := range c.Cases {
		ps = append(ps, c.Cases[i].P)
	}
	alpha := 1 - c.Spec.Confidence
	for i, p := range stats.Holm(ps) {
		r := &c.Cases[i]
		r.AdjustedP, r.Shows = p, p <= alpha
	}
	for i, level := range holmLevels(ps, alpha) {
		r := &c.Cases[i]
		r.Difference = stats.PairedInterval(r.pairs[0], r.pairs[1], 1-level)
		r.Needed, _ = stats.ReplicationsForDifference(r.SD, r.SmallestCartons, 1-level, Power)
		r.pairs = [2][]float64{}
	}
}

// holmLevels is the error probability at which Holm's procedure tests each p value: alpha/m the smallest, alpha/(m-1) the next,
// and so on; from the first that is not rejected, all at that one's.
func holmLevels(ps []float64, alpha float64) []float64 {
	order := make([]int, len(ps))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case ps[a] < ps[b]:
			return -1
		case ps[b] < ps[a]:
			return 1
		}
		return 0
	})
	levels := make([]float64, len(ps))
	level := alpha / float64(len(ps))
	rejecting := true
	for k, i := range order {
		if rejecting {
			level = alpha / float64(len(ps)-k)
			rejecting = ps[i] <= level
		}
		levels[i] = level
	}
	return levels
}
