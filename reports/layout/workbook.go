package layout

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode"
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
	t := s.Table
	if s.Data && len(t.data()) == 1 {
		t = t.turned()
	}
	for i, c := range t.Columns {
		if !c.Drawn {
			g.column(t, i, c)
		}
	}
	return g.done()
}

// turned is a table of one row with its figures below each other.
func (t *Table) turned() *Table {
	out := &Table{Columns: []Column{Words("figure"), {Head: "value"}}}
	for i, c := range t.Columns {
		if cell := t.Rows[0][i]; c.Key != "" && cell != Blank {
			out.Add(Word(c.Key), cell)
		}
	}
	return out
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

// column writes one column of a table; one of figures with intervals becomes three, and one of several units has them beside it.
func (g *grid) column(t *Table, i int, c Column) {
	head, rows := unbrokenHead(c.Head), t.data()
	bounds := false
	for _, row := range rows {
		bounds = bounds || i < len(row) && row[i].bounded()
	}
	unit, mixed := unitOf(rows, i)
	if unit != "" && unit != "1" && !strings.Contains(head, unit) {
		head += ", " + unit
	}
	g.fill(rows, head, i, func(c Cell) float64 { return c.value.Mean })
	if bounds {
		g.bounds(rows, head+", low", i, func(c Cell) float64 { return c.value.Low })
		g.bounds(rows, head+", high", i, func(c Cell) float64 { return c.value.High })
	}
	if mixed {
		g.next++
		g.text(1, strings.TrimPrefix(head+", unit", ", "))
		for r, row := range rows {
			if i < len(row) && row[i].unit != "1" {
				g.text(r+2, row[i].unit)
			}
		}
	}
}

// unitOf is the unit that all figures of a column share; where they do not, they are mixed.
func unitOf(rows [][]Cell, i int) (unit string, mixed bool) {
	first := true
	for _, row := range rows {
		if i >= len(row) || !row[i].figure {
			continue
		}
		if !first && row[i].unit != unit {
			return "", true
		}
		unit, first = row[i].unit, false
	}
	return unit, false
}

// fill writes a column: numbers, and words where there are none.
func (g *grid) fill(rows [][]Cell, head string, i int, of func(Cell) float64) {
	g.next++
	g.text(1, head)
	for r, row := range rows {
		if i >= len(row) {
			continue
		}
		switch cell := row[i]; {
		case cell.figure && finite(of(cell)):
			g.number(r+2, of(cell), cell)
		case !cell.figure || strings.ContainsFunc(cell.text, unicode.IsLetter): // no limit
			g.text(r+2, cell.text+cell.mark)
		}
	}
}

// bounds writes a column of bounds, empty where there are none.
func (g *grid) bounds(rows [][]Cell, head string, i int, of func(Cell) float64) {
	g.next++
	g.text(1, head)
	for r, row := range rows {
		if i < len(row) && row[i].bounded() && finite(of(row[i])) {
			g.number(r+2, of(row[i]), row[i])
		}
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

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

// format shows a number with the decimals and the marks that its text has.
func (c Cell) format() string {
	format := "General"
	if whole, decimals, found := numberIn(c.text); found && !c.scaled {
		format = "0"
		if strings.Contains(whole, " ") {
			format = "#,##0"
		}
		if decimals > 0 {
			format += "." + strings.Repeat("0", decimals)
		}
	}
	if c.percent {
		if format == "General" {
			format = "0.0"
		}
		format += " %"
	}
	if mark := strings.ReplaceAll(Printable(c.mark), `"`, "'"); mark != "" && format != "General" {
		format += `"` + mark + `"`
	}
	return format
}

// numberIn finds the number that a text begins with: what stands before its point, and how many decimals.
func numberIn(text string) (whole string, decimals int, found bool) {
	text = strings.TrimLeft(text, "+-")
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789. ", r) })
	if end >= 0 {
		text = text[:end]
	}
	whole, fraction, _ := strings.Cut(strings.TrimSpace(text), ".")
	return whole, len(fraction), whole != ""
}

// done sets widths, a bold head that stays in view, and filters.
func (g *grid) done() error {
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
