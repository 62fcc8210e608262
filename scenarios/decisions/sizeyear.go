package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

func sqrt(x float64) float64 { return math.Sqrt(x) }

// fillYear works out what a candidate makes in a year from its shifts.
func (s *Sized) fillYear(spec SizeSpec, good []float64) {
	shift := s.File.Line.Shift
	s.NetHours, s.YearShifts = s.Calendar.Net(shift), s.Calendar.WholeShifts(shift)
	s.PerShift = stats.MeanInterval(good, spec.Confidence)
	var m stats.Moments
	for _, x := range good {
		m.Add(x)
	}
	s.ShiftSD = m.StdDev()
	number := s.YearShifts * float64(s.Lines)
	s.Year, s.YearSD = scaled(s.PerShift, number), s.ShiftSD*math.Sqrt(number)
	s.years = nil
	for _, x := range good {
		s.years = append(s.years, number*x)
	}
	s.Chance = through(s.Year, func(mean float64) float64 { return spec.Demand.Chance(mean, s.YearSD) })
	s.Verdict = verdictOf(s.Chance, spec.Chance)
	s.Spare = through(s.Year, func(mean float64) float64 { return 1 - spec.Demand.Mean()/mean })
	s.Sold = through(s.Year, s.soldOf(spec, 1))
	waste := s.shifts.Waste()
	s.WasteCartons = through(s.Sold, func(sold float64) float64 { return wasted(sold, s.PerShift.Mean, waste) })
}

// soldOf says how many cartons are sold of an output, in a year in which only a share of it is made.
func (s *Sized) soldOf(spec SizeSpec, share float64) func(mean float64) float64 {
	if spec.SellsAll {
		return func(mean float64) float64 { return share * mean }
	}
	return func(mean float64) float64 { return spec.Demand.Sold(share*mean, s.YearSD*math.Sqrt(share)) }
}

// wasted is how many cartons are lost while so many good ones are made.
func wasted(good, goodPerShift, wastePerShift float64) float64 {
	if goodPerShift <= 0 {
		return 0
	}
	return good * wastePerShift / goodPerShift
}

// through takes an interval through a function that rises or falls all along.
func through(iv stats.Interval, f func(float64) float64) stats.Interval {
	out := stats.Interval{Mean: f(iv.Mean), Low: math.Inf(-1), High: math.Inf(1), N: iv.N, Confidence: iv.Confidence}
	if iv.Assessed() {
		a, b := f(iv.Low), f(iv.High)
		out.Low, out.High = min(a, b, out.Mean), max(a, b, out.Mean)
	}
	return out
}

func scaled(iv stats.Interval, factor float64) stats.Interval {
	return through(iv, func(x float64) float64 { return factor * x })
}
