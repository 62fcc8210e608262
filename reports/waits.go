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
	s := layout.Section{Key: "wait", Heading: "Who made whom wait, minutes a shift"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("station"), layout.Words("state"), layout.Figures("min", "minutes"), layout.Words("because of"),
		layout.Words("cause")}}
	for _, st := range f.Stations {
		addWaits(t, st)
	}
	s.Table = t
	return s
}

func addWaits(t *layout.Table, st scenarios.StationForecast) {
	others, minutes, shown := 0, 0.0, 0
	for _, wait := range st.Waits {
		row := []layout.Cell{layout.Word(st.Name), layout.Word(wait.State.String()), layout.Number(wait.Minutes, 1).In("min/shift"), layout.Word(wait.Where),
			layout.Word(wait.What)}
		switch {
		case wait.Minutes < 0.05:
			t.Spare(row...)
		case others == 0 && shown < waitsShown:
			t.Add(row...)
			shown++
		default:
			t.Spare(row...)
			others++
			minutes += wait.Minutes
		}
	}
	if others > 0 { // in words, since data have them one by one
		t.Add(layout.Word(st.Name), layout.Word("both"), layout.Word(layout.Fixed(minutes, 1)), layout.Word(fmt.Sprintf("%d more", others)), layout.Blank)
	}
}
