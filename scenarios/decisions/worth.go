package decisions

import (
	"cmp"
	"fmt"
	"slices"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// Worth is what the absence of a cause of loss would bring.
type Worth struct {
	Where, Cause string
	// Without says what was done to leave it out, for example "no such stop".
	Without string
	// Planned says that it is a planned stop.
	Planned bool
	// Charged is what the loss sheet charges to it, and Brings what output gains without it, both in cartons per shift.
	Charged float64
	Brings  stats.Interval
}

// worths runs the line without each cause, and without all of them.
func (e *explaining) worths(out *Explanation, removals []removal) error {
	e.total += len(removals)
	if len(removals) == 0 {
		return nil
	}
	singles := make([]float64, len(e.base))
	for i, r := range removals {
		good, err := e.good(fmt.Sprintf("without %d: %s/%s", i, r.Where, r.Cause), r.remove)
		if err != nil {
			return err
		}
		gain := differences(good, e.base)
		for i, g := range gain {
			singles[i] += g
		}
		w := r.Worth
		w.Brings = stats.MeanInterval(gain, e.spec.Confidence)
		out.Worths = append(out.Worths, w)
	}
	good, err := e.good("without any cause", func(line *stations.Line) {
		for _, r := range removals {
			r.remove(line)
		}
	})
	if err != nil {
		return err
	}
	all := differences(good, e.base)
	out.Together = stats.MeanInterval(all, e.spec.Confidence)
	out.Interaction = stats.MeanInterval(differences(all, singles), e.spec.Confidence)
	slices.SortStableFunc(out.Worths, func(a, b Worth) int {
		if a.Planned != b.Planned {
			return map[bool]int{false: -1, true: 1}[a.Planned]
		}
		return cmp.Compare(b.Brings.Mean, a.Brings.Mean)
	})
	return nil
}
