package layout

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// Workbook writes a page as an xlsx workbook: a sheet with what it says, then a sheet for each table. Numbers are numbers, in as many
// digits as their interval supports, with their bounds beside them; text is text, whatever it begins with.
func (p *Page) Workbook(w io.Writer) error {
	book := excelize.NewFile()
	defer func() { _ = book.Close() }()
	b := &workbook{file: book, taken: map[string]bool{}}
	if err := b.words(p); err != nil {
		return err
	}
	for i := range p.Sections {
		if s := &p.Sections[i]; !s.Table.empty() {
			if err := b.table(s); err != nil {
				return err
			}
		}
	}
	return book.Write(w)
}

// workbook is one being filled.
type workbook struct {
	file  *excelize.File
	taken map[string]bool // names of sheets, in small letters
}

// words fills the first sheet with all sentences and notes.
func (b *workbook) words(p *Page) error {
	const name = "Answer"
	if err := b.file.SetSheetName("Sheet1", name); err != nil {
		return err
	}
	b.taken[strings.ToLower(name)] = true
	lines := []string{p.Title}
	for _, s := range p.Sections {
		if len(s.Text)+len(s.Notes) > 0 {
			lines = append(append(append(lines, "", s.Heading), s.Text...), s.Notes...)
		}
	}
	for i, line := range lines {
		if err := b.file.SetCellStr(name, at(1, i+1), Printable(line)); err != nil {
			return err
		}
	}
	return b.file.SetColWidth(name, "A", "A", 110)
}

// table fills a sheet with a table: its words, and each figure with its bounds.
func (b *workbook) table(s *Section) error {
	name := b.sheetName(s)
	if _, err := b.file.NewSheet(name); err != nil {
		return err
	}
	g := &grid{file: b.file, sheet: name}
	for i, c := range s.Table.Columns {
		g.column(s.Table, i, c)
	}
	return g.done(len(s.Table.Rows))
}

// sheetName is a heading as a spreadsheet allows it: at most 31 letters, some forbidden, no two alike.
func (b *workbook) sheetName(s *Section) string {
	words := s.Heading
	if words == "" {
		words = s.Key
	}
	if before, _, found := strings.Cut(words, ","); found {
		words = before
	}
	words = strings.Trim(strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) {
			return -1
		}
		return r
	}, Printable(words)), " '")
	if words == "" {
		words = "Table"
	}
	name := short(words, 31)
	for n := 2; b.taken[strings.ToLower(name)]; n++ {
		end := fmt.Sprintf(" %d", n)
		name = short(words, 31-len(end)) + end
	}
	b.taken[strings.ToLower(name)] = true
	return name
}

// short cuts a text to so many letters.
func short(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return strings.TrimRight(string([]rune(text)[:most]), " ")
}

// grid is a sheet filled column by column.
type grid struct {
	file  *excelize.File
	sheet string
	next  int // columns filled
	err   error
}

// column writes one column of a table; one of figures with intervals becomes three.
func (g *grid) column(t *Table, i int, c Column) {
	head := strings.ReplaceAll(strings.ReplaceAll(c.Head, "-\n", ""), "\n", " ")
	bounds := false
	for _, row := range t.Rows {
		bounds = bounds || i < len(row) && row[i].bounded()
	}
	if unit := t.unitOf(i); unit != "" && unit != "1" {
		head += ", " + unit
	}
	g.fill(t, head, i, func(iv Interval) float64 { return iv.Mean })
	if bounds {
		g.fill(t, head+", low", i, func(iv Interval) float64 { return iv.Low })
		g.fill(t, head+", high", i, func(iv Interval) float64 { return iv.High })
	}
}

// unitOf is the unit that all figures of a column share; empty where they do not.
func (t *Table) unitOf(i int) string {
	unit, first := "", true
	for _, row := range t.Rows {
		if i >= len(row) || !row[i].figure {
			continue
		}
		if !first && row[i].unit != unit {
			return ""
		}
		unit, first = row[i].unit, false
	}
	return unit
}

func (g *grid) fill(t *Table, head string, i int, of func(Interval) float64) {
	g.next++
	g.text(1, head)
	for r, row := range t.Rows {
		if i >= len(row) {
			continue
		}
		cell := row[i]
		if x := of(cell.value); cell.figure && !math.IsNaN(x) && !math.IsInf(x, 0) {
			g.number(r+2, x, cell)
		} else if !cell.figure {
			g.text(r+2, cell.Text())
		}
	}
}

func (g *grid) text(row int, text string) {
	if g.err == nil && text != "" {
		g.err = g.file.SetCellStr(g.sheet, at(g.next, row), Printable(text))
	}
}

func (g *grid) number(row int, x float64, c Cell) {
	if g.err == nil {
		g.err = g.file.SetCellFloat(g.sheet, at(g.next, row), x, -1, 64)
	}
	format := c.format()
	if style, err := g.file.NewStyle(&excelize.Style{CustomNumFmt: &format}); g.err == nil && err == nil {
		g.err = g.file.SetCellStyle(g.sheet, at(g.next, row), at(g.next, row), style)
	}
}

// format shows a number with the decimals that its text has.
func (c Cell) format() string {
	_, decimals, found := strings.Cut(strings.TrimRight(c.text, " %"), ".")
	if c.unit == "1" && c.percent {
		return "0.0 %"
	}
	if !found || len(decimals) == 0 || strings.Trim(decimals, "0123456789") != "" {
		return "General"
	}
	return "0." + strings.Repeat("0", len(decimals))
}

// done sets widths, a bold head that stays in view, and filters.
func (g *grid) done(rows int) error {
	if g.err != nil || g.next == 0 {
		return g.err
	}
	bold, err := g.file.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	if err != nil {
		return err
	}
	if err := g.file.SetCellStyle(g.sheet, at(1, 1), at(g.next, 1), bold); err != nil {
		return err
	}
	last, err := excelize.ColumnNumberToName(g.next)
	if err != nil {
		return err
	}
	if err := g.file.SetColWidth(g.sheet, "A", last, 16); err != nil {
		return err
	}
	return g.file.SetPanes(g.sheet, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
}

// at names a cell by column and row, both from 1.
func at(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		panic(err)
	}
	return name
}
