package decisions

import (
	"math"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// CaseResult is what a case would change about the base. Cartons are good cartons per shift.
type CaseResult struct {
	Name    string
	Changes []string
	// Refused says which limit the case breaks: then it is no choice, whatever it makes. Empty where it keeps all.
	Refused string
	// Replications is how many shifts of base and case were run as pairs.
	Replications int
	// Base and Case are the forecasts on those shifts.
	Base, Case *scenarios.Forecast
	// Difference is case less base, its interval adjusted over the cases by Holm's levels; Alone is the same for this case by
	// itself.
	Difference, Alone stats.Interval
	// SD is the standard deviation of the paired differences, and Independent what it would be without common random numbers.
	SD, Independent float64
	// P is of the paired t test of no difference, and AdjustedP by Holm over the cases; NaN where not assessed.
	P, AdjustedP float64
	// Shows says that there is a difference at the confidence asked for, over all cases together.
	Shows bool
	// Better is the share of shifts in which the case makes more than the base, Equal in which it makes as many.
	Better stats.Interval
	Equal  float64
	// Odds is the probability that the case makes more on average, by the t distribution of the difference; NaN where not assessed.
	Odds float64
	// SmallestCartons is the smallest difference asked about, and Needed how many pairs would show one of that size with a chance
	// of Power; 0 where it is out of reach.
	SmallestCartons float64
	Needed          int
	// Met says that the wanted precision was reached, or that none was wanted.
	Met bool
	// Ideal is the change of the setting's cartons per shift; with the Moves it sums to the difference.
	Ideal float64
	Moves []Move
	// From and To hold most of the bottleneck of base and case, these shares of it.
	From, To           Holder
	FromShare, ToShare float64

	file  *scenarios.File
	pairs [2][]float64
}

// assess looks at the first n shifts of base and case.
func (r *CaseResult) assess(spec CompareSpec, base, changed *scenarios.Shifts, n int) {
	was, is := base.Good()[:n], changed.Good()[:n]
	r.Replications, r.pairs = n, [2][]float64{is, was}
	r.Alone = stats.PairedInterval(is, was, spec.Confidence)
	mean := stats.MeanInterval(was, spec.Confidence).Mean
	r.Met = spec.Precision == 0 || r.Alone.HalfWidth() <= spec.Precision*mean
	if !r.Met && n < spec.Ceiling {
		return // more shifts come
	}
	r.Base, r.Case = base.Forecast(), changed.Forecast()
	r.spread()
	r.odds()
	r.SmallestCartons = spec.Smallest * mean
	r.Ideal = r.Case.IdealPerShift - r.Base.IdealPerShift
	r.Moves = movesOf(r.Base, r.Case, n)
	r.From, r.FromShare = topHolder(r.Base)
	r.To, r.ToShare = topHolder(r.Case)
}

// spread finds how much the paired differences vary, and how much unpaired ones would.
func (r *CaseResult) spread() {
	var paired, changed, base stats.Moments
	for i, x := range r.pairs[0] {
		paired.Add(x - r.pairs[1][i])
		changed.Add(x)
		base.Add(r.pairs[1][i])
	}
	r.SD, r.Independent = paired.StdDev(), math.Sqrt(changed.Variance()+base.Variance())
}

// odds finds how often the case beats the base, and how likely it does on average.
func (r *CaseResult) odds() {
	more, equal := 0, 0
	for i, x := range r.pairs[0] {
		switch {
		case x > r.pairs[1][i]:
			more++
		case x == r.pairs[1][i]:
			equal++
		}
	}
	n := r.Replications
	r.Better = stats.Wilson(more, n, r.Alone.Confidence)
	r.Equal = float64(equal) / float64(n)
	r.P = stats.PairedT(r.pairs[0], r.pairs[1]).P
	switch {
	case math.IsNaN(r.P):
		r.Odds = math.NaN()
	case r.Alone.Mean > 0:
		r.Odds = 1 - r.P/2
	case r.Alone.Mean < 0:
		r.Odds = r.P / 2
	default:
		r.Odds = 0.5
	}
}
