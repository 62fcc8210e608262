package layout

import "slices"

// Table is rows of typed cells under heads.
type Table struct {
	Columns []Column
	Rows    [][]Cell
	// Foot is a last row, set off by a line.
	Foot []Cell
	// Spared are rows that readers do not see: data have them, behind the others.
	Spared [][]Cell
}

// Column is the head of a column and how it is set.
type Column struct {
	// Head as a reader sees it; a break in it is a place to divide.
	Head string
	// Key names the column in CSV and in a workbook; without one it is not written as data, since another column says the same.
	Key string
	// Figures are set to the right, words to the left, but for names that are numbers.
	Figures, Right bool
	// Hidden columns stand in data alone, drawn ones, such as bars, for readers alone.
	Hidden, Drawn bool
}

// Words is a column of names or words that belong to the row: in CSV they name it.
func Words(head string) Column { return Column{Head: head} }

// Figures is a column of figures under the name that data know it by.
func Figures(head, key string) Column { return Column{Head: head, Key: key, Figures: true} }

// ToRight says that a column is set to the right.
func (c Column) ToRight() bool { return c.Figures || c.Right }

// Told is a column of words that are said of the row, under the name that data know them by.
func Told(head, key string) Column { return Column{Head: head, Key: key} }

// Hidden is a column for data alone.
func Hidden(head, key string) Column { return Column{Head: head, Key: key, Hidden: true} }

// Drawn is a column of bars in plain characters, or of words that data have elsewhere.
func Drawn(head string) Column { return Column{Head: head, Drawn: true} }

// Aside is a column of figures that readers see, while data have them elsewhere.
func Aside(head string) Column { return Column{Head: head, Figures: true} }

// Add appends a row.
func (t *Table) Add(cells ...Cell) { t.Rows = append(t.Rows, cells) }

// Spare appends a row that readers do not see.
func (t *Table) Spare(cells ...Cell) { t.Spared = append(t.Spared, cells) }

func (t *Table) empty() bool { return t == nil || len(t.Rows) == 0 }

// data are all rows of a table: those that readers see, its foot, and those that they do not.
func (t *Table) data() [][]Cell {
	rows := slices.Clone(t.Rows)
	if t.Foot != nil {
		rows = append(rows, t.Foot)
	}
	return append(rows, t.Spared...)
}

// seen is the table as readers see it, without hidden columns.
func (t *Table) seen() *Table {
	if t == nil || !slices.ContainsFunc(t.Columns, func(c Column) bool { return c.Hidden }) {
		return t
	}
	out := &Table{}
	for _, c := range t.Columns {
		if !c.Hidden {
			out.Columns = append(out.Columns, c)
		}
	}
	for _, row := range t.Rows {
		out.Rows = append(out.Rows, t.withoutHidden(row))
	}
	if t.Foot != nil {
		out.Foot = t.withoutHidden(t.Foot)
	}
	return out
}

func (t *Table) withoutHidden(row []Cell) []Cell {
	var cells []Cell
	for i, cell := range row {
		if !t.Columns[i].Hidden {
			cells = append(cells, cell)
		}
	}
	return cells
}

// words returns the texts of a table, each passed through change: heads, rows and foot.
func (t *Table) words(change func(string) string) (heads []string, rows [][]string, foot []string) {
	for _, c := range t.Columns {
		heads = append(heads, change(c.Head))
	}
	for _, row := range t.Rows {
		rows = append(rows, texts(row, change))
	}
	if t.Foot != nil {
		foot = texts(t.Foot, change)
	}
	return heads, rows, foot
}

func texts(cells []Cell, change func(string) string) []string {
	var list []string
	for _, c := range cells {
		list = append(list, change(c.Text()))
	}
	return list
}
