package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// Sides is the percent of good output for one percent of speed, either way. The two agree where the curve is smooth. Where limits
// meet they part, and neither stands for the other: what is the last to be ready costs output when slower, and brings none when
// faster, because another limit takes over.
type Sides struct {
	// Faster is what one percent more speed brings, and Slower what one percent less costs.
	Faster, Slower stats.Interval
	// Middle is the mean of both, the central difference: the elasticity, where there is no kink.
	Middle stats.Interval
	// Kink says that the sides part by more than chance and whole cartons explain, and by enough to matter.
	Kink bool

	faster, slower []float64 // what each shift adds to the errors
}

// leastKink is the distance of the sides, in percent of output for one percent of speed, below which nobody would speak of a kink.
const leastKink = 0.1

// sidesOf compares the shifts of the line with those of it made 1+step times faster, and slower. Errors by the delta method.
func (e *explaining) sidesOf(faster, slower []float64) Sides {
	var s Sides
	brings, f := logRatio(faster, e.base, e.spec.Step)
	costs, l := logRatio(e.base, slower, e.spec.Step)
	s.faster, s.slower = f, l
	s.Faster, s.Slower = aroundResiduals(brings, f, e.spec.Confidence), aroundResiduals(costs, l, e.spec.Confidence)
	s.Middle = aroundResiduals((brings+costs)/2, halves(f, l), e.spec.Confidence)
	s.Kink = e.apart(s.Faster.Mean-s.Slower.Mean, differences(f, l), 2)
	return s
}

// apart says that a difference of elasticities is more than chance explains, more than so many cartons a shift, which may be lost
// by counting whole ones, and enough to matter.
func (e *explaining) apart(difference float64, residuals []float64, cartons float64) bool {
	iv := aroundResiduals(difference, residuals, e.spec.Confidence)
	counting := cartons / (average(e.base) * math.Log1p(e.spec.Step))
	return iv.Assessed() && !iv.Contains(0) && math.Abs(difference) > max(leastKink, counting)
}

// plus is the sum of two things' sides. It is no kink of its own.
func (e *explaining) plus(a, b Sides) Sides {
	s := Sides{faster: sums(a.faster, b.faster), slower: sums(a.slower, b.slower)}
	s.Faster = aroundResiduals(a.Faster.Mean+b.Faster.Mean, s.faster, e.spec.Confidence)
	s.Slower = aroundResiduals(a.Slower.Mean+b.Slower.Mean, s.slower, e.spec.Confidence)
	s.Middle = aroundResiduals(a.Middle.Mean+b.Middle.Mean, halves(s.faster, s.slower), e.spec.Confidence)
	return s
}

// logRatio is the change of the logarithm of output over that of speed, from the shifts of one line to those of one that is 1+step
// times faster, and what each shift adds to its error.
func logRatio(faster, slower []float64, step float64) (estimate float64, residuals []float64) {
	f, s := average(faster), average(slower)
	if f <= 0 || s <= 0 {
		return math.NaN(), nil
	}
	span := math.Log1p(step)
	residuals = make([]float64, len(faster))
	for i := range faster {
		residuals[i] = (faster[i]/f - slower[i]/s) / span
	}
	return math.Log(f/s) / span, residuals
}

func differences(a, b []float64) []float64 {
	return each(a, b, func(x, y float64) float64 { return x - y })
}

func sums(a, b []float64) []float64 {
	return each(a, b, func(x, y float64) float64 { return x + y })
}

func halves(a, b []float64) []float64 {
	return each(a, b, func(x, y float64) float64 { return (x + y) / 2 })
}

// each combines two series shift by shift; nil where either is missing.
func each(a, b []float64, of func(x, y float64) float64) []float64 {
	if a == nil || b == nil {
		return nil
	}
	c := make([]float64, len(a))
	for i := range a {
		c[i] = of(a[i], b[i])
	}
	return c
}
