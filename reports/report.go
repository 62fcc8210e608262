package reports

import (
	"io"

	"dwellcast/reports/layout"
)

// report is one answer in every format; only the one asked for is made.
type report struct {
	page func(Style) *layout.Page
	json func() error
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
	return r.page(style).Write(w, format.layout(), style)
}
