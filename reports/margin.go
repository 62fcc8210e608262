package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// Margin writes how far parameters may go. Style matters to the table format only.
func Margin(w io.Writer, m *decisions.Margins, origin Origin, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return marginPage(m, origin) },
		json:   func() error { return marginJSON(w, m, origin) },
		charts: func() []chart.Chart { return []chart.Chart{MarginChart(m, origin)} },
	}.write(w, format, style)
}

func marginPage(m *decisions.Margins, origin Origin) *layout.Page {
	n := notesOf(m.Warnings)
	p := &layout.Page{Title: titleOf(m.Title)}
	p.Add(todayFacts(m))
	p.Add(n.answer(marginAnswer(m)))
	p.Add(watchSection(m))
	p.Add(layout.Section{Heading: "Notes", Notes: append(marginNotes(m), n.rest()...)})
	p.Add(origin.foot(m.Replications, m.Seed, m.Confidence))
	return p
}

// thresholdWords says what must hold.
func thresholdWords(m *decisions.Margins) string {
	switch {
	case m.Chance > 0:
		return fmt.Sprintf("%s good cartons a shift with a chance of %s", layout.Exactly(m.Target), quantity.FormatRatio(m.Chance))
	case m.Target > 0:
		return fmt.Sprintf("%s good cartons a shift on average", layout.Exactly(m.Target))
	}
	return fmt.Sprintf("%s of today's good output, %s cartons a shift", quantity.FormatRatio(m.Keep), layout.Fixed(m.Keep*m.Today.Mean, 0))
}

// marginAnswer names the tightest margin, or says that the line fails already.
func marginAnswer(m *decisions.Margins) []string {
	text := []string{}
	if !m.Met {
		text = append(text, "The line as it is does not make "+thresholdWords(m))
	}
	for i := range m.List[:inAnswer(m)] {
		text = append(text, marginSentence(m, &m.List[i]))
	}
	return append(text, todayMakes(m))
}

// inAnswer is how many parameters the answer speaks of: the tightest, or three where something must change.
func inAnswer(m *decisions.Margins) int {
	if m.Met {
		return min(len(m.List), 1)
	}
	return min(len(m.List), 3)
}

func todayMakes(m *decisions.Margins) string {
	words := fmt.Sprintf("Today: %s good cartons a shift%s", layout.Mean(m.Today), bounds(m.Today, "", ""))
	if m.Target > 0 {
		words += fmt.Sprintf(", the target made in %s", oddsOf(m.Made))
	}
	return words
}

// marginSentence says how far one parameter may go.
func marginSentence(m *decisions.Margins, one *decisions.Margin) string {
	switch {
	case m.Met && one.Found:
		return fmt.Sprintf("%s may %s from %s to %s (%s) before the line falls below %s", one.Path, direction(one), one.Today, farWords(one), changeWords(one), thresholdWords(m))
	case one.Found:
		return fmt.Sprintf("%s would have to %s from %s to %s (%s)", one.Path, direction(one), one.Today, farWords(one), changeWords(one))
	case m.Met:
		return fmt.Sprintf("%s does not limit: at none of %s does the line fall below %s; the least%s is %s, at %s", one.Path, triedWords(one), thresholdWords(m), edgeWords(one), bestWords(m, one), one.Reach)
	}
	return fmt.Sprintf("%s alone does not bring it there: at none of %s; the best%s is %s, at %s", one.Path, triedWords(one), edgeWords(one), bestWords(m, one), one.Reach)
}

// triedWords say what was tried.
func triedWords(one *decisions.Margin) string {
	return fmt.Sprintf("%s tried, from %s to %s", quantity.FormatCount(int64(one.Tried), "value"), one.Lowest, one.Highest)
}

// bestWords are the figure that counts at the best value tried, or the worst; ~ where chance leaves open on which side it lies.
func bestWords(m *decisions.Margins, one *decisions.Margin) string {
	words := layout.Mean(one.Best) + " cartons a shift"
	if m.Chance > 0 {
		words = "a chance of " + chanceWords(one.BestMade)
	}
	if !one.Surely {
		words += " (~)"
	}
	return words
}

func direction(one *decisions.Margin) string {
	if one.Grows {
		return "grow"
	}
	return "shrink"
}

