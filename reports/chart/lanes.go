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
	return float64(top)*l.height + 2
}

// settle tries the lanes upwards, the label right of its line before left of it. Where lines are too close for all labels to keep
// clear of them, a label interrupts the lines behind it.
func (l *lanes) settle(i int, x scale, right float64) {
	f := &l.flags[i]
	f.x = x.at(f.At)
	width := widest(f.lines, small, false) + 6
	for _, strict := range []bool{true, false} {
		for f.lane = range len(l.flags) {
			for _, f.toLeft = range []bool{false, true} {
				f.a, f.b = f.x, f.x+width
				if f.toLeft {
					f.a, f.b = f.x-width, f.x
				}
				if f.b <= right && f.a >= rim && !l.meets(i, x, strict) {
					return
				}
			}
		}
	}
}

// meets says whether a label would touch one that has its place or, when strict, whether a label and a line would cross.
func (l *lanes) meets(i int, x scale, strict bool) bool {
	const gap = 4
	f := l.flags[i]
	over := func(at float64, o flag) bool { return at > o.a-gap && at < o.b+gap }
	for j, o := range l.flags {
		switch {
		case j == i:
		case j < i && o.lane == f.lane && f.a < o.b+gap && o.a < f.b+gap:
			return true
		case j < i && strict && (o.lane > f.lane && over(o.x, f) || o.lane < f.lane && over(f.x, o)):
			return true
		case j > i && strict && f.toLeft && over(x.at(o.At), f):
			return true
		}
	}
	return false
}

// draw draws the lines, and the labels over them.
func (l *lanes) draw(d *Drawing, f frame) {
	for _, g := range l.flags {
		d.line(referencePen(), point{g.x, f.area.y1}, point{g.x, l.baseline(g, f.area.y0) - capHeight*small - 1})
	}
	for _, g := range l.flags {
		t := label{at: point{g.x + 4, l.baseline(g, f.area.y0)}, size: small, ink: text}
		if g.toLeft {
			t.at.x, t.anchor = g.x-4, end
		}
		for _, t.words = range g.lines {
			d.plate(t)
			t.at.y += leading * small
		}
	}
}

// baseline is where the first line of a label stands above a plotting area.
func (l *lanes) baseline(g flag, top float64) float64 {
	return top - float64(g.lane)*l.height - 4 - leading*small*float64(len(g.lines)-1)
}
