package decisions

import (
	"context"
	"fmt"
	"math"
	"slices"

	"dwellcast/scenarios"
)

// mostSettings is how many settings one selection compares.
const mostSettings = 500

// settings lists the settings to compare, rising; today's, the highest that the line can follow and the
// highest that its mechanics allow are always among them.
func (a *Pace) settings(ctx context.Context, f *scenarios.File, spec PaceSpec) ([]float64, error) {
	budget := scenarios.BudgetOf(f.Line)
	a.Follows, a.FollowsName = budget.Ceiling, MasterHolds.Name
	if budget.Next >= 0 {
		a.FollowsName = f.Line.Stations[budget.Next].Name
	}
	c, err := ceilingOf(ctx, f)
	if err != nil {
		return nil, err
	}
	if c.known {
		a.Mechanics, a.MechanicsWhy = c.setting, c.why
	}
	a.findCeiling(spec)
	list := spec.List
	if list == nil {
		from := spec.From
		if from == 0 {
			from = 0.7 * min(a.Follows, a.Today, a.Ceiling)
		}
		if from >= a.Ceiling {
			return nil, mistake("give a lower --from, or --to", "the settings would run from %.6g to %.6g cartons/h", from, a.Ceiling)
		}
		list = spaced(from, a.Ceiling, spec.Settings)
		for _, x := range []float64{a.Today, math.Floor(a.Follows), math.Floor(a.Mechanics)} {
			if x >= from && x <= a.Ceiling {
				list = append(list, x)
			}
		}
	}
	list = slices.Clone(list)
	slices.Sort(list)
	list = slices.Compact(list)
	if len(list) > mostSettings {
		return nil, mistake(fmt.Sprintf("take %d at the most", mostSettings), "%d settings to compare", len(list))
	}
	return list, nil
}

// findCeiling says how far up to look: as far as the mechanics allow, but not where the line has long ceased to follow.
func (a *Pace) findCeiling(spec PaceSpec) {
	a.look(spec)
	if a.Mechanics > 0 && a.Mechanics < a.Ceiling && spec.To == 0 && len(spec.List) == 0 {
		a.Ceiling, a.CeilingWhy = a.Mechanics, "as far as the mechanics allow"
	}
}

func (a *Pace) look(spec PaceSpec) {
	switch {
	case spec.To > 0:
		a.Ceiling, a.CeilingWhy = spec.To, "as asked for"
	case len(spec.List) > 0:
		a.Ceiling, a.CeilingWhy = slices.Max(spec.List), "as asked for"
	case !math.IsInf(a.Follows, 1):
		a.Ceiling, a.CeilingWhy = 1.25*a.Follows, "a quarter beyond what the line can follow"
	default:
		a.Ceiling, a.CeilingWhy = 1.5*a.Today, "half as much again as today"
	}
}

// spaced lists n settings at equal steps, to a tenth of a carton an hour; without an n those of a round step, about 16 of them.
func spaced(from, to float64, n int) []float64 {
	var list []float64
	if n >= 2 {
		for i := range n {
			list = append(list, tenth(from+float64((to-from)*float64(i)/float64(n-1))))
		}
		return list
	}
	step := roundStep((to - from) / 16)
	for k := math.Ceil(from/step - 1e-9); k*step <= to+1e-9; k++ {
		list = append(list, tenth(k*step))
	}
	return list
}

func tenth(x float64) float64 { return math.Round(x*10) / 10 }

// roundStep is the least of 1, 2, 2.5, 5 and 10 times a power of ten that is not below x, and 0.1 at the least.
func roundStep(x float64) float64 {
	power := math.Pow10(int(math.Floor(math.Log10(max(x, 0.1)))))
	for _, m := range []float64{1, 2, 2.5, 5} {
		if m*power >= x {
			return m * power
		}
	}
	return 10 * power
}
