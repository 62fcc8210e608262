package reports

import (
	"dwellcast/scenarios"
	"dwellcast/stations"

	"dwellcast/reports/layout"
)

// narrowHeads breaks the names of states so that nine columns fit 80 characters.
var narrowHeads = [stations.NumStates]string{
	"work-\ning", "paced", "inter-\nlocked", "star-\nved", "block-\ned", "await-\ning", "clear-\ning", "reload-\ning", "plan-\nned",
}

// shareSection says what each station did, in percent of scheduled time.
func shareSection(f *scenarios.Forecast, n *notes, style Style) layout.Section {
	s := layout.Section{Heading: "What each station did, % of scheduled time"}
	t := &table{columns: []column{left("station")}}
	if style.Wide() {
		t.columns = append(t.columns, left("kind"))
	}
	for state := range stations.NumStates {
		head := narrowHeads[state]
		if style.Wide() {
			head = state.String()
		}
		t.columns = append(t.columns, right(head))
	}
	for _, st := range f.Stations {
		name := st.Name + n.mark("station "+st.Name)
		if style.Wide() {
			t.add(append([]string{name, kindWords(st)}, shareCells(st)...)...)
			continue
		}
		t.add(append([]string{name}, shareCells(st)...)...)
	}
	s.Table, s.Notes = t.laidOut(), n.take()
	return s
}

func kindWords(st scenarios.StationForecast) string {
	if st.Units > 1 {
		return st.Kind + " x " + layout.Exactly(float64(st.Units))
	}
	return st.Kind
}

func shareCells(st scenarios.StationForecast) []string {
	var cells []string
	for state := range stations.NumStates {
		cells = append(cells, percent(st.Shares[state].Mean))
	}
	return cells
}
