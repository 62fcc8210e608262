package reports

import (
	"io"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// Forecast writes what a run says of a line. Style matters to the table format only.
//
// A warning is shown at the figure that its About names: good_rate, good_per_shift, target, bottleneck, losses, crew, steady,
// "station NAME", "buffer NAME" (of the station behind it), "stop NAME/CAUSE" or "loss NAME/CAUSE". Any other is shown at the end.
func Forecast(w io.Writer, f *scenarios.Forecast, format Format, style Style) error {
	return report{
		page:   func(style Style) *layout.Page { return forecastPage(f, style) },
		json:   func() error { return forecastJSON(w, f) },
		charts: func() []chart.Chart { return forecastCharts(f) },
	}.write(w, format, style)
}

// forecastPage orders the answer first, the reason second, the numbers third, caveats last.
func forecastPage(f *scenarios.Forecast, style Style) *layout.Page {
	n := notesOf(f.Warnings)
	p := &layout.Page{Title: titleOf(f.Title)}
	p.Add(runFacts(f))
	p.Add(lineFacts(f))
	p.Add(steadyFacts(f.Steady))
	p.Add(answerSection(f, n))
	p.Add(limitSection(f, n, style))
	p.Add(fallSection(f, style))
	p.Add(lossSection(f, n))
	p.Add(shareSection(f, n, style))
	p.Add(stopSection(f, n))
	p.Add(waitSection(f))
	p.Add(bufferSection(f, n))
	p.Add(layout.Section{Heading: "Notes", Notes: n.rest()})
	p.Add(footSection(f))
	return p
}

func titleOf(title string) string {
	if title == "" {
		return "Line without a title"
	}
	return title
}
