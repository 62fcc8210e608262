package reports

import (
	"cmp"
	"fmt"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// stopSection lists stops and reloads by cause, the dearest first, and how busy the crew is with them.
func stopSection(f *scenarios.Forecast, n *notes) section {
	s := section{heading: "Stops by cause, a shift"}
	t := &table{columns: []column{left("where"), left("cause"), right("stops"), right("±"), right("seen"),
		right("await,\nmin"), right("clear,\nmin"), right("cartons\nlost")}}
	stops := slices.Clone(f.Stops)
	slices.SortStableFunc(stops, func(a, b scenarios.StopForecast) int { return cmp.Compare(b.CartonsLost, a.CartonsLost) })
	for _, stop := range stops {
		t.add(stopCells(stop, n.mark("stop "+stop.Where+"/"+stop.Cause))...)
	}
	s.table = t
	if len(stops) > 0 {
		s.text = []string{crewWords(f) + n.mark("crew")}
	}
	s.notes = n.take()
	return s
}

func stopCells(stop scenarios.StopForecast, mark string) []string {
	cause := stop.Cause + mark
	if stop.Seen == 0 {
		return []string{stop.Where, cause, none, none, "0", none, none, none}
	}
	return []string{stop.Where, cause, fixed(stop.PerShift.Mean, 2), exactWidth(stop.PerShift), fmt.Sprint(stop.Seen),
		fixed(stop.AwaitingMinutes, 1), fixed(stop.ClearingMinutes, 1), fixed(stop.CartonsLost, 0)}
}

func crewWords(f *scenarios.Forecast) string {
	if f.Attendants == 0 {
		return "An attendant is always free: the crew has no limit"
	}
	iv := inPercent(f.CrewLoad)
	return fmt.Sprintf("%s, on calls %s %% of the time%s", quantity.FormatCount(int64(f.Attendants), "attendant"),
		mean(iv), bounds(iv, "", " %"))
}
