package reports

import (
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// budgetFacts are the figures of the line that stand in sentences.
func budgetFacts(b *scenarios.Budget) layout.Section {
	return layout.Facts("line", "",
		fact("title", layout.Word(b.Line.Title)),
		fact("setting", layout.Exact(b.Line.Setting).In("cartons/h")),
		fact("pace", inSeconds(b.Pace)),
		fact("undisturbed_rate", layout.Number(b.Rate, 0).In("cartons/h")),
		fact("limit", layout.Word(limitNames[b.Limit.Kind])),
		fact("setting_ceiling", layout.Number(b.Ceiling, 0).In("cartons/h")),
		fact("crew_work", layout.Number(b.Crew.Seconds, 0).In("s/h")),
		fact("crew_load", layout.Share(b.Crew.Load)))
}

// sectionFacts are the cycles of what moves on its own, for data.
func sectionFacts(b *scenarios.Budget) layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Words("section"), layout.Figures("cycle", "cycle"), layout.Figures("expected cycle", "expected_cycle"),
		layout.Figures("index", "index"), layout.Figures("revolution", "revolution"), layout.Figures("rate", "rate")}}
	for _, s := range b.Sections {
		t.Add(layout.Word(sectionName(b, s)), inSeconds(s.Cycle), inSeconds(s.Expected), inSeconds(s.Index), inSeconds(s.Revolution),
			layout.Number(s.Rate, 0).In("cartons/h"))
	}
	return layout.Section{Key: "section", Heading: "sections", Data: true, Table: t}
}
