package reports

import (
	"io"

	"dwellcast/scenarios"
)

// Forecast writes what a run says of a line. Style matters to the table format only.
//
// A warning is shown at the figure that its About names: good_rate, good_per_shift, target, bottleneck, losses, crew, steady,
// "station NAME", "buffer NAME" (of the station behind it), "stop NAME/CAUSE" or "loss NAME/CAUSE". Any other is shown at the end.
func Forecast(w io.Writer, f *scenarios.Forecast, format Format, style Style) error {
	return report{
		page: func(style Style) *page { return forecastPage(f, style) },
		json: func() error { return forecastJSON(w, f) },
		csv:  func() error { return forecastCSV(w, f) },
	}.write(w, format, style)
}

// forecastPage orders the answer first, the reason second, the numbers third, caveats last.
func forecastPage(f *scenarios.Forecast, style Style) *page {
	n := notesOf(f.Warnings)
	p := &page{title: titleOf(f.Title)}
	p.add(answerSection(f, n))
	p.add(limitSection(f, n, style))
	p.add(lossSection(f, n))
	p.add(shareSection(f, n, style))
	p.add(stopSection(f, n))
	p.add(waitSection(f))
	p.add(bufferSection(f, n))
	p.add(section{heading: "Notes", notes: n.rest()})
	p.add(footSection(f))
	return p
}

func titleOf(title string) string {
	if title == "" {
		return "Line without a title"
	}
	return title
}
