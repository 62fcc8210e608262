package chart

import (
	"slices"
	"strconv"
	"time"
)

// bar is one repeat of a window in a row, in points.
type bar struct {
	window Window
	x0, x1 float64
	slack  float64 // where the slack ends
	whole  bool    // the bar is not cut at its start
}

// tag is a label that does not fit inside its bar and stands below it.
type tag struct {
	words string
	at    float64 // the middle of what it names
	a, b  float64 // its extent
	line  int
}

// layout is a row of windows with its tags.
type layout struct {
	bars  []bar
	tags  []tag
	lines int
	above float64 // room above the bars
}

// Heights in points: of a bar, and of the room above it.
const (
	barHeight = 17.0
	barAbove  = 9.0
	marginRow = 13.0 // more of that for each margin
)

func (l layout) height() float64 {
	return l.above + barHeight + 6 + float64(l.lines)*leading*small
}

// layRow places the bars of a row and finds room for the labels that don't fit inside.
func (s *timingSheet) layRow(r WindowRow) layout {
	l := layout{above: s.above(r.Name)}
	for _, w := range r.Windows {
		bars := s.bars(w)
		l.bars = append(l.bars, bars...)
		l.tag(w.Name, bars, bar.fits, func(b bar) float64 { return (b.x0 + b.x1) / 2 })
		if w.Slack > 0 {
			l.tag("slack "+slackWords(w.Slack), bars, bar.slackFits, func(b bar) float64 { return (b.x1 + max(b.x1, b.slack)) / 2 })
		}
	}
	l.placeTags(s.x.lo, s.x.hi)
	return l
}

// above is the room above the bars of a row, for the wedges of the critical path and for margins.
func (s *timingSheet) above(row string) float64 {
	room := barAbove
	for _, m := range s.Margins {
		if m.On == row {
			room += marginRow
		}
	}
	return room
}

// bars are the repeats of a window. Slack of a repeat that ended before the chart is seen at its start.
func (s *timingSheet) bars(w Window) []bar {
	slack := s.degrees(w.Slack)
	span := s.unwrapped(w.Span)
	var out []bar
	for _, o := range s.occurrences(Span{span.From, span.To + slack}) {
		from, to := max(o.From, 0), min(o.To-slack, s.length())
		out = append(out, bar{window: w, x0: s.x.at(from), x1: s.x.at(max(to, from)), slack: s.x.at(min(o.To, s.length())), whole: o.From >= 0})
	}
	return out
}

// tag puts words below the first whole bar, unless they fit inside some bar.
func (l *layout) tag(words string, bars []bar, fits func(bar) bool, middle func(bar) float64) {
	if slices.ContainsFunc(bars, fits) {
		return
	}
	for _, b := range bars {
		if b.whole {
			l.tags = append(l.tags, tag{words: words, at: middle(b)})
			return
		}
	}
}

func (b bar) fits() bool { return textWidth(b.window.Name, small, false)+6 <= b.x1-b.x0 }
func (b bar) slackFits() bool {
	return textWidth(slackWords(b.window.Slack), small, false)+6 <= b.slack-b.x1
}

// slackWords writes a slack in milliseconds, or in seconds from ten on.
func slackWords(d time.Duration) string {
	if d >= 10*time.Second {
		return brief(d.Seconds()) + " s"
	}
	ms := d.Seconds() * 1000
	if ms < 10 {
		return brief(ms) + " ms"
	}
	return strconv.FormatFloat(ms, 'f', 0, 64) + " ms"
}

// placeTags gives each tag the first line on which it meets no other, within the chart.
func (l *layout) placeTags(left, right float64) {
	for i := range l.tags {
		t := &l.tags[i]
		w := textWidth(t.words, small, false)
		t.a = min(max(t.at-w/2, left), right-w)
		t.b = t.a + w
		l.settle(i)
		l.lines = max(l.lines, t.line+1)
	}
}

// settle finds a line for a tag, if possible one where no pointer crosses a tag; else tags interrupt the pointers behind them.
func (l *layout) settle(i int) {
	for _, strict := range []bool{true, false} {
		for l.tags[i].line = range i + 1 {
			if !l.meets(i, strict) {
				return
			}
		}
	}
}

// meets says whether a tag touches an earlier one or, when strict, whether the pointer of one crosses the other.
func (l *layout) meets(i int, strict bool) bool {
	t := l.tags[i]
	over := func(at float64, o tag) bool { return at > o.a-3 && at < o.b+3 }
	for _, o := range l.tags[:i] {
		if o.line == t.line && t.a < o.b+6 && o.a < t.b+6 {
			return true
		}
		if strict && (o.line < t.line && over(t.at, o) || o.line > t.line && over(o.at, t)) {
			return true
		}
	}
	return false
}

// draw draws the row: bars, slack behind them, labels inside or below.
func (l layout) draw(d *Drawing, row box) {
	top := row.y0 + l.above
	for _, b := range l.bars {
		b.drawSlack(d, top)
	}
	for _, critical := range []bool{false, true} {
		for _, b := range l.bars {
			if b.window.Critical == critical && b.x1 > b.x0 {
				b.draw(d, top)
			}
		}
	}
	below := func(t tag) float64 { return top + barHeight + 5 + float64(t.line)*leading*small }
	for _, t := range l.tags {
		d.line(look{line: muted, width: 0.7}, point{t.at, top + barHeight}, point{t.at, below(t)})
	}
	for _, t := range l.tags {
		d.plate(label{at: point{(t.a + t.b) / 2, below(t) + capHeight*small + 1.5}, words: t.words, size: small, anchor: middle, ink: text})
	}
}

// draw draws one bar: a critical one with a thick outline and a wedge above.
func (b bar) draw(d *Drawing, top float64) {
	f := filling{sky, plain, stripe}
	outline := look{line: edge, width: 0.8}
	if b.window.Critical {
		f, outline = filling{orange, plain, stripe}, look{line: text, width: 2.4}
	}
	r := box{b.x0, top, b.x1, top + barHeight}
	tip := b.window.Name
	d.add(path{runs: [][]point{r.corners()}, closed: true, look: look{fill: f.ink}, tip: tip})
	d.add(path{runs: [][]point{r.corners()}, closed: true, look: outline, tip: tip})
	if b.window.Critical {
		wedge(d, point{r.middle().x, top - 2.5})
	}
	if b.fits() {
		d.write(label{at: point{r.middle().x, inMiddle(r.middle().y)}, words: b.window.Name, size: small, anchor: middle, ink: f.words})
	}
}

// wedge points down at a bar of the critical path.
func wedge(d *Drawing, tip point) {
	d.area(look{fill: text}, tip, point{tip.x - 3.5, tip.y - 5.5}, point{tip.x + 3.5, tip.y - 5.5})
}

// drawSlack draws the hatched extension of a bar with its length.
func (b bar) drawSlack(d *Drawing, top float64) {
	if b.window.Slack == 0 || b.slack <= b.x1 {
		return
	}
	r := box{b.x1, top + 3, b.slack, top + barHeight - 3}
	slackBox(d, r)
	if b.slackFits() {
		d.plate(label{at: point{r.middle().x, inMiddle(r.middle().y)}, words: slackWords(b.window.Slack), size: small, anchor: middle, ink: text})
	}
}

func slackBox(d *Drawing, r box) {
	d.rect(look{fill: paper}, r)
	d.hatchArea(filling{paper, rising, none}, r.corners())
	d.rect(look{line: edge, width: 0.8, dash: []float64{3, 2}}, r)
}
