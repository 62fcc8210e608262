package reports

import (
	"io"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// terminalTable writes a table without borders, its columns gap spaces apart.
func terminalTable(w io.Writer, t *table, gap int) error {
	looks := tw.Rendition{
		Borders: tw.BorderNone,
		Symbols: tw.NewSymbols(tw.StyleASCII),
		Settings: tw.Settings{
			Separators: tw.Separators{ShowHeader: tw.On, ShowFooter: tw.On, BetweenRows: tw.Off, BetweenColumns: tw.Off},
			Lines:      tw.Lines{ShowHeaderLine: tw.On, ShowFooterLine: tw.On},
		},
	}
	space := tw.Padding{Right: strings.Repeat(" ", gap), Overwrite: true}
	return write(w, t, tablewriter.WithRendition(looks), tablewriter.WithPadding(space))
}

// markdownTable writes a table in Markdown. Bars in cells are escaped here, because the library leaves them as they are.
func markdownTable(w io.Writer, t *table) error {
	return write(w, t.mapped(escapeCell), tablewriter.WithRenderer(renderer.NewMarkdown()))
}

func write(w io.Writer, t *table, options ...tablewriter.Option) error {
	alignment := make(tw.Alignment, len(t.columns))
	heads := make([]string, len(t.columns))
	for i, c := range t.columns {
		heads[i], alignment[i] = c.head, tw.AlignLeft
		if c.right {
			alignment[i] = tw.AlignRight
		}
	}
	out := tablewriter.NewTable(w, append(options,
		tablewriter.WithHeaderAutoFormat(tw.Off), tablewriter.WithTrimSpace(tw.Off),
		tablewriter.WithHeaderAutoWrap(tw.WrapNone), tablewriter.WithRowAutoWrap(tw.WrapNone),
		tablewriter.WithFooterAutoWrap(tw.WrapNone), tablewriter.WithAlignment(alignment),
		tablewriter.WithFooterAlignmentConfig(tw.CellAlignment{PerColumn: alignment}))...)
	out.Header(heads)
	if err := out.Bulk(t.rows); err != nil {
		return err
	}
	if t.foot != nil {
		out.Footer(t.foot)
	}
	return out.Render()
}
