package reports

import (
	"fmt"
	"io"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// ExplainedForecast writes what a run says of a line, and then what limits it, by what would change if something were otherwise.
// Style matters to the table format only.
func ExplainedForecast(w io.Writer, f *scenarios.Forecast, x *decisions.Explanation, origin Origin, format Format, style Style) error {
	return report{
		page:   func(style Style) *layout.Page { return explainedPage(f, x, origin, style) },
		json:   func() error { return explainedJSON(w, f, x, origin) },
		charts: func() []chart.Chart { return append(forecastCharts(f), explainedCharts(f, x)...) },
	}.write(w, format, style)
}

// explainedPage puts the explanation before the foot of the forecast.
func explainedPage(f *scenarios.Forecast, x *decisions.Explanation, origin Origin, style Style) *layout.Page {
	p := forecastPage(f, style)
	foot := p.Sections[len(p.Sections)-1]
	p.Sections = p.Sections[:len(p.Sections)-1]
	p.Add(speedSection(x))
	p.Add(worthSection(x))
	foot.Notes = append([]string{fmt.Sprintf("Explained on %s of each line, in pairs with the same luck; repeat it: %s",
		quantity.FormatCount(int64(x.Replications), "shift"), origin.Line)}, foot.Notes...)
	p.Add(foot)
	return p
}

// explainedCharts are the pictures of an explanation; none where nothing can be left out.
func explainedCharts(f *scenarios.Forecast, x *decisions.Explanation) []chart.Chart {
	if len(x.Worths) == 0 {
		return nil
	}
	return []chart.Chart{WorthChart(x, f)}
}
