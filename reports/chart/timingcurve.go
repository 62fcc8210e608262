package chart

import (
	"math"
	"slices"
)

// travel is the range of the displacement.
func (c Curve) travel() (low, high float64) {
	low, high = slices.Min(c.Position), slices.Max(c.Position)
	return low, max(high, low+c.Stroke)
}

// stroke is the whole travel in the curve's unit.
func (c Curve) stroke() float64 {
	if c.Stroke > 0 {
		return c.Stroke
	}
	low, high := c.travel()
	return high - low
}

func (c Curve) strokeWords() string { return withUnit(brief(c.stroke()), c.Unit) }

// peak is the velocity of the greatest size.
func (c Curve) peak() float64 {
	peak := 0.0
	for _, v := range c.Velocity {
		if math.Abs(v) > math.Abs(peak) {
			peak = v
		}
	}
	return peak
}

func (c Curve) peakWords() string {
	if len(c.Velocity) == 0 {
		return ""
	}
	return "peak " + withUnit(brief(math.Abs(c.peak())), c.VelocityUnit)
}

// curve draws the displacement of an axis in its row, with its stroke at the right.
func (s *timingSheet) curve(c Curve, ink ink, b box) {
	low, high := c.travel()
	y := scale{low, high, b.y1 - 5, b.y0 + 8}
	if high == low {
		y.to = low + 1
	}
	s.d.line(look{line: hair, width: 0.7}, point{b.x0, y.lo}, point{b.x1, y.lo})
	s.repeat(c.Degrees, c.Position, y, ink, y.lo)
	s.d.write(label{at: point{b.x1 + 6, inMiddle(y.hi + 2)}, words: c.strokeWords(), size: small, ink: text})
	if low == 0 {
		s.d.write(label{at: point{b.x1 + 6, inMiddle(y.lo - 2)}, words: "0", size: small, ink: muted})
	}
}

// velocity draws the velocity of an axis about a line of zero, with its peak at the right.
func (s *timingSheet) velocity(c Curve, ink ink, b box) {
	low, high := min(slices.Min(c.Velocity), 0), max(slices.Max(c.Velocity), 0)
	if low == high {
		high = 1
	}
	y := scale{low, high, b.y1 - 6, b.y0 + 6}
	s.d.line(look{line: edge, width: 0.7}, point{b.x0, y.at(0)}, point{b.x1, y.at(0)})
	s.repeat(c.Degrees, c.Velocity, y, ink, y.at(0))
	at := inMiddle(y.at(c.peak()))
	zero := inMiddle(y.at(0))
	s.d.write(label{at: point{b.x1 + 6, at}, words: c.peakWords(), size: small, ink: text})
	if math.Abs(zero-at) > leading*small {
		s.d.write(label{at: point{b.x1 + 6, zero}, words: "0", size: small, ink: muted})
	}
}

// repeat draws a curve once a revolution, held through the pause, filled faintly down to a base. Where its end differs from its
// start, a fine dotted line leads to the next revolution.
func (s *timingSheet) repeat(degrees, values []float64, y scale, ink ink, base float64) {
	for k := range s.cycles() {
		shift := float64(k) * s.period()
		var run []point
		for i, v := range degrees {
			run = append(run, point{s.x.at(shift + v), y.at(values[i])})
		}
		last := run[len(run)-1]
		if s.Pause > 0 {
			last.x = s.x.at(shift + s.period())
			run = append(run, last)
		}
		s.d.area(look{fill: ink, faint: true}, append(slices.Clone(run), point{last.x, base}, point{run[0].x, base})...)
		s.d.line(look{line: ink, width: 1.8}, run...)
		if first := y.at(values[0]); math.Abs(first-last.y) > 0.5 && k < s.cycles()-1 {
			s.d.line(look{line: ink, width: 1, dash: []float64{1.5, 2}}, last, point{last.x, first})
		}
	}
}
