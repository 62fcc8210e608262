package chart

import (
	"fmt"
	"math"
	"slices"
)

// Ranges is a chart of a figure with its interval, a row for each of several things, against lines that it is held to.
type Ranges struct {
	Caption Caption
	// X is what is measured.
	X    Axis
	Rows []RangeRow
	// References are lines across all rows, such as no difference, or a target; all are vertical.
	References []Reference
	// Idle is a range of X that does not matter, and what it is called; nothing where From is not below To.
	Idle Idle
	// Bars draws each figure as a bar from 0 rather than as a dot.
	Bars bool
	// Width of the drawing in points; 0 takes 720.
	Width float64
}

// Idle is a range that makes no difference that matters.
type Idle struct {
	Label    string
	From, To float64
}

// RangeRow is a figure with its interval.
type RangeRow struct {
	Name string
	// At is the figure, Low and High the ends of its interval; not finite where there are none.
	At, Low, High float64
	// Words stand at the right, such as "-225 (-2.3 %)".
	Words string
	// Strong sets the name in bold; Hollow draws an open mark, for what shows nothing or may not be chosen.
	Strong, Hollow bool
}

// Draw lays the chart out, one row a thing from top to bottom.
func (r Ranges) Draw() (*Drawing, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	d, y := r.Caption.begin(widthOr(r.Width, 720))
	var names, words []string
	for _, row := range r.Rows {
		names, words = append(names, row.Name), append(words, row.Words)
	}
	column := newNameColumn(names, d.Width)
	low, high := r.extent()
	span := Axis{}
	span.From, span.To = r.X.From, r.X.To
	from, to := span.span(low-0.04*(high-low), high+0.04*(high-low))
	x := scale{from, to, rim + column.width + 10, d.Width - rim - widest(words, small, false) - 10}
	if r.Idle.From < r.Idle.To {
		y = d.legend([]sample{{r.Idle.Label, func(d *Drawing, b box) { d.fillBox(filling{shade, rising, text}, b, "") }}}, rim, d.Width-rim, y)
	}
	refs := newLanes(r.References, 0.4*d.Width)
	y += refs.place(x, d.Width-rim) + 4
	ground, top := len(d.shapes), y
	for i, row := range r.Rows {
		h := column.height(i, 24)
		column.draw(d, i, rim+column.width, y+h/2, row.Strong)
		r.row(d, row, x, y+h/2)
		d.write(label{at: point{d.Width - rim, inMiddle(y + h/2)}, words: row.Words, size: small, anchor: end, ink: text})
		y += h
	}
	ticks := fitTicks(x.from, x.to, x.hi-x.lo)
	r.behind(d, x, ticks, ground, top, y)
	d.line(look{line: edge, width: 1}, point{x.lo, y}, point{x.hi, y})
	refs.draw(d, frame{area: box{x.lo, top, x.hi, y}})
	y = d.xAxis(ticks, x, y, r.X.name(ticks.power))
	d.Description = r.describe()
	return r.Caption.finish(d, y), nil
}

func (r Ranges) check() error {
	if len(r.Rows) == 0 {
		return fmt.Errorf("chart %q has no rows", r.Caption.Title)
	}
	for _, row := range r.Rows {
		if !finite(row.At) {
			return fmt.Errorf("row %q is at %g; it must be finite", row.Name, row.At)
		}
		if row.bounded() && !(row.Low <= row.High) {
			return fmt.Errorf("row %q has an interval from %g to %g; the first must not be above the second", row.Name, row.Low, row.High)
		}
	}
	for _, ref := range r.References {
		if !finite(ref.At) || !ref.Vertical {
			return fmt.Errorf("reference %q must be vertical and finite", ref.Label)
		}
	}
	return r.X.check("x")
}

func (row RangeRow) bounded() bool { return finite(row.Low, row.High) }

// extent is all that the axis must hold.
func (r Ranges) extent() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	take := func(v float64) { low, high = min(low, v), max(high, v) }
	for _, row := range r.Rows {
		take(row.At)
		if row.bounded() {
			take(row.Low)
			take(row.High)
		}
	}
	for _, ref := range r.References {
		take(ref.At)
	}
	if r.Idle.From < r.Idle.To {
		take(r.Idle.From)
		take(r.Idle.To)
	}
	if r.Bars || r.X.Zero {
		take(0)
	}
	if !apart(low, high) {
		pad := max(math.Abs(low)*0.05, 1e-9)
		low, high = low-pad, high+pad
	}
	return low, high
}

// row draws the interval as a line with ends, and the figure as a mark or a bar.
func (r Ranges) row(d *Drawing, row RangeRow, x scale, mid float64) {
	tip := row.Name + ": " + withUnit(brief(row.At), r.X.Unit)
	if r.Bars {
		f := filling{blue, plain, paper}
		if row.Hollow {
			f = filling{paper, rising, text}
		}
		d.fillBox(f, box{min(x.at(0), x.at(row.At)), mid - 7, max(x.at(0), x.at(row.At)), mid + 7}, tip)
	}
	if row.bounded() && row.High > row.Low {
		pen := look{line: text, width: 1.6}
		d.line(pen, point{x.at(row.Low), mid}, point{x.at(row.High), mid})
		for _, at := range []float64{row.Low, row.High} {
			d.line(pen, point{x.at(at), mid - 4}, point{x.at(at), mid + 4})
		}
	}
	if r.Bars {
		return
	}
	form := 0
	if row.Hollow {
		form = markers / 2
	}
	d.mark(form, blue, point{x.at(row.At), mid}, 4)
}

// behind draws what lies behind the rows: the range that does not matter, and fine lines.
func (r Ranges) behind(d *Drawing, x scale, ticks axisTicks, ground int, top, bottom float64) {
	back := &Drawing{}
	if r.Idle.From < r.Idle.To {
		b := box{x.at(r.Idle.From), top, x.at(r.Idle.To), bottom}
		back.rect(look{fill: shade}, b)
		back.hatchArea(filling{shade, rising, text}, b.corners())
	}
	for _, v := range ticks.values {
		back.line(look{line: hair, width: 0.7}, point{x.at(v), top}, point{x.at(v), bottom})
	}
	d.shapes = slices.Insert(d.shapes, ground, back.shapes...)
}

func (r Ranges) describe() string {
	if r.Caption.Description != "" {
		return r.Caption.Description
	}
	words := fmt.Sprintf("Chart of %s.", r.X.name(0))
	for _, row := range r.Rows {
		words += fmt.Sprintf(" %s: %s", row.Name, brief(row.At))
		if row.bounded() {
			words += fmt.Sprintf(" (%s to %s)", brief(row.Low), brief(row.High))
		}
		words += "."
	}
	for _, ref := range r.References {
		words += fmt.Sprintf(" %s: %s.", ref.Label, brief(ref.At))
	}
	return words
}
