// Package layout is a report before it is written: sections of sentences, tables of typed cells, pictures and notes. The same page is
// written for a terminal, in Markdown, as CSV, as HTML and as a workbook; none of these knows which report it writes.
package layout

import "io"

// Page is a report for a reader.
type Page struct {
	Title string
	// Logo is a picture as a data URI, for HTML; empty for none.
	Logo     string
	Sections []Section
}

// Section is a heading, sentences, a table, pictures and notes, in this order; any may be missing.
type Section struct {
	// Key names the section in CSV and in a workbook, such as "loss". Without one its table is not written there.
	Key     string
	Heading string
	Text    []string
	// But is what the text may not be read without, not even in brief; it stands behind it.
	But   []string
	Table *Table
	// Plain is a picture in plain characters, for a terminal and Markdown.
	Plain []string
	// Pictures are for HTML.
	Pictures []Picture
	Notes    []string
	// Verbatim is a text shown as it is, in documents.
	Verbatim string
	// Break begins a new sheet of paper. What stands before the first one is the front of a document, whose pictures are small in print.
	Break bool
	// Answer marks the section that is read first.
	Answer bool
	// Limits marks the section that says what limits, in its first sentence.
	Limits bool
	// Data marks a section whose table is written as data only: in CSV and in a workbook.
	Data bool
}

// Picture is a chart with the words that stand under it.
type Picture struct {
	Caption string
	// SVG writes the picture as an svg element.
	SVG func(io.Writer) error
}

// Add appends a section, unless it says nothing. One of which readers would see a heading alone is data.
func (p *Page) Add(s Section) {
	if len(s.Text) == 0 && len(s.Plain) == 0 && len(s.Notes) == 0 && len(s.Pictures) == 0 && s.Verbatim == "" && s.Table.empty() {
		if s.Table == nil || len(s.Table.Spared) == 0 {
			return
		}
		s.Data = true
	}
	s.Text = append(s.Text[:len(s.Text):len(s.Text)], s.But...)
	p.Sections = append(p.Sections, s)
}

// Fact is one figure, or one word, of a thing.
type Fact struct {
	Key  string
	Cell Cell
}

// Facts is a section for data alone: what is known of one thing, which may have a name.
func Facts(key, name string, facts ...Fact) Section {
	t := &Table{Columns: []Column{Words("name")}, Rows: [][]Cell{{Word(name)}}}
	for _, f := range facts {
		t.Columns = append(t.Columns, Column{Head: f.Key, Key: f.Key})
		t.Rows[0] = append(t.Rows[0], f.Cell)
	}
	return Section{Key: key, Data: true, Table: t}
}

// empty says that there is nothing of a section to see on a screen but its heading.
func (s *Section) empty() bool {
	return len(s.Text) == 0 && len(s.Plain) == 0 && len(s.Notes) == 0 && s.Table.empty()
}
