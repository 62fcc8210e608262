package chart

// runs cuts a series at its gaps.
func (s Series) runs(f frame) [][]point {
	var out [][]point
	var run []point
	for i, x := range s.X {
		if !finite(s.Y[i]) {
			if len(run) > 0 {
				out = append(out, run)
			}
			run = nil
			continue
		}
		run = append(run, f.at(x, s.Y[i]))
	}
	if len(run) > 0 {
		out = append(out, run)
	}
	return out
}

// bands draws the uncertainty of each series, with thin edges so that it shows without colour.
func (l Line) bands(d *Drawing, f frame) {
	for n, s := range l.Series {
		var lower, upper []point
		closeBand := func() {
			if len(upper) > 1 {
				s.band(d, f, lower, upper, strokes(n))
			}
			lower, upper = nil, nil
		}
		for i := range s.Low {
			if !finite(s.Low[i], s.High[i]) {
				closeBand()
				continue
			}
			lower, upper = append(lower, f.at(s.X[i], s.Low[i])), append(upper, f.at(s.X[i], s.High[i]))
		}
		closeBand()
	}
}

// band draws one piece of a band between its edges.
func (s Series) band(d *Drawing, f frame, lower, upper []point, pen stroke) {
	outline := append([]point{}, upper...)
	for i := len(lower) - 1; i >= 0; i-- {
		outline = append(outline, lower[i])
	}
	if inside := clipArea(outline, f.area); len(inside) > 2 {
		d.area(look{fill: pen.ink, faint: true}, inside...)
	}
	for _, rim := range [][]point{lower, upper} {
		for _, run := range clipLine(rim, f.area) {
			d.line(look{line: pen.ink, width: 0.6}, run...)
		}
	}
}

// curves draws the series and their markers, and keeps later labels clear of them.
func (l Line) curves(d *Drawing, f frame, c *crowd) {
	for n, s := range l.Series {
		pen := strokes(n)
		every := max(1, len(s.X)/12)
		if len(s.X) <= 25 {
			every = 1
		}
		for _, run := range s.runs(f) {
			for _, piece := range clipLine(run, f.area) {
				d.line(pen.look(), piece...)
				c.keepClear(piece)
			}
			for i, p := range run {
				alone := len(run) == 1
				if (i%every == 0 || alone) && (box{p.x, p.y, p.x, p.y}).within(f.area.grown(0.01)) {
					d.mark(pen.marker, pen.ink, p, 2.6)
				}
			}
		}
	}
}

// notes sets each note where it covers least, with a thin line to its point.
func (l Line) notes(d *Drawing, f frame, c *crowd) {
	for _, n := range l.Notes {
		p := f.at(n.X, n.Y)
		lines := wrap(n.Text, small, false, f.area.width()*0.4)
		b := c.near(p, widest(lines, small, false)+4, leading*small*float64(len(lines))+2)
		d.line(look{line: muted, width: 0.8}, p, nearest(b, p))
		d.mark(4, text, p, 3)
		d.rect(look{fill: paper, line: muted, width: 0.5}, b)
		d.paragraph(lines, label{at: point{b.middle().x, b.y0 + 2.5 + capHeight*small}, size: small, anchor: middle, ink: text})
	}
}

// nearest is the point of a box that is nearest to a point.
func nearest(b box, p point) point {
	return point{min(max(p.x, b.x0), b.x1), min(max(p.y, b.y0), b.y1)}
}

// legendSamples lists what needs a legend: the series where their names don't stand beside them, and the band.
func (l Line) legendSamples(direct bool) []sample {
	var out []sample
	band := false
	for n, s := range l.Series {
		if s.Name != "" && !direct {
			out = append(out, sample{s.Name, strokes(n).sample})
		}
		band = band || len(s.Low) > 0
	}
	if band {
		out = append(out, sample{l.Band, func(d *Drawing, b box) {
			ink := strokes(0).ink
			d.rect(look{fill: ink, faint: true}, b)
			d.line(look{line: ink, width: 0.6}, point{b.x0, b.y0}, point{b.x1, b.y0})
			d.line(look{line: ink, width: 0.6}, point{b.x0, b.y1}, point{b.x1, b.y1})
		}})
	}
	return out
}

// keepClear lets notes keep away from the edges of bands and from references.
func (l Line) keepClear(c *crowd, f frame) {
	for _, s := range l.Series {
		for _, edge := range [][]float64{s.Low, s.High} {
			if len(edge) > 0 {
				for _, run := range (Series{X: s.X, Y: edge}).runs(f) {
					c.keepClear(run)
				}
			}
		}
	}
	for _, r := range l.References {
		if r.Vertical {
			c.keepClear([]point{{f.x.at(r.At), f.area.y0}, {f.x.at(r.At), f.area.y1}})
		} else {
			c.keepClear([]point{{f.area.x0, f.y.at(r.At)}, {f.area.x1, f.y.at(r.At)}})
		}
	}
}
