package chart

import "math"

// marginLabel is a label right of the plotting area: the name of a series or of a level across it.
type marginLabel struct {
	lines []string
	from  point // where the line that it names ends
	pen   look
	mark  func(p point)
}

// labelWidth is the room for names right of the chart, as a share of its width.
const labelWidth = 0.26

// margin is the room right of the plotting area, and whether names of series stand there.
func (l Line) margin(width, height float64) (room float64, direct bool) {
	var names, levels []string
	rows := 0
	for _, s := range l.Series {
		names = append(names, s.Name)
		rows++
	}
	for _, r := range l.References {
		if !r.Vertical {
			lines := wrap(r.Label, small, false, labelWidth*width-30)
			levels = append(levels, lines...)
			rows += len(lines)
		}
	}
	direct = widest(names, small, false)+30 <= labelWidth*width && float64(rows)*leading*small <= height
	room = widest(levels, small, false)
	if direct {
		room = max(room, widest(names, small, false)+10)
	}
	if room == 0 {
		return rim + 14, direct
	}
	return room + 20 + rim, direct
}

// levels draws the horizontal references.
func (l Line) levels(d *Drawing, f frame) {
	for _, r := range l.References {
		if y, ok := r.level(f); ok {
			d.line(referencePen(), point{f.area.x0, y}, point{f.area.x1, y})
		}
	}
}

// level is where a reference lies across the frame, on its very edge too; not ok for one that stands upright or lies outside.
func (r Reference) level(f frame) (y float64, ok bool) {
	const hair = 0.01
	y = f.y.at(r.At)
	return y, !r.Vertical && y >= f.area.y0-hair && y <= f.area.y1+hair
}

// referencePen draws references apart from series: thin, in the ink of the text.
func referencePen() look { return look{line: text, width: 1, dash: []float64{5, 2, 1, 2}} }

// marginLabels names series and levels at the right, moved apart where they would touch.
func (l Line) marginLabels(d *Drawing, f frame, direct bool) {
	var labels []marginLabel
	for n, s := range l.Series {
		last, ok := lastIn(s.runs(f), f.area)
		if !direct || s.Name == "" || !ok {
			continue
		}
		pen := strokes(n)
		labels = append(labels, marginLabel{[]string{s.Name}, last, look{line: pen.ink, width: 0.8}, func(p point) { d.mark(pen.marker, pen.ink, p, 2.6) }})
	}
	for _, r := range l.References {
		if y, ok := r.level(f); ok {
			lines := wrap(r.Label, small, false, labelWidth*d.Width-30)
			labels = append(labels, marginLabel{lines, point{f.area.x1, y}, look{line: text, width: 0.7}, nil})
		}
	}
	wanted, heights := make([]float64, len(labels)), make([]float64, len(labels))
	for i, m := range labels {
		wanted[i], heights[i] = m.from.y, leading*small*float64(len(m.lines))
	}
	for i, y := range spread(wanted, heights, f.area.y0-4, f.area.y1+4) {
		m := labels[i]
		at := point{f.area.x1 + 14, y}
		d.line(m.pen, m.from, point{max(m.from.x, f.area.x1) + 4, m.from.y}, at)
		if m.mark != nil {
			at.x += 4
			m.mark(at)
			at.x += 3
		}
		first := y - heights[i]/2 + leading*small/2 + capHeight*small/2
		d.paragraph(m.lines, label{at: point{at.x + 3, first}, size: small, ink: text})
	}
}

// lastIn is the rightmost point of a curve inside the plotting area.
func lastIn(runs [][]point, area box) (point, bool) {
	last, found := point{x: math.Inf(-1)}, false
	for _, run := range runs {
		if len(run) == 1 && run[0].x > last.x && (box{run[0].x, run[0].y, run[0].x, run[0].y}).within(area) {
			last, found = run[0], true
		}
		for _, piece := range clipLine(run, area) {
			if p := piece[len(piece)-1]; p.x > last.x {
				last, found = p, true
			}
		}
	}
	return last, found
}
