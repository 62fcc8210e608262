package chart

import (
	"math"
	"slices"
)

// hatch is a pattern of lines that tells areas apart without colour.
type hatch int

const (
	plain hatch = iota
	rising
	falling
	level
	upright
	crossed
	dotted
	dense
)

// sets gives the directions in degrees, the distance of the lines and their dash, all in points.
func (h hatch) sets() (angles []float64, apart float64, dash []float64) {
	switch h {
	case rising:
		return []float64{45}, 5, nil
	case falling:
		return []float64{-45}, 5, nil
	case level:
		return []float64{0}, 4, nil
	case upright:
		return []float64{90}, 4.5, nil
	case crossed:
		return []float64{45, -45}, 6, nil
	case dotted:
		return []float64{45}, 4, []float64{1.2, 3}
	case dense:
		return []float64{45}, 2.6, nil
	}
	return nil, 0, nil
}

// filling is how an area is told from its neighbours.
type filling struct {
	ink   ink
	hatch hatch
	// words is the ink of labels set straight on the area; none asks for a patch of ground below them.
	words ink
}

// fillings lists the areas of a stack in order. Neighbours differ in hatch, in hue and in lightness.
func fillings() []filling {
	return []filling{
		{blue, plain, paper}, {sky, rising, none}, {green, level, none}, {yellow, dotted, none}, {orange, falling, none},
		{vermillion, crossed, none}, {purple, upright, none}, {grey, dense, none}, {paper, plain, text}, {paper, rising, none},
		{paper, level, none}, {paper, crossed, none},
	}
}

// fillBox paints a box with a filling and an outline.
func (d *Drawing) fillBox(f filling, b box, tip string) {
	d.add(path{runs: [][]point{b.corners()}, closed: true, look: look{fill: f.ink}, tip: tip})
	d.hatchArea(f, b.corners())
	d.add(path{runs: [][]point{b.corners()}, closed: true, look: look{line: edge, width: 0.6}, tip: tip})
}

// hatchArea draws the lines of a filling inside a polygon.
func (d *Drawing) hatchArea(f filling, poly []point) {
	ink := stripe
	switch f.ink {
	case paper, none:
		ink = text
	case shade:
		ink = edge
	}
	angles, apart, dash := f.hatch.sets()
	var runs [][]point
	for _, a := range angles {
		runs = append(runs, hatchLines(poly, a, apart)...)
	}
	if len(runs) > 0 {
		width := 0.7
		if dash != nil {
			width = 1.2
		}
		d.add(path{runs: runs, look: look{line: ink, width: width, dash: dash}})
	}
}

// hatchLines gives parallel lines at an angle in degrees, cut to a polygon. They lie on one raster for the whole drawing.
func hatchLines(poly []point, angle, apart float64) [][]point {
	sin, cos := math.Sincos(-angle * math.Pi / 180)
	along := func(p point) float64 { return p.x*cos + p.y*sin }
	across := func(p point) float64 { return p.y*cos - p.x*sin }
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range poly {
		low, high = min(low, across(p)), max(high, across(p))
	}
	var out [][]point
	for k := math.Ceil(low/apart - 0.5); (k+0.5)*apart < high; k++ {
		c := (k + 0.5) * apart
		cuts := crossings(poly, along, across, c)
		for i := 0; i+1 < len(cuts); i += 2 {
			out = append(out, []point{
				{cuts[i]*cos - c*sin, cuts[i]*sin + c*cos},
				{cuts[i+1]*cos - c*sin, cuts[i+1]*sin + c*cos},
			})
		}
	}
	return out
}

// crossings tells where the edges of a polygon meet the line at a distance c, sorted along that line.
func crossings(poly []point, along, across func(point) float64, c float64) []float64 {
	var cuts []float64
	for i, q := range poly {
		p := poly[(i+len(poly)-1)%len(poly)]
		a, b := across(p)-c, across(q)-c
		if (a < 0) != (b < 0) {
			cuts = append(cuts, along(p)+(along(q)-along(p))*a/(a-b))
		}
	}
	slices.Sort(cuts)
	return cuts
}
