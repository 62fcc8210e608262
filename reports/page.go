package reports

// page is a report for a reader, before it is laid out for a terminal or in Markdown.
type page struct {
	title    string
	sections []section
}

// section is a heading, sentences, a table, a picture in plain characters and notes, in this order; any may be missing.
type section struct {
	heading string
	text    []string
	table   *table
	picture []string
	notes   []string
	// answer marks the section that is read first.
	answer bool
}

// add appends a section, unless it says nothing.
func (p *page) add(s section) {
	if len(s.text) == 0 && len(s.picture) == 0 && len(s.notes) == 0 && (s.table == nil || len(s.table.rows) == 0) {
		return
	}
	p.sections = append(p.sections, s)
}
