package reports

import (
	"fmt"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// waitsShown is how many causes of waiting a station shows; the rest are summed.
const waitsShown = 3

// waitSection says who made whom wait.
func waitSection(f *scenarios.Forecast) layout.Section {
	s := layout.Section{Heading: "Who made whom wait, minutes a shift"}
	t := &table{columns: []column{left("station"), left("state"), right("min"), left("because of"), left("cause")}}
	for _, st := range f.Stations {
		addWaits(t, st)
	}
	s.Table = t.laidOut()
	return s
}

func addWaits(t *table, st scenarios.StationForecast) {
	others, minutes := 0, 0.0
	for _, wait := range st.Waits {
		switch {
		case wait.Minutes < 0.05:
		case others == 0 && shownOf(t, st.Name) < waitsShown:
			t.add(st.Name, wait.State.String(), layout.Fixed(wait.Minutes, 1), wait.Where, wait.What)
		default:
			others++
			minutes += wait.Minutes
		}
	}
	if others > 0 {
		t.add(st.Name, "both", layout.Fixed(minutes, 1), fmt.Sprintf("%d more", others), "")
	}
}

func shownOf(t *table, name string) int {
	n := 0
	for _, row := range t.rows {
		if row[0] == name {
			n++
		}
	}
	return n
}
