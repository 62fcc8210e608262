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
	s := layout.Section{Key: "call", Heading: "Calls on the crew, an hour of running at that rate"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("what"), layout.Figures("calls", "per_hour"), layout.Figures("each takes", "takes"),
		layout.Figures("work", "work"), layout.Figures("of one, %", "load")}}
	calls := slices.Clone(b.Crew.Calls)
	slices.SortStableFunc(calls, func(a, c scenarios.CallBudget) int { return cmp.Compare(c.Seconds(), a.Seconds()) })
	for _, call := range calls {
		what := call.What
		if call.Reload {
			what = "reload " + what
		}
		name := nameOf(b, call.Station)
		work, load := layout.Shown(layout.Fixed(call.Seconds(), 0)+" s", call.Seconds()).In("s/h"), layout.Number(100*call.Share(), 1).In("%")
		if !call.Attended {
			work, load = layout.Word("by itself"), layout.Word("-")
		}
		t.Add(layout.Word(name), layout.Word(what).Marked(n.mark("stop "+name+"/"+call.What)), layout.Number(call.PerHour, 2).In("1/h"),
			inSeconds(call.Takes.Round(100*time.Millisecond)), work, load)
	}
	mark := n.mark("crew")
	if len(calls) > 0 {
		s.Text = []string{crewLoadWords(b.Crew) + mark}
	}
	s.Table, s.Notes = t, n.take()
	return s
}

func crewLoadWords(c scenarios.CrewBudget) string {
	work := layout.Fixed(c.Seconds, 0) + " s of work an hour, reaction included"
	if c.Attendants == 0 {
		return work
	}
	return layout.Fixed(100*c.Load, 1) + " % of the time of " + quantity.FormatCount(int64(c.Attendants), "attendant") + ": " + work
}
