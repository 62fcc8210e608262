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
	s := layout.Section{Key: "station", Heading: "What each station did, % of scheduled time"}
	kind := layout.Told("kind", "kind")
	kind.Hidden = !style.Wide()
	t := &layout.Table{Columns: []layout.Column{layout.Words("station"), kind}}
	for state := range stations.NumStates {
		head := narrowHeads[state]
		if style.Wide() {
			head = state.String()
		}
		t.Columns = append(t.Columns, layout.Figures(head, state.String()))
	}
	t.Columns = append(t.Columns, layout.Hidden("units", "units"), layout.Hidden("bottleneck share", "bottleneck_share"), layout.Hidden("acts", "acts"),
		layout.Hidden("misses", "misses"), layout.Hidden("rejects", "rejects"))
	for _, st := range f.Stations {
		row := []layout.Cell{layout.Word(st.Name).Marked(n.mark("station " + st.Name)), layout.Word(kindWords(st))}
		for state := range stations.NumStates {
			row = append(row, layout.Percent(st.Shares[state]))
		}
		t.Add(append(row, layout.Count(st.Units), layout.Percent(st.BottleneckShare), layout.Exact(st.Acts).In("1/shift"), layout.Exact(st.Misses).In("1/shift"),
			layout.Exact(st.Rejects).In(cartonsAShift))...)
	}
	s.Table, s.Notes = t, n.take()
	return s
}

func kindWords(st scenarios.StationForecast) string {
	if st.Units > 1 {
		return st.Kind + " x " + layout.Exactly(float64(st.Units))
	}
	return st.Kind
}
