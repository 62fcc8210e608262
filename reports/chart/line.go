package chart

import (
	"fmt"
	"math"
	"slices"
)

// Line is a chart of one or several quantities over another one, with their uncertainty.
type Line struct {
	Caption Caption
	X, Y    Axis
	Series  []Series
	// References are lines across the chart, such as a target or a ceiling.
	References []Reference
	// Notes are words at a place in the chart.
	Notes []Note
	// Band says what the bands around the series are, for instance "95 % interval"; needed when a series has one.
	Band string
	// Width of the drawing and Height of the plotting area in points; 0 takes 720 and 300.
	Width, Height float64
}

// Series is one curve. A value of Y that is not finite is a gap.
type Series struct {
	// Name stands beside the curve or in the legend.
	Name string
	// X and Y are the points in the axes' units, X rising.
	X, Y []float64
	// Low and High are the ends of the band at each point; both nil for none.
	Low, High []float64
}

// Reference is a straight line across a chart with a label.
type Reference struct {
	Label string
	// At is the value in the axis' unit: of x where Vertical, else of y.
	At       float64
	Vertical bool
}

// Note is words at a place in the axes' units.
type Note struct {
	Text string
	X, Y float64
}

// Draw lays the chart out: series with their names at the right, or a legend above where names are too long.
func (l Line) Draw() (*Drawing, error) {
	if err := l.check(); err != nil {
		return nil, err
	}
	d, y := l.Caption.begin(widthOr(l.Width, 720))
	height := widthOr(l.Height, 300)
	margin, direct := l.margin(d.Width, height)
	y = d.legend(l.legendSamples(direct), rim, d.Width-rim, y) + 6

	xs, ys := l.ranges(height)
	lanes := newLanes(l.References, 0.4*d.Width)
	f := newFrame(l.X, l.Y, xs, ys, rim, d.Width-margin, y, height)
	y += lanes.place(f.x, d.Width-rim)
	f = newFrame(l.X, l.Y, xs, ys, rim, d.Width-margin, y, height)

	f.grid(d)
	l.bands(d, f)
	lanes.draw(d, f)
	l.levels(d, f)
	c := crowd{inside: f.area}
	l.keepClear(&c, f)
	bottom := f.axes(d)
	l.curves(d, f, &c)
	l.marginLabels(d, f, direct)
	l.notes(d, f, &c)
	d.Description = l.describe()
	return l.Caption.finish(d, bottom), nil
}

// check refuses data that contradict themselves.
func (l Line) check() error {
	for _, s := range l.Series {
		if len(s.X) != len(s.Y) {
			return fmt.Errorf("series %q has %d x and %d y values", s.Name, len(s.X), len(s.Y))
		}
		if len(s.Low) != len(s.High) || len(s.Low) != 0 && len(s.Low) != len(s.X) {
			return fmt.Errorf("series %q has %d points and a band of %d low and %d high values", s.Name, len(s.X), len(s.Low), len(s.High))
		}
		if len(s.Low) > 0 && l.Band == "" {
			return fmt.Errorf("series %q has a band; say in Band what it is", s.Name)
		}
		if !finite(s.X...) || !slices.IsSorted(s.X) {
			return fmt.Errorf("the x values of series %q must be finite and rise", s.Name)
		}
	}
	for _, r := range l.References {
		if !finite(r.At) {
			return fmt.Errorf("reference %q at %g; it must be finite", r.Label, r.At)
		}
	}
	for _, n := range l.Notes {
		if !finite(n.X, n.Y) {
			return fmt.Errorf("note %q at %g, %g; both must be finite", n.Text, n.X, n.Y)
		}
	}
	if err := l.X.check("x"); err != nil {
		return err
	}
	if err := l.Y.check("y"); err != nil {
		return err
	}
	low, _ := l.extent(func(s Series) [][]float64 { return [][]float64{s.Y} }, false)
	if math.IsInf(low, 0) {
		return fmt.Errorf("chart %q has no values to draw", l.Caption.Title)
	}
	return nil
}

// ranges are the values that the axes span.
func (l Line) ranges(height float64) (xs, ys [2]float64) {
	low, high := l.extent(func(s Series) [][]float64 { return [][]float64{s.X} }, true)
	xs[0], xs[1] = l.X.span(low, high)
	low, high = l.extent(func(s Series) [][]float64 { return [][]float64{s.Y, s.Low, s.High} }, false)
	ys[0], ys[1] = l.Y.rounded(low, high, int(height/34))
	return xs, ys
}

// extent is the least and the greatest finite value of the series and of the references across that axis.
func (l Line) extent(of func(Series) [][]float64, vertical bool) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	take := func(v float64) {
		if finite(v) {
			low, high = min(low, v), max(high, v)
		}
	}
	for _, s := range l.Series {
		for _, values := range of(s) {
			for _, v := range values {
				take(v)
			}
		}
	}
	if math.IsInf(low, 0) {
		return low, high
	}
	for _, r := range l.References {
		if r.Vertical == vertical {
			take(r.At)
		}
	}
	return low, high
}

// describe puts the chart into words.
func (l Line) describe() string {
	if l.Caption.Description != "" {
		return l.Caption.Description
	}
	words := fmt.Sprintf("Line chart of %s over %s.", l.Y.name(0), l.X.name(0))
	for _, s := range l.Series {
		if n := len(s.X); n > 0 {
			words += fmt.Sprintf(" %s: %s at %s, %s at %s.", orElse(s.Name, "series"), brief(s.Y[0]), brief(s.X[0]), brief(s.Y[n-1]), brief(s.X[n-1]))
		}
	}
	for _, r := range l.References {
		words += fmt.Sprintf(" %s: %s.", r.Label, brief(r.At))
	}
	return words
}

func orElse(words, other string) string {
	if words == "" {
		return other
	}
	return words
}
