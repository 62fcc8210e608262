package reports

import (
	"io"
	"math"
	"strconv"
	"strings"

	"dwellcast/reports/layout"
)

// report is one answer in every format; only the one asked for is made.
type report struct {
	page      func(Style) *layout.Page
	json, csv func() error
}

// documentWidth is the width that pictures in plain characters have in a document.
const documentWidth = 120

func (r report) write(w io.Writer, format Format, style Style) error {
	switch format {
	case JSON:
		return r.json()
	case CSV:
		if r.csv != nil {
			return r.csv()
		}
	}
	if format != Table {
		style = Style{Width: documentWidth}
	}
	return r.page(style).Write(w, format.layout(), style)
}

func (t *table) laidOut() *layout.Table {
	if t == nil {
		return nil
	}
	out := &layout.Table{}
	for _, c := range t.columns {
		out.Columns = append(out.Columns, layout.Column{Head: c.head, Figures: c.right})
	}
	for _, row := range t.rows {
		out.Add(t.cells(row)...)
	}
	if t.foot != nil {
		out.Foot = t.cells(t.foot)
	}
	return out
}

// cells are the words of a row; a number in a column of figures is one.
func (t *table) cells(row []string) []layout.Cell {
	var cells []layout.Cell
	for i, text := range row {
		x, err := strconv.ParseFloat(strings.TrimSuffix(text, " %"), 64)
		if i < len(t.columns) && t.columns[i].right && err == nil && !math.IsInf(x, 0) && !math.IsNaN(x) {
			cells = append(cells, layout.Shown(text, x))
		} else {
			cells = append(cells, layout.Word(text))
		}
	}
	return cells
}
