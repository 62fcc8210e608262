package reports

import "strings"

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

// mapped returns the table with every text changed.
func (t *table) mapped(change func(string) string) *table {
	changed := &table{foot: mapStrings(t.foot, change)}
	for _, c := range t.columns {
		changed.columns = append(changed.columns, column{change(c.head), c.right})
	}
	for _, row := range t.rows {
		changed.rows = append(changed.rows, mapStrings(row, change))
	}
	return changed
}

func mapStrings(texts []string, change func(string) string) []string {
	var changed []string
	for _, text := range texts {
		changed = append(changed, change(text))
	}
	return changed
}

// folded returns the table fit for a terminal, the cells of its left-hand columns broken into lines of at most width letters.
func (t *table) folded(width int) *table {
	plain := t.mapped(mapLine)
	for _, row := range plain.rows {
		for i, cell := range row {
			if !plain.columns[i].right {
				row[i] = fold(cell, width)
			}
		}
	}
	return plain
}

// fold breaks a text into lines of at most width letters, between words where it can.
func fold(text string, width int) string {
	if len([]rune(text)) <= width {
		return text
	}
	var lines []string
	for _, line := range wrap(text, width) {
		for len([]rune(line)) > width {
			lines = append(lines, string([]rune(line)[:width]))
			line = string([]rune(line)[width:])
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}
