package layout

import (
	"io"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// terminalTable writes a table without borders, its columns gap spaces apart, the cells of its left-hand columns broken into lines of at most width
// letters.
func terminalTable(w io.Writer, t *Table, gap, width int) error {
	looks := tw.Rendition{
		Borders: tw.BorderNone,
		Symbols: tw.NewSymbols(tw.StyleASCII),
		Settings: tw.Settings{
			Separators: tw.Separators{ShowHeader: tw.On, ShowFooter: tw.On, BetweenRows: tw.Off, BetweenColumns: tw.Off},
			Lines:      tw.Lines{ShowHeaderLine: tw.On, ShowFooterLine: tw.On},
		},
	}
	space := tw.Padding{Right: strings.Repeat(" ", gap), Overwrite: true}
	heads, rows, foot := t.words(Printable)
	for _, row := range rows {
		for i, cell := range row {
			if !t.Columns[i].ToRight() {
				row[i] = fold(cell, width)
			}
		}
	}
	return t.write(w, heads, rows, foot, tablewriter.WithRendition(looks), tablewriter.WithPadding(space))
}

// markdownTable writes a table in Markdown. Bars in cells are escaped here, because the library leaves them as they are.
func markdownTable(w io.Writer, t *Table) error {
	heads, rows, foot := t.words(escapeCell)
	return t.write(w, heads, rows, foot, tablewriter.WithRenderer(renderer.NewMarkdown()))
}

func (t *Table) write(w io.Writer, heads []string, rows [][]string, foot []string, options ...tablewriter.Option) error {
	alignment := make(tw.Alignment, len(t.Columns))
	for i, c := range t.Columns {
		alignment[i] = tw.AlignLeft
		if c.ToRight() {
			alignment[i] = tw.AlignRight
		}
	}
	out := tablewriter.NewTable(w, append(options,
		tablewriter.WithHeaderAutoFormat(tw.Off), tablewriter.WithTrimSpace(tw.Off),
		tablewriter.WithHeaderAutoWrap(tw.WrapNone), tablewriter.WithRowAutoWrap(tw.WrapNone),
		tablewriter.WithFooterAutoWrap(tw.WrapNone), tablewriter.WithAlignment(alignment),
		tablewriter.WithFooterAlignmentConfig(tw.CellAlignment{PerColumn: alignment}))...)
	out.Header(heads)
	if err := out.Bulk(rows); err != nil {
		return err
	}
	if foot != nil {
		out.Footer(foot)
	}
	return out.Render()
}
