package reports

import (
	"time"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/sim/random"
)

// partSection says at what value of each part the critical station changes.
func partSection(b *scenarios.Budget) layout.Section {
	s := layout.Section{Heading: "Where the critical station changes, one part at a time"}
	t := &table{columns: []column{left("station"), left("part"), right("takes"), left("drawn from"), left("critical station changes")}}
	for _, part := range b.Sections {
		for _, st := range part.Stations {
			for _, p := range st.Parts {
				t.add(nameOf(b, st.Station), p.Name, cycleTime(p.Mean), drawnWords(p), turnWords(st, p))
			}
		}
	}
	s.Table = t.laidOut()
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

func turnWords(st scenarios.StationBudget, p scenarios.PartBudget) string {
	switch {
	case p.Turns <= 0:
		return layout.None
	case st.Critical && p.Turns < p.Mean-time.Millisecond/2:
		return "below " + cycleTime(p.Turns)
	case st.Critical:
		return "at once: another needs as much"
	}
	return "above " + cycleTime(p.Turns)
}
