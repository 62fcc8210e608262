package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Tornado is a chart of how far each input moves an output, the widest first.
type Tornado struct {
	Caption Caption
	// Output names what is moved; its range is not used.
	Output Axis
	// Base is the output with every input at its likely value.
	Base float64
	// Swings are the inputs, in any order.
	Swings []Swing
	// Target is a value of the output to compare with, or nil.
	Target *Reference
	// Width of the drawing in points; 0 takes 720.
	Width float64
}

// Swing is one input and what it does to the output.
type Swing struct {
	// Name of the input.
	Name string
	// LowInput and HighInput are the input's values with their units, as they stand at the ends of the bar.
	LowInput, HighInput string
	// Low and High are the output at these values; either may be the smaller.
	Low, High float64
}

// width is how far the output moves.
func (s Swing) width() float64 { return math.Abs(s.High - s.Low) }

// Draw lays the chart out: for each input a bar from the base to each side, hatched for its low value, and the swing at the right.
func (t Tornado) Draw() (*Drawing, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	t.Swings = slices.Clone(t.Swings)
	slices.SortStableFunc(t.Swings, func(a, b Swing) int { return cmp.Compare(b.width(), a.width()) })
	d, y := t.Caption.begin(widthOr(t.Width, 720))
	lower, higher := tornadoFillings()
	y = d.legend([]sample{
		{"input at its low value", func(d *Drawing, b box) { d.fillBox(lower, b, "") }},
		{"input at its high value", func(d *Drawing, b box) { d.fillBox(higher, b, "") }},
	}, rim, d.Width-rim, y)
	names := newNameColumn(t.names(), d.Width)
	x := t.scale(rim+names.width+8, d.Width-rim-t.swingColumn())
	y = t.head(d, x, y)
	top := y
	ground := len(d.shapes)
	var labels []label
	for i, s := range t.Swings {
		h := names.height(i, 24)
		names.draw(d, i, rim+names.width, y+h/2, false)
		labels = append(labels, s.draw(d, x, t.Base, y+h/2)...)
		d.write(label{at: point{d.Width - rim, inMiddle(y + h/2)}, words: brief(s.width()), size: small, anchor: end, ink: text})
		y += h
	}
	t.grid(d, x, ground, top, y)
	for _, l := range labels {
		d.plate(l)
	}
	y = d.xAxis(t.ticks(x), x, y, t.Output.name(t.ticks(x).power))
	d.Description = t.describe()
	return t.Caption.finish(d, y), nil
}

func tornadoFillings() (lower, higher filling) {
	return filling{orange, falling, none}, filling{blue, plain, paper}
}

func (t Tornado) check() error {
	if len(t.Swings) == 0 {
		return fmt.Errorf("tornado %q has no inputs", t.Caption.Title)
	}
	for _, s := range t.Swings {
		if !finite(s.Low, s.High, t.Base) {
			return fmt.Errorf("input %q moves the output from %g to %g; both must be finite", s.Name, s.Low, s.High)
		}
	}
	if t.Target != nil && !finite(t.Target.At) {
		return fmt.Errorf("target %q at %g; it must be finite", t.Target.Label, t.Target.At)
	}
	return nil
}

func (t Tornado) names() []string {
	var out []string
	for _, s := range t.Swings {
		out = append(out, s.Name)
	}
	return out
}

// scale leaves room beyond the bars for the values of the inputs.
func (t Tornado) scale(left, right float64) scale {
	low, high := t.Base, t.Base
	lowRoom, highRoom := 0.0, 0.0
	for _, s := range t.Swings {
		low, high = min(low, s.Low, s.High), max(high, s.Low, s.High)
		lowRoom = max(lowRoom, textWidth(s.LowInput, small, false), textWidth(s.HighInput, small, false))
	}
	highRoom = lowRoom
	if t.Target != nil {
		low, high = min(low, t.Target.At), max(high, t.Target.At)
	}
	low, high = Axis{}.span(low, high)
	inner := scale{low, high, left + lowRoom + 8, right - highRoom - 8}
	perPoint := (high - low) / (inner.hi - inner.lo)
	return scale{low - (lowRoom+8)*perPoint, high + (highRoom+8)*perPoint, left, right}
}

