package chart

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
)

// samples explains what the chart marks.
func (t Timing) samples() []sample {
	var critical, slack, other bool
	for _, r := range t.Rows {
		for _, w := range r.Windows {
			critical, slack, other = critical || w.Critical, slack || w.Slack > 0, other || !w.Critical
		}
	}
	var out []sample
	bars := func(critical bool) func(*Drawing, box) {
		return func(d *Drawing, b box) {
			bar{window: Window{Critical: critical, Name: "      "}, x0: b.x0, x1: b.x1}.sample(d, b)
		}
	}
	if other {
		out = append(out, sample{"station at work", bars(false)})
	}
	if critical {
		out = append(out, sample{"no slack: any delay here delays the next index", bars(true)})
	}
	if slack {
		out = append(out, sample{"slack: may end that much later", func(d *Drawing, b box) { slackBox(d, box{b.x0, b.y0 + 1, b.x1, b.y1 - 1}) }})
	}
	if t.Index != nil {
		out = append(out, sample{"conveyor indexes", func(d *Drawing, b box) {
			d.rect(look{fill: shade}, b)
			for _, x := range []float64{b.x0, b.x1} {
				d.line(look{line: muted, width: 0.8, dash: []float64{4, 1.5, 1.5, 1.5}}, point{x, b.y0 - 1}, point{x, b.y1 + 1})
			}
		}})
	}
	if t.Pause > 0 {
		out = append(out, sample{"master stands", func(d *Drawing, b box) {
			d.rect(look{fill: shade}, b)
			d.hatchArea(filling{shade, dotted, none}, b.corners())
		}})
	}
	if len(t.Margins) > 0 {
		out = append(out, sample{"margin, explained below", func(d *Drawing, b box) { balloon(d, b.middle(), 1) }})
	}
	return out
}

// sample draws a small bar in the legend.
func (b bar) sample(d *Drawing, r box) {
	f, outline := sky, look{line: edge, width: 0.8}
	if b.window.Critical {
		f, outline = orange, look{line: text, width: 2.2}
		wedge(d, point{r.middle().x, r.y0 + 1})
		r.y0 += 3
	}
	d.rect(look{fill: f}, r)
	d.rect(outline, r)
}

// criticalPath joins the windows of the critical path where one hands over to the next.
func (s *timingSheet) criticalPath() {
	type stop struct {
		span Span
		y    float64
	}
	var stops []stop
	for _, r := range s.Rows {
		for _, w := range r.Windows {
			if w.Critical {
				for _, o := range s.occurrences(w.Span) {
					stops = append(stops, stop{o, s.places[r.Name].y0 + s.above(r.Name) + barHeight/2})
				}
			}
		}
	}
	slices.SortStableFunc(stops, func(a, b stop) int { return cmp.Compare(a.span.From, b.span.From) })
	pen := look{line: text, width: 1.6, dash: []float64{3, 1.5}}
	for i := 1; i < len(stops); i++ {
		p, q := stops[i-1], stops[i]
		if gap := q.span.From - p.span.To; p.y == q.y || gap < -1 || gap > 20 || p.span.To < 0 || q.span.From > s.length() {
			continue
		}
		toward := barHeight / 2
		if q.y < p.y {
			toward = -toward
		}
		x := s.x.at(p.span.To)
		s.d.line(pen, point{x, p.y + toward}, point{x, q.y - toward}, point{s.x.at(q.span.From), q.y - toward})
	}
}

// margins marks each margin in its row with a dimension line and a number, explained below: above the bars of a station, on the
// curve of an axis.
func (s *timingSheet) margins() {
	rows := map[string]int{}
	for n, m := range s.Margins {
		row := s.places[m.On]
		o := s.unwrapped(m.Span)
		x0, x1 := s.x.at(o.From), s.x.at(min(o.To, s.length()))
		y := row.y0 + 7 + marginRow*float64(rows[m.On])
		if slices.ContainsFunc(s.Curves, func(c Curve) bool { return c.Name == m.On }) {
			y = row.middle().y + (marginRow-1)*float64(rows[m.On]-(s.count(m.On)-1)/2)
		}
		rows[m.On]++
		s.dimension(x0, x1, y)
		centre := point{x1 + 9, y}
		if centre.x+6 > s.x.hi {
			centre.x = x0 - 9
		}
		balloon(s.d, centre, n+1)
	}
}

// count is the number of margins on a row.
func (s *timingSheet) count(on string) int {
	n := 0
	for _, m := range s.Margins {
		if m.On == on {
			n++
		}
	}
	return n
}

// dimension draws a line between two short bars, as on a drawing.
func (s *timingSheet) dimension(x0, x1, y float64) {
	l := look{line: text, width: 1}
	s.d.line(l, point{x0, y}, point{x1, y})
	for _, x := range []float64{x0, x1} {
		s.d.line(l, point{x, y - 4}, point{x, y + 4})
		s.d.line(l, point{x - 2, y + 2}, point{x + 2, y - 2})
	}
}

// balloon draws a number in a circle.
func balloon(d *Drawing, at point, number int) {
	d.add(disc{centre: at, radius: 5.8, look: look{fill: paper, line: text, width: 1}})
	d.write(label{at: point{at.x, at.y + 2.9}, words: strconv.Itoa(number), size: 8, bold: true, anchor: middle, ink: text})
}

// marginList explains the numbers below the chart.
func (s *timingSheet) marginList(y float64) float64 {
	if len(s.Margins) > 0 {
		y += 6
	}
	for n, m := range s.Margins {
		balloon(s.d, point{s.x.lo + 6, y + 6}, n+1)
		lines := wrap(m.Text, normal, n == 0, s.d.Width-rim-s.x.lo-20)
		y = s.d.paragraph(lines, label{at: point{s.x.lo + 18, y + 10}, size: normal, bold: n == 0, ink: text}) - 7.5
	}
	return y
}

// describe puts the chart into words.
func (t Timing) describe() string {
	if t.Caption.Description != "" {
		return t.Caption.Description
	}
	words := fmt.Sprintf("Timing chart over %d revolutions of the master, %s s each.", t.cycles(), brief(t.Revolution.Seconds()))
	for _, c := range t.Curves {
		words += fmt.Sprintf(" %s: stroke %s.", c.Name, c.strokeWords())
	}
	for _, r := range t.Rows {
		for _, w := range r.Windows {
			words += fmt.Sprintf(" %s, %s: %s to %s degrees", r.Name, w.Name, brief(w.Span.From), brief(w.Span.To))
			if w.Slack > 0 {
				words += ", slack " + slackWords(w.Slack)
			}
			if w.Critical {
				words += ", critical"
			}
			words += "."
		}
	}
	for _, m := range t.Margins {
		words += " " + m.Text + "."
	}
	return words
}
