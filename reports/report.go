package reports

import "io"

// report is one answer in every format; only the one asked for is made.
type report struct {
	page      func(Style) *page
	json, csv func() error
}

// markdownWidth is the width that pictures in plain characters have in Markdown.
const markdownWidth = 120

func (r report) write(w io.Writer, format Format, style Style) error {
	switch format {
	case JSON:
		return r.json()
	case CSV:
		return r.csv()
	case Markdown:
		return r.page(Style{Width: markdownWidth}).markdown(w)
	}
	return r.page(style).terminal(w, style)
}
