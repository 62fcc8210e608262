package reports

import (
	"io"
	"math"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Comparison writes what each case would change about the base. Style matters to the table format only.
func Comparison(w io.Writer, c *decisions.Comparison, origin Origin, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return comparisonPage(c, origin) },
		json:   func() error { return comparisonJSON(w, c, origin) },
		charts: func() []chart.Chart { return []chart.Chart{ComparisonChart(c, origin)} },
	}.write(w, format, style)
}

func comparisonPage(c *decisions.Comparison, origin Origin) *layout.Page {
	n := notesOf(c.Warnings)
	p := &layout.Page{Title: titleOf(c.Title)}
	p.Add(n.answer(comparisonAnswer(c)))
	p.Add(layout.Section{Key: "move", Limits: true, Heading: "Why: who limits the line, and which losses moved", Text: bottleneckWords(c), Table: moveTable(c)})
	p.Add(caseSection(c))
	p.Add(layout.Section{Key: "change", Heading: "The cases", Table: changeTable(c)})
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
	t := &layout.Table{Columns: []layout.Column{layout.Words("case"), layout.Figures("good", "good_per_shift"), layout.Figures("differ-\nence", "difference"),
		layout.Aside("interval"), layout.Aside("%"), layout.Figures("shifts\nwon %", "shifts_better"), layout.Figures("equal\n%", "shifts_equal"),
		layout.Figures("odds %", "probability_better"), layout.Figures("shifts", "shifts"), layout.Hidden("difference alone", "difference_alone"), layout.Hidden("p (Holm)", "p_holm"),
		layout.Hidden("shifts to show the smallest", "shifts_to_show_smallest"), layout.Hidden("bottleneck", "bottleneck"), layout.Hidden("refused", "refused")}}
	t.Add(layout.Word("base"), layout.Estimate(c.Base.GoodPerShift.Interval).In(cartonsAShift), layout.Blank, layout.Blank, layout.Blank, layout.Blank, layout.Blank,
		layout.Blank, layout.Count(c.Base.Replications), layout.Blank, layout.Blank, layout.Blank, layout.Blank, layout.Word(c.BaseRefused))
	for i := range c.Cases {
		t.Add(caseCells(&c.Cases[i])...)
	}
	level := layout.Confidence(c.Spec.Confidence)
	return layout.Section{Key: "case", Heading: "The numbers, good cartons a shift", Table: t, Notes: []string{
		"interval: of the difference, shift by shift, at " + level + " over all cases together (Holm's levels). won: shifts in which the case makes " +
			"more than the base on the same luck. odds: that it makes more on average. ~: no difference shows. (!): beyond a limit",
	}}
}

// caseCells are the figures of a case.
func caseCells(r *decisions.CaseResult) []layout.Cell {
	needed := layout.Unseen() // out of reach
	if r.Needed > 0 {
		needed = layout.Count(r.Needed)
	}
	return []layout.Cell{layout.Word(r.Name).Marked(refusedMark(r.Refused)), layout.Estimate(r.Case.GoodPerShift.Interval).In(cartonsAShift),
		layout.Value(difference(*r), r.Difference).In(cartonsAShift), layout.Word(layout.Band(r.Difference)), layout.Word(differencePercent(*r)),
		layout.Estimate(layout.InPercent(r.Better)).To(0).In("%"), layout.Number(100*r.Equal, 0).In("%"), layout.Shown(oddsWords(*r), 100*r.Odds).In("%"),
		layout.Count(r.Replications), layout.Estimate(r.Alone).In(cartonsAShift), layout.Number(r.AdjustedP, 4), needed, layout.Word(r.To.Name), layout.Word(r.Refused)}
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
func changeTable(c *decisions.Comparison) *layout.Table {
	t := &layout.Table{Columns: []layout.Column{layout.Words("case"), layout.Told("changes", "changes")}}
	for _, r := range c.Cases {
		for i, change := range r.Changes {
			name := layout.Word(r.Name)
			if i > 0 {
				name = name.Again()
			}
			t.Add(name, layout.Word(change))
		}
	}
	return t
}