// edgeWords say why no more was tried.
func edgeWords(one *decisions.Margin) string {
	switch one.Edge {
	case decisions.FileEdge:
		return ", as far as the file allows,"
	case decisions.LimitEdge:
		return fmt.Sprintf(", as far as a limit allows (%s),", one.Refused)
	}
	return ""
}

// farWords is the limit to its last digit: what is printed is what was run.
func farWords(one *decisions.Margin) string {
	return strings.TrimSpace(limitNumber(one) + " " + one.Today.Unit())
}

// limitNumber is the number of a limit. An exact one has no zeros at its end.
func limitNumber(one *decisions.Margin) string {
	text := layout.Fixed(one.Limit.Number(), stepDecimals(one))
	if one.Exact && strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// stepDecimals is how many decimals a limit has.
func stepDecimals(one *decisions.Margin) int {
	return max(int(math.Round(-math.Log10(one.Step))), 0)
}

// limitBand is the interval of a limit.
func limitBand(one *decisions.Margin) string {
	iv := one.At
	low, high := roundedTo(iv.Low, stepDecimals(one), math.Floor), roundedTo(iv.High, stepDecimals(one), math.Ceil)
	switch {
	case one.Exact:
		return "exact"
	case math.IsInf(iv.High, 1) && math.IsInf(iv.Low, -1):
		return layout.None
	case math.IsInf(iv.High, 1):
		return "from " + low
	case math.IsInf(iv.Low, -1):
		return "to " + high
	}
	return low + " to " + high
}

func changeWords(one *decisions.Margin) string {
	if math.IsInf(one.Change, 0) || math.IsNaN(one.Change) {
		return "from nothing"
	}
	sign := ""
	if one.Change > 0 {
		sign = "+"
	}
	digits := 1
	if math.Abs(one.Change) >= 0.1 {
		digits = 0
	}
	return sign + layout.Fixed(100*one.Change, digits) + " %"
}

// watchSection is the list of what to watch, the tightest first.
func watchSection(m *decisions.Margins) layout.Section {
	heading := "What to watch, the tightest first"
	if !m.Met {
		heading = "What would have to change, the nearest first"
	}
	t := &layout.Table{Columns: []layout.Column{layout.Words("parameter"), layout.Figures("today", "today"), layout.Figures("limit", "limit"),
		layout.Aside(layout.Confidence(m.Confidence) + " interval"), layout.Figures("change", "change"), layout.Drawn("unit"),
		layout.Hidden("tried up to", "reach"), layout.Hidden("good there", "good_per_shift_at_reach"), layout.Hidden("refused", "refused")}}
	for i := range m.List {
		one := &m.List[i]
		unit := one.Today.Unit()
		row := []layout.Cell{layout.Word(one.Path), layout.Shown(plainNumber(one.Today.Number()), one.Today.Number()).In(unit)}
		if one.Found {
			t.Add(append(row, layout.Value(limitNumber(one), one.At).In(unit), layout.Word(limitBand(one)), layout.Shown(changeWords(one), 100*one.Change).In("%"), layout.Word(unit))...)
			continue
		}
		t.Add(append(row, layout.Unseen().In(unit), layout.Unseen(), layout.Unseen().In("%"), layout.Word(unit), layout.Word(one.Reach.String()),
			layout.Estimate(one.Best).In(cartonsAShift), layout.Word(one.Refused))...)
	}
	return layout.Section{Key: "margin", Heading: heading, Table: t}
}

// plainNumber prints a number as a file has it.
func plainNumber(x float64) string { return fmt.Sprintf("%.9g", x) }

// marginNotes are the caveats.
func marginNotes(m *decisions.Margins) []string {
	notes := []string{"Each parameter is moved alone, from a tenth of its value to ten times it; two that drift together leave less room"}
	for i := inAnswer(m); i < len(m.List); i++ {
		if one := &m.List[i]; !one.Found {
			notes = append(notes, "~ "+marginSentence(m, one))
		}
	}
	if m.Fixed {
		return append(notes, "exact: nothing is left to chance; one more in the last digit crosses the threshold, in whole cartons")
	}
	return append(notes, "Every value is run on the same shifts; an interval holds the limits that these shifts leave open")
}
