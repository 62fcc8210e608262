package chart

import (
	"cmp"
	"slices"
)

// lanes stacks the labels of vertical references above a plotting area.
type lanes struct {
	flags  []flag
	height float64 // of a lane, in points
}

// flag is a vertical reference with its label beside its upper end.
type flag struct {
	Reference
	lines   []string
	x, a, b float64 // the line, and the extent of the label
	lane    int     // counted upwards from the plotting area
	toLeft  bool
}

// newLanes takes the vertical ones of some references; a label may be as wide as the room given.
func newLanes(refs []Reference, room float64) *lanes {
	l := &lanes{}
	for _, r := range refs {
		if r.Vertical {
			lines := wrap(r.Label, small, false, room)
			l.flags = append(l.flags, flag{Reference: r, lines: lines})
			l.height = max(l.height, leading*small*float64(len(lines)))
		}
	}
	return l
}

// place finds a lane for each label, from right to left, so that no label meets another one or the line of another, and tells the
// height that the lanes need.
func (l *lanes) place(x scale, right float64) float64 {
	l.flags = slices.DeleteFunc(l.flags, func(f flag) bool { return f.At < x.from || f.At > x.to })
	slices.SortStableFunc(l.flags, func(a, b flag) int { return cmp.Compare(b.At, a.At) })
	top := 0
	for i := range l.flags {
		l.settle(i, x, right)
		top = max(top, l.flags[i].lane+1)
	}
	return float64(top) * l.height
}

// settle tries the lanes upwards, the label right of its line before left of it.
func (l *lanes) settle(i int, x scale, right float64) {
	f := &l.flags[i]
	f.x = x.at(f.At)
	width := widest(f.lines, small, false) + 4
	for f.lane = 0; ; f.lane++ {
		for _, f.toLeft = range []bool{false, true} {
			f.a, f.b = f.x, f.x+width
			if f.toLeft {
				f.a, f.b = f.x-width, f.x
			}
			fits := f.b <= right && f.a >= rim || f.lane > 2*len(l.flags)
			if fits && (f.lane > 2*len(l.flags) || !slices.ContainsFunc(l.flags[:i], f.meets)) {
				return
			}
		}
	}
}

// meets says whether two labels, or the label of one and the line of the other, would touch.
func (f *flag) meets(o flag) bool {
	const gap = 4
	switch {
	case f.lane == o.lane:
		return f.a < o.b+gap && o.a < f.b+gap
	case o.lane > f.lane:
		return o.x > f.a-gap && o.x < f.b+gap
	}
	return f.x > o.a-gap && f.x < o.b+gap
}

// draw draws the lines and their labels.
func (l *lanes) draw(d *Drawing, f frame) {
	for _, g := range l.flags {
		y := f.area.y0 - float64(g.lane)*l.height - 3 - leading*small*float64(len(g.lines)-1)
		d.line(referencePen(), point{g.x, f.area.y1}, point{g.x, y - capHeight*small - 1})
		t := label{at: point{g.x + 3, y}, size: small, ink: text}
		if g.toLeft {
			t.at.x, t.anchor = g.x-3, end
		}
		d.paragraph(g.lines, t)
	}
}
