// Package layout is a report before it is written: sections of sentences, tables of typed cells, pictures and notes. The same page is
// written for a terminal, in Markdown, as CSV, as HTML and as a workbook; none of these knows which report it writes.
package layout

import "io"

// Page is a report for a reader.
type Page struct {
	Title    string
	Sections []Section
}

// Section is a heading, sentences, a table, pictures and notes, in this order; any may be missing.
type Section struct {
	// Key names the section in CSV and in a workbook, such as "loss". Without one its table is not written there.
	Key     string
	Heading string
	Text    []string
	Table   *Table
	// Plain is a picture in plain characters, for a terminal and Markdown.
	Plain []string
	// Pictures are for HTML.
	Pictures []Picture
	Notes    []string
	// Answer marks the section that is read first.
	Answer bool
	// Data marks a section whose table is written as data only: in CSV and in a workbook.
	Data bool
}

// Picture is a chart with the words that stand under it.
type Picture struct {
	Caption string
	// SVG writes the picture as an svg element.
	SVG func(io.Writer) error
}

// Add appends a section, unless it says nothing.
func (p *Page) Add(s Section) {
	if len(s.Text) == 0 && len(s.Plain) == 0 && len(s.Notes) == 0 && len(s.Pictures) == 0 && s.Table.empty() {
		return
	}
	p.Sections = append(p.Sections, s)
}
