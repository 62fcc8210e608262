package decisions

import (
	"math"
)

// flows are the money of a candidate over its life, at one mean output of a year.
type flows struct {
	cash  CashFlow // contribution less costs
	costs CashFlow // costs alone, as negative amounts
	sold  []float64
}

// flowsAt works out the years of a candidate whose full output has this mean.
func (s *Sized) flowsAt(spec SizeSpec, mean float64) flows {
	lines := float64(s.Lines)
	f := flows{
		cash:  CashFlow{First: lines * s.Price, Salvage: lines * s.Salvage},
		costs: CashFlow{First: lines * s.Price, Salvage: lines * s.Salvage},
	}
	fixed := lines*s.Operating + s.crewCost()
	waste := s.shifts.Waste()
	for k := 1; k <= s.Life; k++ {
		sold := s.soldOf(spec, s.RampUp.Share(k))(mean)
		cost := fixed + float64(s.Waste*wasted(sold, s.PerShift.Mean, waste))
		f.sold = append(f.sold, sold)
		f.costs.Years = append(f.costs.Years, -cost)
		f.cash.Years = append(f.cash.Years, float64(s.Contribution*sold)-cost)
	}
	return f
}

// costAll works out the money of every candidate; the one that the others are held against comes first.
func (z *Sizing) costAll() {
	var against *Sized
	for i := range z.Candidates {
		if z.Candidates[i].Name == z.Spec.Against {
			against = &z.Candidates[i]
		}
	}
	for i := range z.Candidates {
		z.Candidates[i].fillMoney(z.Spec, against)
	}
}

func (s *Sized) fillMoney(spec SizeSpec, against *Sized) {
	i := spec.Discount
	at := func(figure func(flows) float64) func(float64) float64 {
		return func(mean float64) float64 { return figure(s.flowsAt(spec, mean)) }
	}
	s.AnnualCost = through(s.Year, at(func(f flows) float64 { return -f.costs.EquivalentAnnual(i) }))
	s.CostPerThousand = through(s.Year, at(func(f flows) float64 {
		return 1000 * -f.costs.NetPresentValue(i) / PresentValue(i, f.sold)
	}))
	s.AnnualWorth = through(s.Year, at(func(f flows) float64 { return f.cash.EquivalentAnnual(i) }))
	s.SimplePayback, s.DiscountedPayback, s.RateOfReturn = math.NaN(), math.NaN(), math.NaN()
	if s == against || against == nil && !s.Sells {
		s.NetPresentValue = through(s.Year, func(float64) float64 { return math.NaN() })
		return
	}
	beyond := func(f flows) CashFlow { return f.cash }
	if against != nil {
		beyond = func(f flows) CashFlow { return less(f.cash, against.flowsAt(spec, against.Year.Mean).cash) }
	}
	s.NetPresentValue = through(s.Year, at(func(f flows) float64 { return beyond(f).NetPresentValue(i) }))
	extra := beyond(s.flowsAt(spec, s.Year.Mean))
	s.SimplePayback, s.DiscountedPayback, s.RateOfReturn = extra.Payback(0), extra.Payback(i), extra.RateOfReturn()
}

// less is what a candidate costs and brings beyond one that is there already: whose price is spent, and whose last year repeats.
func less(a, b CashFlow) CashFlow {
	out := CashFlow{First: a.First, Salvage: a.Salvage}
	for k := range a.Years {
		out.Years = append(out.Years, a.Years[k]-b.Years[min(k, len(b.Years)-1)])
	}
	return out
}
