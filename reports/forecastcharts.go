package reports

import (
	"fmt"
	"math"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/stations"
)

// ForecastChart draws how the setting comes down to good cartons.
func ForecastChart(f *scenarios.Forecast) chart.Chart {
	good := f.GoodPerShift
	title := fmt.Sprintf("%s of %s cartons are good, %s %%", layout.Mean(good.Interval), layout.Exactly(f.IdealPerShift), layout.Fixed(100*good.Mean/f.IdealPerShift, 1))
	if worst := largestLosses(f, 1); worst != "" {
		title += "; apart from what is planned, most is lost to " + worst
	}
	sheet := sheetOf(f)
	w := chart.Waterfall{Caption: finding(title, f.Title, ranAs(f)), Unit: "cartons a shift", From: idealWords(f), To: "good", Ideal: sheet.ideal, Good: sheet.good}
	for _, step := range sheet.falls() {
		w.Losses = append(w.Losses, chart.Loss{Name: step.name, Value: step.cartons})
	}
	return w
}

// forecastCharts are the pictures of a run: from ideal to good, single shifts against the target, what each station did.
func forecastCharts(f *scenarios.Forecast) []chart.Chart {
	var list []chart.Chart
	if f.IdealPerShift > 0 {
		list = append(list, ForecastChart(f))
	}
	if spreadOf(f) != "" {
		list = append(list, spreadChart(f))
	}
	return append(list, shareChart(f))
}

// spreadChart sets single shifts against the target.
func spreadChart(f *scenarios.Forecast) chart.Chart {
	g := f.GoodPerShift
	title := fmt.Sprintf("Eight shifts in ten make between %s and %s cartons", layout.Fixed(g.P10, 0), layout.Fixed(g.P90, 0))
	c := chart.Ranges{X: chart.Axis{Title: "good output of a shift", Unit: "cartons"}, Rows: []chart.RangeRow{
		{Name: "single shifts: P10, P50, P90", At: g.P50, Low: g.P10, High: g.P90, Words: layout.Fixed(g.P50, 0)},
		{Name: "their mean, " + layout.Confidence(f.Confidence) + " interval", At: g.Mean, Low: g.Low, High: g.High, Words: layout.Mean(g.Interval), Strong: true},
	}}
	if f.Target != nil {
		title += fmt.Sprintf("; the target of %s is made in %s", layout.Exactly(f.Target.PerShift), oddsOf(f.Target.Chance))
		c.References = []chart.Reference{{Label: "target " + layout.Exactly(f.Target.PerShift), At: f.Target.PerShift, Vertical: true}}
	}
	c.Caption = finding(title, f.Title, ranAs(f))
	return c
}

// shareChart shows what each station did; who holds most of the bottleneck is marked.
func shareChart(f *scenarios.Forecast) chart.Chart {
	c := chart.Shares{Caption: finding(limitSentence(holdersOf(f), f.ByCycles), f.Title, "Shares of scheduled time. "+ranAs(f))}
	for state := range stations.NumStates {
		c.States = append(c.States, state.String())
	}
	most := 0.0
	for _, st := range f.Stations {
		most = math.Max(most, st.BottleneckShare.Mean)
	}
	for _, st := range f.Stations {
		row := chart.ShareRow{Name: st.Name}
		if st.BottleneckShare.Mean == most && most > 0 {
			row.Mark = "limits most"
		}
		sum := 0.0
		for state := range stations.NumStates {
			share := math.Max(st.Shares[state].Mean, 0)
			row.Shares = append(row.Shares, share)
			sum += share
		}
		for i := range row.Shares {
			row.Shares[i] /= sum
		}
		c.Rows = append(c.Rows, row)
	}
	return c
}

// ranAs says on what the figures of a run rest.
func ranAs(f *scenarios.Forecast) string {
	return fmt.Sprintf("%s, seed %d, dwellcast %s", f.Counted(), f.Seed, f.Version)
}
