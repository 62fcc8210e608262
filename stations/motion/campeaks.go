package motion

import "math"

// Peak is a largest magnitude and the angle where it first falls.
type Peak struct {
	Value float64 // m or rad, per second to the power in question; 0 or more
	At    Degrees // 0 to less than 360
}

// Peaks are what an axis demands over one revolution.
type Peaks struct {
	Velocity, Acceleration, Jerk Peak
	VelocityRMS, AccelerationRMS float64 // over the whole revolution, stands included
	VelocitySteps                bool    // some law jolts: the acceleration there is without bound
	AccelerationSteps            bool    // some law's acceleration steps: the jerk there is without bound, and not in Jerk
}

// Peaks are exact: they come from the coefficients of the laws. A revolution lasts revolution (more than 0).
func (c *Cam) Peaks(revolution Seconds) Peaks {
	var p Peaks
	var sumV, sumA float64
	for _, m := range c.moves {
		if m.travel == 0 {
			continue
		}
		k := m.law.Coefficients()
		h, rate := math.Abs(m.travel), m.perSpan*fullTurn/float64(revolution)
		p.Velocity.raise(h*rate*k.Cv, c.angle(m, k.AtV))
		p.Acceleration.raise(h*rate*rate*k.Ca, c.angle(m, k.AtA))
		p.Jerk.raise(h*rate*rate*rate*k.Cj, c.angle(m, k.AtJ))
		share := (m.to - m.from) / fullTurn
		sumV += share * square(h*rate*k.CvRMS)
		sumA += share * square(h*rate*rate*k.CaRMS)
		p.VelocitySteps = p.VelocitySteps || k.VelocitySteps
		p.AccelerationSteps = p.AccelerationSteps || k.AccelerationStep
	}
	p.VelocityRMS, p.AccelerationRMS = math.Sqrt(sumV), math.Sqrt(sumA)
	return p
}

// raise takes over a larger value; of equal ones, to rounding, the first stays.
func (p *Peak) raise(value float64, at Degrees) {
	if value > p.Value*(1+1e-12) {
		p.Value, p.At = value, at
	}
}

// angle of the master at the share z of a move.
func (c *Cam) angle(m camMove, z float64) Degrees {
	return Degrees(c.start + m.from + z*(m.to-m.from)).Within()
}

func square(x float64) float64 { return x * x }
