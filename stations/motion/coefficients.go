package motion

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// Coefficients are the figures by which motion laws are compared (VDI 2143 Bl. 1, 1980; Norton 2009): a move of
// travel h in time t has peak velocity Cv h/t, peak acceleration Ca h/t2 and peak jerk Cj h/t3. None has a unit.
type Coefficients struct {
	Cv, Ca, Cj       float64 // peaks of |ds/dz|, |d2s/dz2|, |d3s/dz3|; Cj without the steps of the acceleration
	AtV, AtA, AtJ    float64 // the first z at which each falls, 0..1
	CvRMS, CaRMS     float64 // root mean square over the move
	Power            float64 // peak of |s' s''|, to which the inertial power is proportional
	VelocitySteps    bool    // the velocity steps: the acceleration is without bound there
	AccelerationStep bool    // the acceleration steps (a dwell before and after assumed): the jerk is without bound there
}

// Coefficients of the law.
func (l Law) Coefficients() Coefficients { return l.coef }

func coefficients(l Law) Coefficients {
	var c Coefficients
	c.Cv, c.AtV = l.peak(1)
	c.Ca, c.AtA = l.peak(2)
	c.Cj, c.AtJ = l.peak(3)
	c.CvRMS = math.Sqrt(l.integral(func(p *piece, u float64) float64 { return p.velocity(u) * p.velocity(u) }))
	c.CaRMS = math.Sqrt(l.integral(func(p *piece, u float64) float64 { return p.acceleration(u) * p.acceleration(u) }))
	c.Power = l.peakPower()
	c.VelocitySteps = l.steps(1)
	c.AccelerationStep = c.VelocitySteps || l.steps(2)
	return c
}

// peak is the largest |k-th derivative| and the first place of it: an end of a piece, or a zero of the next
// derivative.
func (l Law) peak(k int) (value, at float64) {
	for i := range l.pieces {
		p := &l.pieces[i]
		places := append([]float64{0}, p.zeros(k+1)...)
		for _, u := range append(places, p.width()) {
			if y := math.Abs(p.derivative(k, u)); y > value*(1+1e-12) {
				value, at = y, p.from+u
			}
		}
	}
	return value, at
}

// integral is f over all pieces, by Gauss-Legendre of an order that is exact to rounding for these functions.
func (l Law) integral(f func(p *piece, u float64) float64) float64 {
	sum := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		sum += quad.Fixed(func(u float64) float64 { return f(p, u) }, 0, p.width(), 40, quad.Legendre{}, 0)
	}
	return sum
}

// peakPower is the largest |v a|. Where it lies inside a piece its slope a2 + v j is zero; those zeros are bracketed
// on a grid much finer than the law's waves.
func (l Law) peakPower() float64 {
	const steps = 64
	best := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		power := func(u float64) float64 { return math.Abs(p.velocity(u) * p.acceleration(u)) }
		slope := func(u float64) float64 {
			m := p.motion(u)
			return m.Acceleration*m.Acceleration + m.Velocity*m.Jerk
		}
		for k := range steps {
			lo, hi := p.width()*float64(k)/steps, p.width()*float64(k+1)/steps
			best = max(best, power(lo), power(hi))
			if slope(lo)*slope(hi) < 0 {
				best = max(best, power(root(slope, lo, hi, 0)))
			}
		}
	}
	return best
}

// steps reports whether the k-th derivative jumps at the start, between pieces or at the end.
func (l Law) steps(k int) bool {
	before := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		if math.Abs(p.derivative(k, 0)-before) > 1e-9 {
			return true
		}
		before = p.derivative(k, p.width())
	}
	return math.Abs(before) > 1e-9
}
