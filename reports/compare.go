package reports

import (
	"fmt"
	"io"
	"math"

	"dwellcast/scenarios/decisions"
)

// Comparison writes what each case would change about the base. Style matters to the table format only.
func Comparison(w io.Writer, c *decisions.Comparison, origin Origin, format Format, style Style) error {
	return report{
		page: func(Style) *page { return comparisonPage(c, origin) },
		json: func() error { return comparisonJSON(w, c, origin) },
		csv:  func() error { return comparisonCSV(w, c) },
	}.write(w, format, style)
}

func comparisonPage(c *decisions.Comparison, origin Origin) *page {
	n := notesOf(c.Warnings)
	p := &page{title: titleOf(c.Title)}
	p.add(n.answer(comparisonAnswer(c)))
	p.add(section{heading: "Why: who limits the line, and which losses moved", text: bottleneckWords(c), table: moveTable(c)})
	p.add(caseSection(c))
	p.add(section{heading: "The cases", table: changeTable(c)})
	p.add(section{heading: "Notes", notes: append(comparisonNotes(c), n.rest()...)})
	p.add(origin.foot(mostShifts(c), c.Seed, c.Spec.Confidence))
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
func caseSection(c *decisions.Comparison) section {
	t := &table{columns: []column{left("case"), right("good"), right("differ-\nence"), right("interval"), right("%"),
		right("shifts\nwon %"), right("equal\n%"), right("odds %"), right("shifts")}}
	t.add("base", mean(c.Base.GoodPerShift.Interval), "", "", "", "", "", "", fmt.Sprint(c.Base.Replications))
	for _, r := range c.Cases {
		t.add(r.Name+refusedMark(r.Refused), mean(r.Case.GoodPerShift.Interval), difference(r), band(r.Difference), differencePercent(r), fixed(100*r.Better.Mean, 0),
			fixed(100*r.Equal, 0), oddsWords(r), fmt.Sprint(r.Replications))
	}
	level := confidence(c.Spec.Confidence)
	return section{heading: "The numbers, good cartons a shift", table: t, notes: []string{
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
		return none
	}
	return withSign(r.Difference.Mean, decimals(r.Difference.HalfWidth()))
}

func differencePercent(r decisions.CaseResult) string {
	base := r.Base.GoodPerShift.Mean
	if !r.Shows || base == 0 {
		return none
	}
	return withSign(100*r.Difference.Mean/base, decimals(100*r.Difference.HalfWidth()/base))
}

// withSign prints a number with its sign.
func withSign(x float64, digits int) string {
	text := fixed(x, digits)
	if x > 0 {
		return "+" + text
	}
	return text
}

// oddsWords prints a probability in percent, never as certain.
func oddsWords(r decisions.CaseResult) string {
	switch {
	case math.IsNaN(r.Odds), r.SD == 0 && r.Difference.Mean == 0:
		return none
	case r.Odds < 0.001:
		return "<0.1"
	case r.Odds > 0.999:
		return ">99.9"
	}
	return fixed(100*r.Odds, 1)
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
