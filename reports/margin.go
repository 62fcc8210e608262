package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// Margin writes how far parameters may go. Style matters to the table format only.
func Margin(w io.Writer, m *decisions.Margins, origin Origin, format Format, style Style) error {
	return report{
		page: func(Style) *page { return marginPage(m, origin) },
		json: func() error { return marginJSON(w, m, origin) },
		csv:  func() error { return marginCSV(w, m) },
	}.write(w, format, style)
}

func marginPage(m *decisions.Margins, origin Origin) *page {
	n := notesOf(m.Warnings)
	p := &page{title: titleOf(m.Title)}
	p.add(section{answer: true, text: marginAnswer(m)})
	p.add(watchSection(m))
	p.add(section{heading: "Notes", notes: append(marginNotes(m), n.rest()...)})
	p.add(origin.foot(m.Replications, m.Seed, m.Confidence))
	return p
}

// thresholdWords says what must hold.
func thresholdWords(m *decisions.Margins) string {
	switch {
	case m.Chance > 0:
		return fmt.Sprintf("%s good cartons a shift with a chance of %s", exactly(m.Target), quantity.FormatRatio(m.Chance))
	case m.Target > 0:
		return fmt.Sprintf("%s good cartons a shift on average", exactly(m.Target))
	}
	return fmt.Sprintf("%s of today's good output, %s cartons a shift", quantity.FormatRatio(m.Keep), fixed(m.Keep*m.Today.Mean, 0))
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
	words := fmt.Sprintf("Today: %s good cartons a shift%s", mean(m.Today), bounds(m.Today, "", ""))
	if m.Target > 0 {
		words += fmt.Sprintf(", the target made in %s of shifts%s", chanceWords(m.Made), bounds(inPercent(m.Made), "", " %"))
	}
	return words
}

// marginSentence says how far one parameter may go.
func marginSentence(m *decisions.Margins, one *decisions.Margin) string {
	switch {
	case m.Met && one.Found:
		return fmt.Sprintf("%s may %s from %s to %s (%s) before the line falls below %s", one.Path, direction(one), one.Today, farWords(one), changeWords(one), thresholdWords(m))
	case m.Met:
		return fmt.Sprintf("%s never limits: even at %s%s the line makes %s cartons a shift", one.Path, one.Reach, edgeWords(one), mean(one.Best))
	case one.Found:
		return fmt.Sprintf("%s would have to %s from %s to %s (%s)", one.Path, direction(one), one.Today, farWords(one), changeWords(one))
	case m.Chance > 0:
		return fmt.Sprintf("%s alone can't bring it there: the best in reach is a chance of %s, at %s%s", one.Path, chanceWords(one.BestMade), one.Reach, edgeWords(one))
	}
	return fmt.Sprintf("%s alone can't bring it there: the best in reach is %s cartons a shift, at %s%s", one.Path, mean(one.Best), one.Reach, edgeWords(one))
}

func direction(one *decisions.Margin) string {
	if one.Grows {
		return "grow"
	}
	return "shrink"
}

func edgeWords(one *decisions.Margin) string {
	if one.Edge {
		return ", as far as the file allows,"
	}
	return ""
}

// farWords is the limit to the digits that its interval supports.
func farWords(one *decisions.Margin) string {
	if !one.At.Assessed() || one.At.HalfWidth() == 0 {
		return limitText(one, one.At.Mean, 9)
	}
	return strings.TrimSpace(fixed(one.At.Mean, placeDecimals(one.At)) + " " + one.Today.Unit())
}

func limitText(one *decisions.Margin, x float64, digits int) string {
	return strings.TrimSpace(fmt.Sprintf("%.*g %s", digits, x, one.Today.Unit()))
}

// limitBand is the interval of a limit.
func limitBand(one *decisions.Margin) string {
	iv := one.At
	switch {
	case math.IsInf(iv.High, 1) && math.IsInf(iv.Low, -1):
		return none
	case math.IsInf(iv.High, 1):
		return "from " + limitText(one, iv.Low, 4)
	case math.IsInf(iv.Low, -1):
		return "to " + limitText(one, iv.High, 4)
	case iv.HalfWidth() == 0:
		return "exact"
	}
	d := placeDecimals(iv)
	return fixed(iv.Low, d) + " to " + fixed(iv.High, d)
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
	return sign + fixed(100*one.Change, digits) + " %"
}

// watchSection is the list of what to watch, the tightest first.
func watchSection(m *decisions.Margins) section {
	heading := "What to watch, the tightest first"
	if !m.Met {
		heading = "What would have to change, the nearest first"
	}
	t := &table{columns: []column{left("parameter"), right("today"), right("limit"), right(confidence(m.Confidence) + " interval"), right("change"), left("unit")}}
	for i := range m.List {
		one := &m.List[i]
		if !one.Found {
			t.add(one.Path, plainNumber(one.Today.Number()), none, none, none, one.Today.Unit())
			continue
		}
		t.add(one.Path, plainNumber(one.Today.Number()), strings.TrimSpace(strings.TrimSuffix(farWords(one), one.Today.Unit())), limitBand(one), changeWords(one), one.Today.Unit())
	}
	return section{heading: heading, table: t}
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
		return append(notes, "Nothing in this line is left to chance: the limits are exact, for a shift of whole cartons")
	}
	return append(notes, "Every value is run on the same shifts; an interval holds the limits that these shifts leave open")
}
