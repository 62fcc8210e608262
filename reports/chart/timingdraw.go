package chart

import (
	"fmt"
	"slices"
	"strconv"
	"time"
)

// strip is one row of a timing chart.
type strip struct {
	name   string
	names  []string // the name in lines
	detail []string
	height float64
	draw   func(b box)
}

// timingSheet is a timing chart while it is laid out.
type timingSheet struct {
	Timing
	d      *Drawing
	x      scale
	strips []strip
	places map[string]box // of curves and rows by name
}

// Draw lays the chart out: degrees above, seconds below, an axis or station a row, with the conveyor's index shaded through all.
func (t Timing) Draw() (*Drawing, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	d, y := t.Caption.begin(widthOr(t.Width, 960))
	y = d.legend(t.samples(), rim, d.Width-rim, y)
	s := &timingSheet{Timing: t, d: d, places: map[string]box{}}
	left, right := s.columns()
	s.x = scale{0, t.length(), left, right}
	s.plan()

	top := s.degreeAxis(y)
	y = top
	boxes := make([]box, len(s.strips))
	for i, strip := range s.strips {
		boxes[i] = box{left, y, right, y + strip.height}
		if _, ok := s.places[strip.name]; !ok {
			s.places[strip.name] = boxes[i]
		}
		y += strip.height
	}
	s.ground(top, y)
	s.criticalPath()
	for i, strip := range s.strips {
		s.name(strip, boxes[i])
		strip.draw(boxes[i])
	}
	s.margins()
	y = s.secondAxis(y)
	y = s.marginList(y)
	d.Description = t.describe()
	return t.Caption.finish(d, y), nil
}

// columns are the edges between names, chart and values.
func (s *timingSheet) columns() (left, right float64) {
	names, values := 40.0, textWidth("degrees", small, false)
	room := 0.2 * s.d.Width
	for _, c := range s.Curves {
		names = max(names, widest(wrap(c.Name, normal, true, room), normal, true), widest(wrap(c.Detail, small, false, room), small, false))
		values = max(values, textWidth(c.strokeWords(), small, false), textWidth(c.peakWords(), small, false))
	}
	for _, r := range s.Rows {
		names = max(names, widest(wrap(r.Name, normal, true, room), normal, true))
	}
	return rim + names + 12, s.d.Width - rim - values - 8
}

// plan lists the strips from top to bottom.
func (s *timingSheet) plan() {
	if len(s.Curves) > 0 {
		s.heading("Displacement")
	}
	for n, c := range s.Curves {
		s.addStrip(c.Name, c.Detail, max(46, marginRow*float64(s.count(c.Name))), func(b box) { s.curve(c, strokes(n).ink, b) })
	}
	if len(s.Rows) > 0 {
		s.heading("Stations")
	}
	for _, r := range s.Rows {
		row := s.layRow(r)
		s.addStrip(r.Name, "", row.height(), func(b box) { row.draw(s.d, b) })
	}
	moving := slices.DeleteFunc(slices.Clone(s.Curves), func(c Curve) bool { return len(c.Velocity) == 0 })
	if !s.Velocity || len(moving) == 0 {
		return
	}
	s.heading("Velocity")
	for n, c := range s.Curves {
		if len(c.Velocity) > 0 {
			s.addStrip(c.Name, "", 50, func(b box) { s.velocity(c, strokes(n).ink, b) })
		}
	}
}

// addStrip appends a row that is high enough for its name.
func (s *timingSheet) addStrip(name, detail string, least float64, draw func(box)) {
	room := s.x.lo - rim - 12
	st := strip{name: name, names: wrap(name, normal, true, room), detail: wrap(detail, small, false, room), draw: draw}
	st.height = max(least, leading*(normal*float64(len(st.names))+small*float64(len(st.detail)))+6)
	s.strips = append(s.strips, st)
}

// heading appends a title between groups of rows.
func (s *timingSheet) heading(words string) {
	s.strips = append(s.strips, strip{height: 18, draw: func(b box) {
		s.d.rect(look{fill: shade, line: hair, width: 0.7}, box{rim, b.y0 + 1, s.d.Width - rim, b.y1 - 1})
		s.d.write(label{at: point{rim + 4, inMiddle(b.middle().y)}, words: words, size: small, bold: true, ink: text})
	}})
}

// name sets the name and detail of a row at its left and a line below it.
func (s *timingSheet) name(st strip, b box) {
	if len(st.names) == 0 {
		return
	}
	whole := leading * (normal*float64(len(st.names)) + small*float64(len(st.detail)))
	y := b.middle().y - whole/2 + capHeight*normal + 1.5
	y = s.d.paragraph(st.names, label{at: point{rim, y}, size: normal, bold: true, ink: text})
	s.d.paragraph(st.detail, label{at: point{rim, y - 1}, size: small, ink: muted})
	s.d.line(look{line: hair, width: 0.7}, point{rim, b.y1}, point{s.d.Width - rim, b.y1})
}

