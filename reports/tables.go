package reports

// table is rows of text under heads.
type table struct {
	columns []column
	rows    [][]string
	// foot is a last row, set off by a line.
	foot []string
}

// column is the head of a column and how it is set.
type column struct {
	head  string
	right bool
}

func left(head string) column  { return column{head, false} }
func right(head string) column { return column{head, true} }

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }
