package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Tornado writes which assumption moves a figure and a decision. Style matters to the table format only.
func Tornado(w io.Writer, t *decisions.Tornado, origin Origin, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return tornadoPage(t, origin) },
		json:   func() error { return tornadoJSON(w, t, origin) },
		charts: func() []chart.Chart { return []chart.Chart{TornadoChart(t, origin)} },
	}.write(w, format, style)
}

func tornadoPage(t *decisions.Tornado, origin Origin) *layout.Page {
	n := notesOf(t.Warnings)
	p := &layout.Page{Title: titleOf(t.Title)}
	p.Add(layout.Facts("base", t.About,
		fact(t.Figure, layout.Value(tornadoFigure(t, t.Base.Figure), t.Base.Figure).In(tornadoUnit(t))),
		fact("decision", layout.Word(t.Base.Decision)),
		fact("refused", layout.Word(t.Base.Refused))))
	p.Add(n.answer(tornadoAnswer(t)))
	p.Add(layout.Section{Key: "swing", Heading: "Change of the " + figureOf(t), Table: swingTable(t), Notes: []string{
		"The widest first. Each input is moved alone to the ends of its range, the others stay likely. ~: no change shows"}})
	p.Add(layout.Section{Key: "decision", Heading: "What is decided at the ends", Table: decisionTable(t)})
	p.Add(layout.Section{Heading: "Notes", Notes: append(tornadoNotes(t), n.rest()...)})
	p.Add(origin.foot(t.Spec.Replications, t.Seed, t.Spec.Confidence))
	return p
}

// figureOf names the figure with whose it is and its unit.
func figureOf(t *decisions.Tornado) string {
	name := t.Figure
	if t.About != "" {
		name += " of " + t.About
	}
	return name + ", " + tornadoUnit(t)
}

func tornadoUnit(t *decisions.Tornado) string {
	switch {
	case t.Unit != "":
		return t.Unit
	case t.Currency != "":
		return t.Currency + " a year"
	}
	return "money a year"
}

// tornadoAnswer says which assumptions move the decision, and which moves the figure most.
func tornadoAnswer(t *decisions.Tornado) []string {
	var words, moves []string
	for _, s := range t.Swings {
		for _, e := range []decisions.End{s.Low, s.High} {
			if e.Moves {
				moves = append(moves, fmt.Sprintf("%s at %s (then: %s)", shortName(s.Input), endText(t, e.Text), e.Decision))
			}
		}
	}
	switch {
	case t.Base.Decision == "":
	case len(moves) == 0:
		words = append(words, "No assumption moves the decision by itself: "+t.Base.Decision)
	default:
		words = append(words, "The decision is: "+t.Base.Decision+". What moves it: "+strings.Join(moves, "; "))
	}
	w, name := &t.Swings[0], strings.TrimSuffix(figureOf(t), ", "+tornadoUnit(t))
	if w.Width() == 0 {
		return append(words, "No input moves the "+name)
	}
	return append(words, fmt.Sprintf("What moves the %s most: %s, %s at %s and %s at %s; %s %s as it is", name, shortName(w.Input),
		endFigure(t, w.Low), endText(t, w.Low.Text), endFigure(t, w.High), endText(t, w.High.Text), tornadoFigure(t, t.Base.Figure), tornadoUnit(t)))
}

// shortName is an input without the sections that its path leads through.
func shortName(i decisions.Input) string { return shortPath(i.Name()) }

func tornadoFigure(t *decisions.Tornado, iv interval) string {
	if t.Unit == "" {
		return grouped(iv.Mean)
	}
	return layout.Mean(iv)
}

// endFigure is the figure at an end.
func endFigure(t *decisions.Tornado, e decisions.End) string {
	return tornadoFigure(t, e.Figure) + shortMark(e.Refused)
}

// endChange is the change at an end, ~ where none shows.
func endChange(t *decisions.Tornado, e decisions.End) string {
	if !e.Shows || t.Unit == "" && math.Abs(e.Change.Mean) < 0.5 {
		return layout.None
	}
	if t.Unit == "" {
		if e.Change.Mean > 0 {
			return "+" + grouped(e.Change.Mean)
		}
		return grouped(e.Change.Mean)
	}
	return withSign(e.Change.Mean, layout.Decimals(e.Change.HalfWidth()))
}

// changeCell is the change at an end, marked where the line breaks a limit there.
func changeCell(t *decisions.Tornado, e decisions.End) layout.Cell {
	return layout.Value(endChange(t, e), e.Change).In(tornadoUnit(t)).Marked(shortMark(e.Refused))
}

func swingTable(t *decisions.Tornado) *layout.Table {
	table := &layout.Table{Columns: []layout.Column{layout.Words("input"), layout.Told("range", "range"), layout.Told("source", "source"),
		layout.Figures("change\nat low", "change_at_low"), layout.Figures("change\nat high", "change_at_high"), layout.Hidden("at low", "at_low"), layout.Hidden("at high", "at_high"),
		layout.Hidden("swing", "swing"), layout.Hidden("refused at low", "refused_at_low"), layout.Hidden("refused at high", "refused_at_high")}}
	unit := tornadoUnit(t)
	for _, s := range t.Swings {
		table.Add(layout.Word(shortName(s.Input)), layout.Word(rangeWords(t, s)), layout.Word(sourceOf(s.Assumption)), changeCell(t, s.Low), changeCell(t, s.High),
			layout.Value(tornadoFigure(t, s.Low.Figure), s.Low.Figure).In(unit), layout.Value(tornadoFigure(t, s.High.Figure), s.High.Figure).In(unit),
			layout.Number(s.Width(), 1).In(unit), layout.Word(s.Low.Refused), layout.Word(s.High.Refused))
	}
	return table
}

// rangeWords is 30 to 40 EUR/h.
func rangeWords(t *decisions.Tornado, s decisions.Swing) string {
	low, unit := splitUnit(s.Low.Text)
	if _, u := splitUnit(s.High.Text); u != unit {
		low = s.Low.Text
	}
	return endText(t, low+" to "+s.High.Text)
}

// endText is a value as written, with the currency's word in it.
func endText(t *decisions.Tornado, text string) string { return inCurrency(text, t.Currency) }

// decisionTable lists what is decided where an input moves the decision.
func decisionTable(t *decisions.Tornado) *layout.Table {
	table := &layout.Table{Columns: []layout.Column{layout.Words("input"), layout.Words("at"), layout.Told("then", "decision")}}
	for _, s := range t.Swings {
		for _, e := range []decisions.End{s.Low, s.High} {
			add := table.Spare
			if e.Moves {
				add = table.Add
			}
			if e.Decision != "" {
				add(layout.Word(shortName(s.Input)), layout.Word(endText(t, e.Text)), layout.Word(e.Decision))
			}
		}
	}
	return table
}

func tornadoNotes(t *decisions.Tornado) []string {
	notes := []string{"Two assumptions that are wrong at once can do more than each alone; quantities without a range do not show here"}
	if t.Unit == "" {
		notes = append(notes, "Every candidate stays at the setting that size takes it at; a higher one may make up for a worse input")
	}
	notes = append(notes, refusedEnds(t)...)
	var fixed []string
	for _, i := range t.Fixed {
		fixed = append(fixed, fmt.Sprintf("%s (%s)", shortName(i), sourceOf(i.Assumption)))
	}
	return appendList(notes, "With a source, but no range to try: ", fixed)
}

// refusedEnds say where the line breaks a limit, and which: no line can be run so.
func refusedEnds(t *decisions.Tornado) []string {
	var words []string
	if t.Base.Refused != "" {
		words = append(words, "(!) The line as it is is beyond a limit: "+t.Base.Refused)
	}
	for _, s := range t.Swings {
		for _, e := range []decisions.End{s.Low, s.High} {
			if e.Refused != "" && e.Refused != t.Base.Refused {
				words = append(words, fmt.Sprintf("!: beyond a limit, so that no line can be run so: %s at %s, %s", shortName(s.Input), endText(t, e.Text), e.Refused))
			}
		}
	}
	return words
}

// TornadoChart draws a tornado.
func TornadoChart(t *decisions.Tornado, origin Origin) chart.Chart {
	answer := tornadoAnswer(t)
	c := chart.Tornado{
		Caption: chart.Caption{Title: "What moves the " + strings.SplitN(figureOf(t), ",", 2)[0], Subtitle: titleOf(t.Title) + ". " + answer[0],
			Foot: fmt.Sprintf("each input at the ends of its range, the others likely; (!): another decision; %d shifts of each line, seed %d, dwellcast %s", t.Spec.Replications, t.Seed, origin.Version)},
		Output: chart.Axis{Title: t.Figure, Unit: tornadoUnit(t)}, Base: t.Base.Figure.Mean,
	}
	for _, s := range t.Swings {
		c.Swings = append(c.Swings, chart.Swing{Name: shortName(s.Input), LowInput: markMoved(t, s.Low), HighInput: markMoved(t, s.High),
			Low: s.Low.Figure.Mean, High: s.High.Figure.Mean})
	}
	return c
}

// markMoved is an input's value, marked where it moves the decision.
func markMoved(t *decisions.Tornado, e decisions.End) string {
	if e.Moves {
		return endText(t, e.Text) + " (!)"
	}
	return endText(t, e.Text)
}