// degreeAxis numbers the degrees above the chart and tells where the chart begins.
func (s *timingSheet) degreeAxis(y float64) float64 {
	if s.Index != nil || s.Pause > 0 {
		y += leading * small
	}
	base := y + leading*small + 4
	every := s.degreeStep()
	last := -100.0
	for k := range s.cycles() {
		for v := 0.0; v <= 360; v += every {
			at := s.x.at(float64(k)*s.period() + v)
			words := strconv.FormatFloat(360*float64(k)+v, 'f', 0, 64)
			w := textWidth(words, small, false)
			if at-w/2 < last+3 {
				continue
			}
			last = at + w/2
			s.d.line(look{line: edge, width: 1}, point{at, base - 4}, point{at, base})
			s.d.write(label{at: point{at, base - 6}, words: words, size: small, anchor: middle, ink: text})
		}
	}
	s.d.write(label{at: point{s.x.hi + textWidth("720", small, false)/2 + 4, base - 6}, words: "deg", size: small, ink: text})
	s.d.line(look{line: edge, width: 1}, point{s.x.lo, base}, point{s.x.hi, base})
	return base
}

// degreeStep is the finest usual step whose numbers fit side by side.
func (s *timingSheet) degreeStep() float64 {
	perDegree := (s.x.hi - s.x.lo) / s.length()
	for _, v := range []float64{30, 45, 90, 180} {
		if v*perDegree >= textWidth("000", small, false)+6 {
			return v
		}
	}
	return 360
}

// secondAxis numbers the seconds below the chart.
func (s *timingSheet) secondAxis(y float64) float64 {
	whole := (time.Duration(s.cycles()) * (s.Revolution + s.Pause)).Seconds()
	x := scale{0, whole, s.x.lo, s.x.hi}
	t := fitTicks(0, whole, s.x.hi-s.x.lo)
	s.d.line(look{line: edge, width: 1}, point{s.x.lo, y}, point{s.x.hi, y})
	title := fmt.Sprintf("time (%s)", "s")
	if t.power != 0 {
		title = fmt.Sprintf("time (10^%d s)", t.power)
	}
	title += fmt.Sprintf("; one revolution of the master takes %s s", brief(s.Revolution.Seconds()))
	return s.d.xAxis(t, x, y, title)
}

// ground puts the index, the pause and the fine lines behind all rows.
func (s *timingSheet) ground(top, bottom float64) {
	if s.Index != nil {
		for _, o := range s.occurrences(*s.Index) {
			s.column(o, "index", top, bottom, plain)
		}
	}
	if s.Pause > 0 {
		for k := range s.cycles() {
			from := float64(k)*s.period() + 360
			s.column(Span{from, from + s.degrees(s.Pause)}, "stands "+brief(s.Pause.Seconds())+" s", top, bottom, dotted)
		}
	}
	for k := range s.cycles() {
		for v := 0.0; v <= 360; v += s.degreeStep() {
			x, l := s.x.at(float64(k)*s.period()+v), look{line: hair, width: 0.7}
			if v == 0 || v == 360 {
				l = look{line: edge, width: 0.8}
			}
			s.d.line(l, point{x, top}, point{x, bottom})
		}
	}
	if s.Index != nil {
		s.hairlines(top, bottom)
	}
}

// column shades a part of the chart through all rows, with its name above where there is room.
func (s *timingSheet) column(o Span, name string, top, bottom float64, h hatch) {
	b := box{s.x.at(max(o.From, 0)), top, s.x.at(min(o.To, s.length())), bottom}
	s.d.rect(look{fill: shade}, b)
	s.d.hatchArea(filling{shade, h, none}, b.corners())
	s.d.line(look{line: edge, width: 3}, point{b.x0, top - 1}, point{b.x1, top - 1})
	if textWidth(name, small, false) <= b.width() {
		s.d.write(label{at: point{b.middle().x, top - leading*small - 8}, words: name, size: small, anchor: middle, ink: muted})
	}
}

// hairlines mark the start and the end of each index through all rows.
func (s *timingSheet) hairlines(top, bottom float64) {
	for _, o := range s.occurrences(*s.Index) {
		for _, v := range []float64{o.From, o.To} {
			if v >= 0 && v <= s.length() {
				s.d.line(look{line: muted, width: 0.8, dash: []float64{8, 2, 2, 2}}, point{s.x.at(v), top}, point{s.x.at(v), bottom})
			}
		}
	}
}
