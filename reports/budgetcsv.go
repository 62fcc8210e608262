package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

func budgetCSV(w io.Writer, b *scenarios.Budget) error {
	s := newSheet()
	s.text("line", "", "title", b.Line.Title, "")
	s.figure("line", "", "setting", b.Line.Setting, "cartons/h")
	s.figure("line", "", "pace", b.Pace.Seconds(), "s")
	s.figure("line", "", "undisturbed_rate", b.Rate, "cartons/h")
	s.text("line", "", "limit", limitNames[b.Limit.Kind], "")
	s.figure("line", "", "setting_ceiling", b.Ceiling, "cartons/h")
	for _, section := range b.Sections {
		name := sectionName(b, section)
		s.figure("section", name, "cycle", section.Cycle.Seconds(), "s")
		s.figure("section", name, "expected_cycle", section.Expected.Seconds(), "s")
		s.figure("section", name, "index", section.Index.Seconds(), "s")
		s.figure("section", name, "revolution", section.Revolution.Seconds(), "s")
		s.figure("section", name, "rate", section.Rate, "cartons/h")
		for _, st := range section.Stations {
			csvStationTime(s, b, st)
		}
	}
	for _, call := range b.Crew.Calls {
		s.figure("call", nameOf(b, call.Station)+"/"+call.What, "per_hour", call.PerHour, "1/h")
		s.figure("call", nameOf(b, call.Station)+"/"+call.What, "work", call.Seconds(), "s/h")
	}
	s.figure("crew", "", "work", b.Crew.Seconds, "s/h")
	s.figure("crew", "", "load", b.Crew.Load, "1")
	for _, a := range b.Assumptions {
		s.text("assumption", a.Path, "value", valueWords(a), "")
		s.text("assumption", a.Path, "source", a.Source, "")
	}
	s.warnings(b.Warnings)
	s.text("caution", "", "text", caution, "")
	return s.writeTo(w)
}

func csvStationTime(s *sheet, b *scenarios.Budget, st scenarios.StationBudget) {
	name := nameOf(b, st.Station)
	s.figure("station", name, "act", st.Act.Seconds(), "s")
	s.figure("station", name, "needs", st.Needs.Seconds(), "s")
	s.figure("station", name, "slack", st.Slack.Seconds(), "s")
	if st.Critical {
		s.figure("station", name, "relief", st.Relief.Seconds(), "s")
	}
	s.figure("station", name, "setting_ceiling", st.Ceiling, "cartons/h")
	for _, p := range st.Parts {
		s.rows = append(s.rows, []string{"part", name, p.Name, layout.Digits(p.Mean.Seconds()), layout.Digits(p.Low.Seconds()),
			layout.Digits(p.High.Seconds()), "s"})
		if p.Turns > 0 {
			s.figure("critical_changes", name, p.Name, p.Turns.Seconds(), "s")
		}
	}
}
