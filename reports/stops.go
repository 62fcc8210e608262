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
	s := layout.Section{Heading: "Stops by cause, a shift"}
	t := &table{columns: []column{left("where"), left("cause"), right("stops"), right("±"), right("seen"),
		right("await,\nmin"), right("clear,\nmin"), right("cartons\nlost")}}
	stops := slices.Clone(f.Stops)
	slices.SortStableFunc(stops, func(a, b scenarios.StopForecast) int { return cmp.Compare(b.CartonsLost, a.CartonsLost) })
	for _, stop := range stops {
		t.add(stopCells(stop, n.mark("stop "+stop.Where+"/"+stop.Cause))...)
	}
	s.Table = t.laidOut()
	if len(stops) > 0 {
		s.Text = []string{crewWords(f) + n.mark("crew")}
	}
	s.Notes = n.take()
	return s
}

func stopCells(stop scenarios.StopForecast, mark string) []string {
	cause := stop.Cause + mark
	if stop.Seen == 0 {
		return []string{stop.Where, cause, layout.None, layout.None, "0", layout.None, layout.None, layout.None}
	}
	return []string{stop.Where, cause, layout.Fixed(stop.PerShift.Mean, 2), exactWidth(stop.PerShift), fmt.Sprint(stop.Seen),
		layout.Fixed(stop.AwaitingMinutes, 1), layout.Fixed(stop.ClearingMinutes, 1), layout.Fixed(stop.CartonsLost, 0)}
}

func crewWords(f *scenarios.Forecast) string {
	if f.Attendants == 0 {
		return "An attendant is always free: the crew has no limit"
	}
	iv := layout.InPercent(f.CrewLoad)
	return fmt.Sprintf("%s, on calls %s %% of the time%s", quantity.FormatCount(int64(f.Attendants), "attendant"),
		layout.Mean(iv), bounds(iv, "", " %"))
}
