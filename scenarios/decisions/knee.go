package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// Knee is where a curve bends, by the two straight lines that fit it best thereabouts.
type Knee struct {
	// At is where, in the unit of the parameter; without width where it was found exactly.
	At stats.Interval
	// Before and After are the slopes on either side, in the figure's unit per unit of the parameter, and Change how much the
	// second is above the first.
	Before, After, Change stats.Interval
	// Level is the figure at the knee.
	Level float64
	// Misfit is the largest distance of a point near the knee from the two lines, in the figure's unit.
	Misfit float64
	// Shows says that the slopes differ by more than chance could explain, and by enough to matter. Otherwise the curve is as good
	// as straight.
	Shows bool
	// From and To are who held most of the bottleneck before and after; the same where it does not change hands.
	From, To string
}

// leastBend is the change of slope, over the whole range and as a share of the figure, below which nobody would speak of a knee.
const leastBend = 0.001

func (k *Knee) matters(x []float64) bool {
	return math.Abs(k.Change.Mean*(x[len(x)-1]-x[0])) >= leastBend*math.Abs(k.Level)
}

// groups is how many parts the shifts are divided into for the jackknife.
const groups = 20

// findKnee fits two lines to the means of the curve. series holds per point the figure shift by shift, on common random
// numbers; the intervals come from leaving out one group of shifts after another, the same for all points (the jackknife of
// Quenouille 1949 and Tukey 1958). Without a series there are no intervals.
func findKnee(x, y []float64, series [][]float64, conf float64) *Knee {
	if len(x) < leastPoints {
		return nil
	}
	allX := x
	from, to := window(fitHinge(x, y).at, x)
	x, y = x[from:to], y[from:to]
	whole := fitHinge(x, y)
	k := &Knee{Level: whole.level, Misfit: misfit(whole, x, y)}
	estimates := []float64{whole.at, whole.before, whole.after, whole.after - whole.before}
	parts := [][]float64{nil, nil, nil, nil}
	if series != nil {
		parts = leaveOut(x, series[from:to], estimates)
	}
	for i, target := range []*stats.Interval{&k.At, &k.Before, &k.After, &k.Change} {
		*target = around(estimates[i], parts[i], conf)
	}
	k.Shows = k.Change.Assessed() && !k.Change.Contains(0) && k.matters(allX)
	return k
}

// window picks the points about a first estimate of the knee, three on either side. The lines are fitted to these alone, because
// the branches of a real curve are bent: output goes with the inverse of a cycle time.
func window(at float64, x []float64) (from, to int) {
	const each = 3
	right := 0
	for right < len(x) && x[right] <= at {
		right++
	}
	from, to = max(right-each, 0), min(right+each, len(x))
	if to-from < leastPoints {
		from, to = max(to-leastPoints, 0), min(from+leastPoints, len(x))
	}
	return from, to
}

// leaveOut returns the jackknife's pseudo-values of each estimate.
func leaveOut(x []float64, series [][]float64, whole []float64) [][]float64 {
	n := len(series[0])
	g := min(groups, n)
	parts := make([][]float64, len(whole))
	for part := range g {
		y := make([]float64, len(x))
		for i, shifts := range series {
			y[i] = averageWithout(shifts, part, g)
		}
		h := fitHinge(x, y)
		for i, estimate := range []float64{h.at, h.before, h.after, h.after - h.before} {
			parts[i] = append(parts[i], float64(float64(g)*whole[i])-float64(float64(g-1)*estimate))
		}
	}
	return parts
}

// averageWithout is the mean of all shifts but those of one group; shift s belongs to group s mod g.
func averageWithout(shifts []float64, part, g int) float64 {
	var kept stats.Moments
	for s, v := range shifts {
		if s%g != part {
			kept.Add(v)
		}
	}
	return kept.Mean()
}

// around is the interval of the jackknife, put around the estimate from all shifts.
func around(estimate float64, pseudo []float64, conf float64) stats.Interval {
	iv := stats.MeanInterval(pseudo, conf)
	if !iv.Assessed() {
		iv.Mean = estimate
		return iv
	}
	half := iv.HalfWidth()
	iv.Mean, iv.Low, iv.High = estimate, estimate-half, estimate+half
	return iv
}

func misfit(h hinge, x, y []float64) float64 {
	most := 0.0
	for i := range x {
		most = math.Max(most, math.Abs(y[i]-h.value(x[i])))
	}
	return most
}
