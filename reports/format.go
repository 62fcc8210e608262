// Package reports turns forecasts and time budgets into text: a terminal screen, Markdown, CSV and JSON. It knows nothing of
// how they were made.
package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
)

// Format is a way of writing a report.
type Format string

// The formats of every report.
const (
	Table    Format = "table"    // for a terminal
	Markdown Format = "markdown" // for a document
	CSV      Format = "csv"      // tidy: one figure a row
	JSON     Format = "json"     // everything, unrounded
	HTML     Format = "html"     // one page, for a browser or a printer
	Workbook Format = "xlsx"     // a sheet a table
)

// Formats lists the formats in the order in which help shows them.
func Formats() []Format { return []Format{Table, JSON, CSV, Markdown, HTML, Workbook} }

// ParseFormat returns the format of that name.
func ParseFormat(name string) (Format, error) {
	var names []string
	for _, f := range Formats() {
		if string(f) == name {
			return f, nil
		}
		names = append(names, string(f))
	}
	return "", fmt.Errorf("unknown format %q; take one of %s", name, strings.Join(names, ", "))
}

// Style says how a terminal screen is to look.
type Style = layout.Style

// layout is how a page is written in this format; JSON is not written from a page.
func (f Format) layout() layout.Format {
	return map[Format]layout.Format{Markdown: layout.ForMarkdown, CSV: layout.ForCSV, HTML: layout.ForHTML, Workbook: layout.ForWorkbook}[f]
}
