package reports

import (
	"fmt"
	"io"
	"math"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Comparison writes what each case would change about the base. Style matters to the table format only.
func Comparison(w io.Writer, c *decisions.Comparison, origin Origin, format Format, style Style) error {
	return report{
		page: func(Style) *layout.Page { return comparisonPage(c, origin) },
		json: func() error { return comparisonJSON(w, c, origin) },
		csv:  func() error { return comparisonCSV(w, c) },
	}.write(w, format, style)
}

func comparisonPage(c *decisions.Comparison, origin Origin) *layout.Page {
	n := notesOf(c.Warnings)
	p := &layout.Page{Title: titleOf(c.Title)}
	p.Add(n.answer(comparisonAnswer(c)))
	p.Add(layout.Section{Heading: "Why: who limits the line, and which losses moved", Text: bottleneckWords(c), Table: moveTable(c).laidOut()})
	p.Add(caseSection(c))
	p.Add(layout.Section{Heading: "The cases", Table: changeTable(c).laidOut()})
	p.Add(layout.Section{Heading: "Notes", Notes: append(comparisonNotes(c), n.rest()...)})
	p.Add(origin.foot(mostShifts(c), c.Seed, c.Spec.Confidence))
	return p
}

// mostShifts is how many shifts the case with the most rests on.
func mostShifts(c *decisions.Comparison) int {
	most := 0
	for _, r := range c.Cases {
		most = max(most, r.Replications)
	}
	return most
}

// caseSection is the table of all cases against the base.
func caseSection(c *decisions.Comparison) layout.Section {
	t := &table{columns: []column{left("case"), right("good"), right("differ-\nence"), right("interval"), right("%"),
		right("shifts\nwon %"), right("equal\n%"), right("odds %"), right("shifts")}}
	t.add("base", layout.Mean(c.Base.GoodPerShift.Interval), "", "", "", "", "", "", fmt.Sprint(c.Base.Replications))
	for _, r := range c.Cases {
		t.add(r.Name+refusedMark(r.Refused), layout.Mean(r.Case.GoodPerShift.Interval), difference(r), layout.Band(r.Difference), differencePercent(r), layout.Fixed(100*r.Better.Mean, 0),
			layout.Fixed(100*r.Equal, 0), oddsWords(r), fmt.Sprint(r.Replications))
	}
	level := layout.Confidence(c.Spec.Confidence)
	return layout.Section{Heading: "The numbers, good cartons a shift", Table: t.laidOut(), Notes: []string{
		"interval: of the difference, shift by shift, at " + level + " over all cases together (Holm's levels). won: shifts in which the case makes " +
			"more than the base on the same luck. odds: that it makes more on average. ~: no difference shows. (!): beyond a limit",
	}}
}

// refusedMark stands behind what is beyond a limit.
func refusedMark(refused string) string {
	if refused == "" {
		return ""
	}
	return " (!)"
}

// difference prints a difference, or ~ where none shows.
func difference(r decisions.CaseResult) string {
	if !r.Shows {
		return layout.None
	}
	return withSign(r.Difference.Mean, layout.Decimals(r.Difference.HalfWidth()))
}

func differencePercent(r decisions.CaseResult) string {
	base := r.Base.GoodPerShift.Mean
	if !r.Shows || base == 0 {
		return layout.None
	}
	return withSign(100*r.Difference.Mean/base, layout.Decimals(100*r.Difference.HalfWidth()/base))
}

// withSign prints a number with its sign.
func withSign(x float64, digits int) string {
	text := layout.Fixed(x, digits)
	if x > 0 {
		return "+" + text
	}
	return text
}

// oddsWords prints a probability in percent, never as certain.
func oddsWords(r decisions.CaseResult) string {
	switch {
	case math.IsNaN(r.Odds), r.SD == 0 && r.Difference.Mean == 0:
		return layout.None
	case r.Odds < 0.001:
		return "<0.1"
	case r.Odds > 0.999:
		return ">99.9"
	}
	return layout.Fixed(100*r.Odds, 1)
}

// changeTable says what each case is.
func changeTable(c *decisions.Comparison) *table {
	t := &table{columns: []column{left("case"), left("changes")}}
	for _, r := range c.Cases {
		for i, change := range r.Changes {
			name := r.Name
			if i > 0 {
				name = ""
			}
			t.add(name, change)
		}
	}
	return t
}
