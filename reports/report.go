package reports

import (
	"io"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
)

// report is one answer in every format; only the one asked for is made.
type report struct {
	page func(Style) *layout.Page
	json func() error
	// charts are the pictures that HTML shows behind the answer; nil for none.
	charts func() []chart.Chart
}

// documentWidth is the width that pictures in plain characters have in a document.
const documentWidth = 120

func (r report) write(w io.Writer, format Format, style Style) error {
	if format == JSON {
		return r.json()
	}
	if format != Table {
		style.Width = documentWidth
	}
	page := r.page(style)
	if format == HTML && r.charts != nil && !style.Brief {
		show(page, r.charts())
	}
	return page.Write(w, format.layout(), style)
}
