package chart

import (
	"math"
	"slices"
)

// contours draws the line of each level, dashed in turns, with its value where the line is level and free.
func (g Grid) contours(d *Drawing, f frame, c *crowd) {
	t := g.keyTicks(0, 0)
	if len(g.Levels) > 0 {
		t = g.keyTicks(g.Levels[0], g.Levels[len(g.Levels)-1])
	}
	var labels []label
	for n, v := range g.Levels {
		pen := look{line: text, width: 1}
		if n%2 == 1 {
			pen.dash = []float64{5, 2.5}
		}
		for _, run := range g.contour(v) {
			for i, p := range run {
				run[i] = f.at(p.x, p.y)
			}
			d.line(pen, run...)
			if l, ok := c.onCurve(run, t.words[n]); ok {
				labels = append(labels, l)
			}
		}
	}
	for _, l := range labels {
		d.plate(l)
	}
}

// onCurve finds a place for a label on a curve, where it leaves room to others; short curves get none.
func (c *crowd) onCurve(run []point, words string) (label, bool) {
	length := 0.0
	for i := 1; i < len(run); i++ {
		length += distance(run[i-1], run[i])
	}
	if length < 2.5*textWidth(words, small, false) {
		return label{}, false
	}
	best, least := label{}, math.Inf(1)
	for i, p := range run {
		l := label{at: point{p.x, p.y + capHeight*small/2}, words: words, size: small, anchor: middle, ink: text}
		away := math.Abs(float64(i)/float64(len(run)) - 0.5)
		if cost := c.cost(l.box().grown(4)) + away; cost < least {
			best, least = l, cost
		}
	}
	if least >= 1e4 {
		return best, false
	}
	c.boxes = append(c.boxes, best.box().grown(2))
	return best, true
}

// contour finds the lines on which the grid has a value, in the axes' units: marching squares, each edge crossed by linear
// interpolation, with the mean of the corners to tell a saddle.
func (g Grid) contour(level float64) [][]point {
	pieces := map[point][]point{}
	var order []point
	join := func(p, q point) {
		for _, e := range [][2]point{{p, q}, {q, p}} {
			if len(pieces[e[0]]) == 0 {
				order = append(order, e[0])
			}
			pieces[e[0]] = append(pieces[e[0]], e[1])
		}
	}
	for j := range len(g.YS) - 1 {
		for i := range len(g.XS) - 1 {
			for _, s := range g.square(i, j, level) {
				if s[0] != s[1] {
					join(s[0], s[1])
				}
			}
		}
	}
	return chains(pieces, order)
}

// square gives the pieces of a contour in the square above point i, j.
func (g Grid) square(i, j int, level float64) [][2]point {
	corners := [4]point{{g.XS[i], g.YS[j]}, {g.XS[i+1], g.YS[j]}, {g.XS[i+1], g.YS[j+1]}, {g.XS[i], g.YS[j+1]}}
	z := [4]float64{g.Values[j][i], g.Values[j][i+1], g.Values[j+1][i+1], g.Values[j+1][i]}
	var cuts []point
	for k := range 4 {
		// Each edge is cut from its lower left end, so that neighbours find the very same point.
		a, b := k, (k+1)%4
		if k >= 2 {
			a, b = b, a
		}
		if (z[a] < level) != (z[b] < level) {
			t := (level - z[a]) / (z[b] - z[a])
			cuts = append(cuts, point{corners[a].x + t*(corners[b].x-corners[a].x), corners[a].y + t*(corners[b].y-corners[a].y)})
		}
	}
	mean := (z[0] + z[1] + z[2] + z[3]) / 4
	switch {
	case math.IsNaN(mean) || len(cuts) < 2:
		return nil
	case len(cuts) == 2:
		return [][2]point{{cuts[0], cuts[1]}}
	case (mean < level) == (z[0] < level):
		return [][2]point{{cuts[0], cuts[1]}, {cuts[2], cuts[3]}}
	}
	return [][2]point{{cuts[3], cuts[0]}, {cuts[1], cuts[2]}}
}

// chains joins pieces end to end: first from loose ends, then around closed lines.
func chains(pieces map[point][]point, order []point) [][]point {
	var out [][]point
	follow := func(p point) {
		run := []point{p}
		for len(pieces[p]) > 0 {
			q := pieces[p][0]
			pieces[p] = pieces[p][1:]
			back := slices.Index(pieces[q], p)
			pieces[q] = slices.Delete(slices.Clone(pieces[q]), back, back+1)
			run, p = append(run, q), q
		}
		if len(run) > 1 {
			out = append(out, run)
		}
	}
	for _, p := range order {
		if len(pieces[p]) == 1 {
			follow(p)
		}
	}
	for _, p := range order {
		follow(p)
	}
	return out
}
