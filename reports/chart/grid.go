package chart

import (
	"fmt"
	"math"
	"slices"
)

// Grid is a chart of a quantity over two others: cells around the points of a grid, with contour lines through them.
type Grid struct {
	Caption Caption
	X, Y    Axis
	// Z names the quantity shown; its range is not used.
	Z Axis
	// XS and YS are the points along each axis, rising, two at least.
	XS, YS []float64
	// Values holds Z at YS[j] and XS[i] as Values[j][i]; NaN where there is none.
	Values [][]float64
	// Levels are the contours, rising, at most eight; nil takes round ones.
	Levels []float64
	// Notes mark places in the grid, such as the best one.
	Notes []Note
	// Width of the drawing and Height of the plotting area in points; 0 takes 720 and 360.
	Width, Height float64
}

// Draw lays the chart out: the further a cell stands out from the ground, the higher its value.
func (g Grid) Draw() (*Drawing, error) {
	low, high, err := g.check()
	if err != nil {
		return nil, err
	}
	if g.Levels == nil {
		g.Levels = roundLevels(low, high)
	}
	d, y := g.Caption.begin(widthOr(g.Width, 720))
	height := widthOr(g.Height, 360)
	key := g.keyTicks(low, high)
	right := d.Width - rim - g.keyWidth(key)
	f := newFrame(g.X, g.Y, cellSpan(g.XS), cellSpan(g.YS), rim, right, y+4, height)
	g.cells(d, f)
	c := crowd{inside: f.area}
	g.contours(d, f, &c)
	bottom := f.axes(d)
	g.key(d, key, box{right + 22, f.area.y0, right + 40, f.area.y1})
	Line{Notes: g.Notes}.notes(d, f, &c)
	d.Description = g.describe(low, high)
	return g.Caption.finish(d, bottom), nil
}

// check refuses data that contradict themselves and tells the range of the values.
func (g Grid) check() (low, high float64, err error) {
	if len(g.Values) != len(g.YS) || len(g.XS) < 2 || len(g.YS) < 2 {
		return 0, 0, fmt.Errorf("grid of %d by %d points has %d rows of values; it needs two points each way and a row for each y",
			len(g.XS), len(g.YS), len(g.Values))
	}
	if !rise(g.XS) || !rise(g.YS) || !rise(g.Levels) || len(g.Levels) >= heats {
		return 0, 0, fmt.Errorf("the points of a grid and its levels, at most %d, must rise", heats-1)
	}
	low, high = math.Inf(1), math.Inf(-1)
	for j, row := range g.Values {
		if len(row) != len(g.XS) {
			return 0, 0, fmt.Errorf("row %d of the grid has %d values for %d points", j, len(row), len(g.XS))
		}
		for _, v := range row {
			if !math.IsNaN(v) {
				low, high = min(low, v), max(high, v)
			}
		}
	}
	for _, n := range g.Notes {
		if !finite(n.X, n.Y) {
			return 0, 0, fmt.Errorf("note %q at %g, %g; both must be finite", n.Text, n.X, n.Y)
		}
	}
	if !finite(low, high) {
		return 0, 0, fmt.Errorf("grid %q has no finite values to draw", g.Caption.Title)
	}
	return low, high, nil
}

// rise says whether each value is well above the one before.
func rise(values []float64) bool {
	for i := 1; i < len(values); i++ {
		if !apart(values[i-1], values[i]) {
			return false
		}
	}
	return true
}

// roundLevels are the round numbers strictly inside a range, eight at most.
func roundLevels(low, high float64) []float64 {
	if !apart(low, high) {
		return nil
	}
	s := step(high-low, heats-2)
	return slices.DeleteFunc(ticks(low, high, s), func(v float64) bool { return v <= low || v >= high })
}

// cellEdges are the borders of the cells around points: midway between neighbours.
func cellEdges(at []float64) []float64 {
	n := len(at)
	out := []float64{at[0] - (at[1]-at[0])/2}
	for i := 1; i < n; i++ {
		out = append(out, (at[i-1]+at[i])/2)
	}
	return append(out, at[n-1]+(at[n-1]-at[n-2])/2)
}

func cellSpan(at []float64) [2]float64 {
	e := cellEdges(at)
	return [2]float64{e[0], e[len(e)-1]}
}

// heat is the ink of a value: the band between two levels, spread over all inks.
func (g Grid) heat(v float64) ink {
	band, _ := slices.BinarySearch(g.Levels, v)
	if band < len(g.Levels) && g.Levels[band] == v {
		band++
	}
	if len(g.Levels) == 0 {
		return heat4
	}
	return heat0 + ink(math.Round(float64(band)*float64(heats-1)/float64(len(g.Levels))))
}

// cells fills one path an ink, so that no seams show between cells. Cells without a value are hatched.
func (g Grid) cells(d *Drawing, f frame) {
	xs, ys := cellEdges(g.XS), cellEdges(g.YS)
	runs := make([][][]point, heats)
	for j, row := range g.Values {
		for i, v := range row {
			p, q := f.at(xs[i], ys[j+1]), f.at(xs[i+1], ys[j])
			b := box{p.x, p.y, q.x, q.y}
			if math.IsNaN(v) {
				d.rect(look{fill: shade}, b)
				d.hatchArea(filling{shade, crossed, none}, b.corners())
				continue
			}
			runs[g.heat(v)-heat0] = append(runs[g.heat(v)-heat0], b.grown(0.15).corners())
		}
	}
	for n, cells := range runs {
		if len(cells) > 0 {
			d.add(path{runs: cells, closed: true, look: look{fill: heat0 + ink(n)}})
		}
	}
}

// describe puts the chart into words.
func (g Grid) describe(low, high float64) string {
	if g.Caption.Description != "" {
		return g.Caption.Description
	}
	words := fmt.Sprintf("Contour chart of %s over %s and %s; values from %s to %s.", g.Z.name(0), g.X.name(0), g.Y.name(0), brief(low), brief(high))
	for _, n := range g.Notes {
		words += fmt.Sprintf(" %s at %s, %s.", n.Text, brief(n.X), brief(n.Y))
	}
	return words
}
