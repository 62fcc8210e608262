package chart

import (
	"fmt"
	"math"
	"slices"
)

// Waterfall is a chart of a sheet that leads from an ideal figure through losses to what is left.
type Waterfall struct {
	Caption Caption
	// Unit of all figures, for instance "cartons per shift".
	Unit string
	// From and To name the first and the last figure, for instance "ideal" and "good".
	From, To string
	// Ideal and Good are these figures; Ideal less the losses must be Good.
	Ideal, Good float64
	// Losses in the order of the sheet; a negative one is a gain.
	Losses []Loss
	// Whole starts the axis at zero even where that makes the losses small.
	Whole bool
	// Width of the drawing in points; 0 takes 720.
	Width float64
}

// Loss is one row between the first and the last figure.
type Loss struct {
	// Name says where and why.
	Name string
	// Value is the loss in the chart's unit.
	Value float64
}

// Draw lays the chart out, one row a figure from top to bottom.
func (w Waterfall) Draw() (*Drawing, error) {
	if err := w.check(); err != nil {
		return nil, err
	}
	d, y := w.Caption.begin(widthOr(w.Width, 720))
	texts := []string{w.From}
	for _, l := range w.Losses {
		texts = append(texts, l.Name)
	}
	names := newNameColumn(append(texts, w.To), d.Width)
	left := rim + names.width + 8
	room := w.labelRoom()
	x := scale{w.axisStart(), w.top(), left, d.Width - rim - 6}
	// The room for the figures right of the bars is part of the axis' length.
	x = scale{x.from, x.to, x.lo, x.hi - room}
	ground, top := len(d.shapes), y
	level := w.Ideal
	for i := range names.lines {
		h := names.height(i, 22)
		total := i == 0 || i == len(names.lines)-1
		names.draw(d, i, left-8, y+h/2, total)
		if total {
			level = w.total(d, x, level, texts, i, y+h/2)
		} else {
			level = w.loss(d, x, level, w.Losses[i-1], y+h/2)
		}
		if i < len(names.lines)-1 {
			d.line(look{line: edge, width: 0.7}, point{x.at(level), y + h/2 + 7}, point{x.at(level), y + h + 4})
		}
		y += h
	}
	y = w.axis(d, x, ground, top, y)
	d.Description = w.describe()
	return w.Caption.finish(d, y), nil
}

func (w Waterfall) check() error {
	sum := w.Ideal
	for _, l := range w.Losses {
		sum -= l.Value
	}
	if !finite(sum, w.Good, w.Ideal) {
		return fmt.Errorf("loss sheet %q has figures that are not finite", w.Caption.Title)
	}
	if math.Abs(sum-w.Good) > 1e-6*max(math.Abs(w.Ideal), 1) {
		return fmt.Errorf("loss sheet %q does not add up: %g less its losses is %g, not %g", w.Caption.Title, w.Ideal, sum, w.Good)
	}
	return nil
}

// levels are all figures that a bar reaches.
func (w Waterfall) levels() []float64 {
	out := []float64{w.Ideal}
	for _, l := range w.Losses {
		out = append(out, out[len(out)-1]-l.Value)
	}
	return append(out, w.Good)
}

// top is the end of the axis.
func (w Waterfall) top() float64 {
	top := max(slices.Max(w.levels()), 0)
	if low := slices.Min(w.levels()); !apart(min(low, 0), top) {
		return min(low, 0) + 1
	}
	return top
}

// axisStart is zero, or a round figure below the last bar where the losses would else be too small to see.
func (w Waterfall) axisStart() float64 {
	low, high := slices.Min(w.levels()), slices.Max(w.levels())
	if w.Whole || low < 0.6*high || high-low <= 1e-6*high {
		return min(low, 0)
	}
	s := step(high-low, 4)
	return max(0, math.Floor((low-(high-low)*0.15)/s)*s)
}

// labelRoom is the room for the widest figure beside a bar.
func (w Waterfall) labelRoom() float64 {
	room := textWidth(brief(w.Ideal), small, true)
	for _, l := range w.Losses {
		room = max(room, textWidth(w.lossWords(l), small, false))
	}
	return room + 8
}

