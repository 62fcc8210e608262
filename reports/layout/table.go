package layout

// Table is rows of typed cells under heads.
type Table struct {
	Columns []Column
	Rows    [][]Cell
	// Foot is a last row, set off by a line.
	Foot []Cell
}

// Column is the head of a column and how it is set.
type Column struct {
	// Head as a reader sees it; a break in it is a place to divide.
	Head string
	// Key names the column in CSV and in a workbook; without one it is not written as data, since another column says the same.
	Key string
	// Figures are set to the right, words to the left.
	Figures bool
}

// Words is a column of names or words that belong to the row: in CSV they name it.
func Words(head string) Column { return Column{Head: head} }

// Figures is a column of figures under the name that data know it by.
func Figures(head, key string) Column { return Column{Head: head, Key: key, Figures: true} }

// Aside is a column of figures that readers see, while data have them elsewhere.
func Aside(head string) Column { return Column{Head: head, Figures: true} }

// Add appends a row.
func (t *Table) Add(cells ...Cell) { t.Rows = append(t.Rows, cells) }

func (t *Table) empty() bool { return t == nil || len(t.Rows) == 0 }

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
