package reports

import (
	"time"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/sim/random"
)

// partSection says at what value of each part the critical station changes.
func partSection(b *scenarios.Budget) layout.Section {
	s := layout.Section{Key: "part", Heading: "Where the critical station changes, one part at a time"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("station"), layout.Words("part"), layout.Figures("takes", "takes"), layout.Told("drawn from", "drawn"),
		layout.Told("critical station changes", "critical_changes")}}
	for _, part := range b.Sections {
		for _, st := range part.Stations {
			for _, p := range st.Parts {
				t.Add(layout.Word(nameOf(b, st.Station)), layout.Word(p.Name), inSeconds(p.Mean), layout.Word(drawnWords(p)), turnCell(st, p))
			}
		}
	}
	s.Table = t
	return s
}

func drawnWords(p scenarios.PartBudget) string {
	if !p.Drawn {
		return "always"
	}
	if p.High >= random.Longest {
		return cycleTime(p.Low) + " up"
	}
	return cycleTime(p.Low) + " to " + cycleTime(p.High)
}

// turnCell is the value of a part at which another station becomes critical.
func turnCell(st scenarios.StationBudget, p scenarios.PartBudget) layout.Cell {
	words := "above " + cycleTime(p.Turns)
	switch {
	case p.Turns <= 0:
		return layout.Unseen().In("s")
	case st.Critical && p.Turns < p.Mean-time.Millisecond/2:
		words = "below " + cycleTime(p.Turns)
	case st.Critical:
		words = "at once: another needs as much"
	}
	return layout.Shown(words, p.Turns.Seconds()).In("s")
}