func (t Tornado) ticks(x scale) axisTicks { return fitTicks(x.from, x.to, x.hi-x.lo) }

// swingColumn is the room for the numbers at the right.
func (t Tornado) swingColumn() float64 {
	w := textWidth("swing", small, false)
	for _, s := range t.Swings {
		w = max(w, textWidth(brief(s.width()), small, false))
	}
	return w + 10
}

// head names the base, the target and the column of swings.
func (t Tornado) head(d *Drawing, x scale, y float64) float64 {
	refs := newLanes(t.references(), 0.4*d.Width)
	y += refs.place(x, d.Width-rim-t.swingColumn()) + 4
	d.write(label{at: point{d.Width - rim, y - 3}, words: "swing", size: small, anchor: end, ink: muted})
	return y
}

func (t Tornado) references() []Reference {
	refs := []Reference{{Label: "base " + withUnit(brief(t.Base), t.Output.Unit), At: t.Base, Vertical: true}}
	if t.Target != nil {
		refs = append(refs, Reference{t.Target.Label, t.Target.At, true})
	}
	return refs
}

// grid draws the fine lines behind the bars and the references over them.
func (t Tornado) grid(d *Drawing, x scale, ground int, top, bottom float64) {
	var lines []shape
	for _, v := range t.ticks(x).values {
		lines = append(lines, path{runs: [][]point{{{x.at(v), top}, {x.at(v), bottom}}}, look: look{line: hair, width: 0.7}})
	}
	d.shapes = slices.Insert(d.shapes, ground, lines...)
	d.line(look{line: edge, width: 1}, point{x.lo, bottom}, point{x.hi, bottom})
	refs := newLanes(t.references(), 0.4*d.Width)
	refs.place(x, d.Width-rim-t.swingColumn())
	refs.draw(d, frame{area: box{x.lo, top, x.hi, bottom}})
}

// draw draws both sides of a bar, one above the other where both lie on one side of the base, and gives the labels of its ends.
func (s Swing) draw(d *Drawing, x scale, base, mid float64) []label {
	lower, higher := tornadoFillings()
	lowBox, highBox := box{y0: mid - 8, y1: mid + 8}, box{y0: mid - 8, y1: mid + 8}
	oneSide := (s.Low-base)*(s.High-base) > 0
	if oneSide {
		lowBox, highBox = box{y0: mid - 10, y1: mid}, box{y0: mid, y1: mid + 10}
	}
	lowLeft := s.Low < base || s.Low == base && s.High >= base
	highLeft := s.High < base || s.High == base && s.Low > base
	if oneSide {
		// The shorter bar has its label beyond the base, where it is not in the way of the longer one.
		lowLeft = lowLeft != (math.Abs(s.Low-base) < math.Abs(s.High-base))
		highLeft = highLeft != (math.Abs(s.High-base) <= math.Abs(s.Low-base))
	}
	return []label{
		s.half(d, x, base, s.Low, s.LowInput, lowBox, lower, lowLeft),
		s.half(d, x, base, s.High, s.HighInput, highBox, higher, highLeft),
	}
}

// half draws one side of a bar and gives its label, which is left or right of it.
func (s Swing) half(d *Drawing, x scale, base, v float64, input string, b box, f filling, left bool) label {
	b.x0, b.x1 = min(x.at(base), x.at(v)), max(x.at(base), x.at(v))
	d.fillBox(f, b, s.Name+" "+input+": "+brief(v))
	l := label{at: point{b.x1 + 5, inMiddle(b.middle().y)}, words: input, size: small, ink: text}
	if left {
		l.at.x, l.anchor = b.x0-5, end
	}
	return l
}

func (t Tornado) describe() string {
	if t.Caption.Description != "" {
		return t.Caption.Description
	}
	words := fmt.Sprintf("Tornado chart of %s about %s.", t.Output.name(0), brief(t.Base))
	for _, s := range t.Swings {
		words += fmt.Sprintf(" %s: %s at %s, %s at %s.", s.Name, brief(s.Low), s.LowInput, brief(s.High), s.HighInput)
	}
	return words
}
