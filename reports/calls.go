package reports

import (
	"cmp"
	"slices"
	"time"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// callSection says how much work stops and reloads bring.
func callSection(b *scenarios.Budget, n *notes) layout.Section {
	s := layout.Section{Heading: "Calls on the crew, an hour of running at that rate"}
	t := &table{columns: []column{left("where"), left("what"), right("calls"), right("each takes"), right("work"), right("of one, %")}}
	calls := slices.Clone(b.Crew.Calls)
	slices.SortStableFunc(calls, func(a, c scenarios.CallBudget) int { return cmp.Compare(c.Seconds(), a.Seconds()) })
	for _, call := range calls {
		what := call.What
		if call.Reload {
			what = "reload " + what
		}
		name := nameOf(b, call.Station)
		work, share := layout.Fixed(call.Seconds(), 0)+" s", layout.Fixed(100*call.Share(), 1)
		if !call.Attended {
			work, share = "by itself", "-"
		}
		t.add(name, what+n.mark("stop "+name+"/"+call.What), layout.Fixed(call.PerHour, 2), cycleTime(call.Takes.Round(100*time.Millisecond)), work, share)
	}
	mark := n.mark("crew")
	if len(calls) > 0 {
		s.Text = []string{crewLoadWords(b.Crew) + mark}
	}
	s.Table, s.Notes = t.laidOut(), n.take()
	return s
}

func crewLoadWords(c scenarios.CrewBudget) string {
	work := layout.Fixed(c.Seconds, 0) + " s of work an hour, reaction included"
	if c.Attendants == 0 {
		return work
	}
	return layout.Fixed(100*c.Load, 1) + " % of the time of " + quantity.FormatCount(int64(c.Attendants), "attendant") + ": " + work
}
