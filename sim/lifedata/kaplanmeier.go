package lifedata

import (
	"cmp"
	"math"
	"slices"
)

// Step is where the Kaplan-Meier estimate of survival falls.
type Step struct {
	Time float64
	// AtRisk is how many times were at least so long; Events how many ended there.
	AtRisk, Events int
	// Survival is the share of times longer than Time; SD its standard deviation by Greenwood's formula.
	Survival, SD float64
}

// KaplanMeier estimates survival without a law (Kaplan and Meier 1958), its spread by Greenwood (1926). A time that was cut off at
// the same moment as an event counts as longer.
func KaplanMeier(sample []Time) []Step {
	times := slices.Clone(sample)
	slices.SortFunc(times, func(a, b Time) int { return cmp.Compare(a.Length, b.Length) })
	var steps []Step
	survival, sum := 1.0, 0.0
	for i := 0; i < len(times); {
		risk, events, k := len(times)-i, 0, i
		for ; k < len(times) && times[k].Length == times[i].Length; k++ {
			if times[k].Ended {
				events++
			}
		}
		if events > 0 {
			survival *= float64(risk-events) / float64(risk)
			sum += float64(events) / (float64(risk) * float64(risk-events))
			sd := survival * math.Sqrt(sum)
			if risk == events {
				sd = 0
			}
			steps = append(steps, Step{times[i].Length, risk, events, survival, sd})
		}
		i = k
	}
	return steps
}

// Median is the first time at which survival is a half or less; NaN where it never is.
func Median(steps []Step) float64 {
	for _, s := range steps {
		if s.Survival <= 0.5 {
			return s.Time
		}
	}
	return math.NaN()
}
