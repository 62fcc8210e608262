package reports

import (
	"cmp"
	"fmt"
	"slices"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// stopSection lists stops and reloads by cause, the dearest first, and how busy the crew is with them.
func stopSection(f *scenarios.Forecast, n *notes) layout.Section {
	s := layout.Section{Key: "stop", Heading: "Stops by cause, a shift"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("cause"), layout.Figures("stops", "per_shift"), layout.Aside("±"),
		layout.Figures("seen", "seen"), layout.Figures("await,\nmin", "awaiting"), layout.Figures("clear,\nmin", "clearing"),
		layout.Figures("cartons\nlost", "cartons_lost"), layout.Hidden("is", "is")}}
	stops := slices.Clone(f.Stops)
	slices.SortStableFunc(stops, func(a, b scenarios.StopForecast) int { return cmp.Compare(b.CartonsLost, a.CartonsLost) })
	for _, stop := range stops {
		t.Add(stopCells(stop, n.mark("stop "+stop.Where+"/"+stop.Cause))...)
	}
	s.Table = t
	if len(stops) > 0 {
		s.Text = []string{crewWords(f) + n.mark("crew")}
	}
	s.Notes = n.take()
	return s
}

func stopCells(stop scenarios.StopForecast, mark string) []layout.Cell {
	is := "stop"
	if stop.Reload {
		is = "reload"
	}
	names := []layout.Cell{layout.Word(stop.Where), layout.Word(stop.Cause).Marked(mark)}
	if stop.Seen == 0 {
		return append(names, layout.Unseen(), layout.Unseen(), layout.Count(0), layout.Unseen(), layout.Unseen(), layout.Unseen(), layout.Word(is))
	}
	return append(names, layout.Value(layout.Fixed(stop.PerShift.Mean, 2), stop.PerShift).In("1/shift"), layout.HalfWidth(stop.PerShift), layout.Count(stop.Seen),
		layout.Number(stop.AwaitingMinutes, 1).In("min/shift"), layout.Number(stop.ClearingMinutes, 1).In("min/shift"),
		layout.Number(stop.CartonsLost, 0).In(cartonsAShift), layout.Word(is))
}

func crewWords(f *scenarios.Forecast) string {
	if f.Attendants == 0 {
		return "An attendant is always free: the crew has no limit"
	}
	iv := layout.InPercent(f.CrewLoad)
	return fmt.Sprintf("%s, on calls %s %% of the time%s", quantity.FormatCount(int64(f.Attendants), "attendant"),
		layout.Mean(iv), bounds(iv, "", " %"))
}
