package layout

import "io"

// Format is a way of writing a page.
type Format int

// The formats of every page.
const (
	ForTerminal Format = iota
	ForMarkdown
	ForCSV
	ForHTML
	ForWorkbook
)

// Write writes a page in a format.
func (p *Page) Write(w io.Writer, format Format, style Style) error {
	if style.Brief {
		p = p.brief(style.Columns())
	}
	switch format {
	case ForMarkdown:
		return p.Markdown(w)
	case ForCSV:
		return p.CSV(w, style.Comma)
	case ForHTML:
		return p.HTML(w)
	case ForWorkbook:
		return p.Workbook(w)
	}
	return p.Terminal(w, style)
}