// lossWords gives a loss with its share of the ideal.
func (w Waterfall) lossWords(l Loss) string {
	words := brief(-l.Value)
	if l.Value < 0 {
		words = "+" + words
	}
	if math.Abs(l.Value) <= w.Ideal {
		words += " (" + percent(math.Abs(l.Value)/w.Ideal) + ")"
	}
	return words
}

// total draws the first or the last bar, with a break where the axis does not start at zero.
func (w Waterfall) total(d *Drawing, x scale, level float64, texts []string, i int, mid float64) float64 {
	name, f := w.From, filling{grey, plain, text}
	if i > 0 {
		name, f, level = w.To, filling{blue, plain, paper}, w.Good
	}
	start := x.from
	if start < 0 {
		start = 0
	}
	b := box{min(x.at(start), x.at(level)), mid - 8, max(x.at(start), x.at(level)), mid + 8}
	d.fillBox(f, b, name+": "+withUnit(brief(level), w.Unit))
	if x.from > 0 {
		d.breakMark(x.lo+10, mid, 11)
	}
	d.plate(label{at: point{b.x1 + 5, inMiddle(mid)}, words: brief(level), size: small, bold: true, ink: text})
	return level
}

// breakMark draws two slanted strokes with ground between them across a bar.
func (d *Drawing) breakMark(x, mid, half float64) {
	d.area(look{fill: paper}, point{x - 1, mid + half}, point{x + 3, mid - half}, point{x + 7, mid - half}, point{x + 3, mid + half})
	for _, at := range []float64{x, x + 4} {
		d.line(look{line: edge, width: 1}, point{at - 1, mid + half}, point{at + 3, mid - half})
	}
}

// loss draws one step down, or up for a gain, and gives the new level.
func (w Waterfall) loss(d *Drawing, x scale, level float64, l Loss, mid float64) float64 {
	next := level - l.Value
	f := filling{orange, falling, none}
	if l.Value < 0 {
		f = filling{green, upright, none}
	}
	b := box{min(x.at(level), x.at(next)), mid - 7, max(x.at(level), x.at(next)), mid + 7}
	if b.width() < 1 {
		b.x0 = b.x1 - 1
	}
	d.fillBox(f, b, l.Name+": "+w.lossWords(l))
	d.plate(label{at: point{b.x1 + 5, inMiddle(mid)}, words: w.lossWords(l), size: small, ink: text})
	return next
}

// axis draws the fine lines behind the bars and the axis below them.
func (w Waterfall) axis(d *Drawing, x scale, ground int, top, bottom float64) float64 {
	t := fitTicks(x.from, x.to, x.hi-x.lo)
	var lines []shape
	for _, v := range t.values {
		lines = append(lines, path{runs: [][]point{{{x.at(v), top}, {x.at(v), bottom}}}, look: look{line: hair, width: 0.7}})
	}
	d.shapes = slices.Insert(d.shapes, ground, lines...)
	d.line(look{line: edge, width: 1}, point{x.lo, bottom}, point{x.hi, bottom})
	title := Axis{Title: w.Unit}.name(0)
	if t.power != 0 {
		title = fmt.Sprintf("%s (10^%d)", w.Unit, t.power)
	}
	if x.from > 0 {
		title += "; the axis starts at " + brief(x.from)
		d.breakMark(x.lo+10, bottom, 5)
	}
	return d.xAxis(t, x, bottom, title)
}

func (w Waterfall) describe() string {
	if w.Caption.Description != "" {
		return w.Caption.Description
	}
	words := fmt.Sprintf("Loss sheet in %s: %s %s.", w.Unit, w.From, brief(w.Ideal))
	for _, l := range w.Losses {
		words += fmt.Sprintf(" %s %s.", l.Name, w.lossWords(l))
	}
	return words + fmt.Sprintf(" %s %s.", w.To, brief(w.Good))
}
