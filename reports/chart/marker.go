package chart

import "math"

// stroke is how a series is told from the others: hue, dash and marker all differ.
type stroke struct {
	ink    ink
	dash   []float64
	marker int
}

// strokes gives the stroke of the n-th series. Hue, dash and marker repeat with different periods.
func strokes(n int) stroke {
	inks := []ink{blue, vermillion, green, purple, text, orange, sky}
	dashes := [][]float64{nil, {7, 3}, {2, 2}, {9, 3, 2, 3}, {4, 2}, {12, 3}, {9, 2, 2, 2, 2, 2}}
	return stroke{inks[n%len(inks)], dashes[n%len(dashes)], n % markers}
}

// look is the pen of the series.
func (s stroke) look() look { return look{line: s.ink, width: 1.8, dash: s.dash} }

// sample draws the series in a legend.
func (s stroke) sample(d *Drawing, b box) {
	y := b.middle().y
	d.line(s.look(), point{b.x0, y}, point{b.x1, y})
	d.mark(s.marker, s.ink, b.middle(), 3)
}

// markers is the number of marker forms.
const markers = 8

// mark draws a marker: disc, square, triangle, diamond, filled and then open.
func (d *Drawing) mark(form int, ink ink, at point, radius float64) {
	l := look{fill: ink, line: ink, width: 1.2}
	if form%markers >= markers/2 {
		l.fill = paper
	}
	polygon := func(sides int, turn, radius float64) {
		var run []point
		for i := range sides {
			sin, cos := math.Sincos((turn + 360*float64(i)/float64(sides)) * math.Pi / 180)
			run = append(run, point{at.x + radius*sin, at.y - radius*cos})
		}
		d.area(l, run...)
	}
	switch form % (markers / 2) {
	case 0:
		d.add(disc{centre: at, radius: radius, look: l})
	case 1:
		polygon(4, 45, 1.25*radius)
	case 2:
		polygon(3, 0, 1.4*radius)
	case 3:
		polygon(4, 0, 1.4*radius)
	}
}
