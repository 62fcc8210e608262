package layout

import (
	"strings"
	"unicode/utf8"
)

// stacked writes a table that is wider than the screen row below row: the first cell, and under it each other under its head. What
// says nothing is left out.
func (t *Table) stacked(width int) []string {
	heads, rows, foot := t.words(Printable)
	if foot != nil {
		rows = append(rows, foot)
	}
	room := 0
	for i, head := range heads {
		heads[i] = strings.ReplaceAll(strings.ReplaceAll(head, "-\n", ""), "\n", " ")
		room = max(room, utf8.RuneCountInString(heads[i]))
	}
	room = min(room, width/2)
	var lines []string
	for _, row := range rows {
		lines = append(lines, strings.Split(fold(row[0], width), "\n")...)
		for i, cell := range row[1:] {
			if strings.TrimSpace(cell) != "" {
				lines = append(lines, beside(fold(heads[i+1], room), fold(cell, width-room-4), room)...)
			}
		}
	}
	return lines
}

// beside sets a text to the right of a head, each on as many lines as it takes.
func beside(head, text string, room int) []string {
	left, right := strings.Split(head, "\n"), strings.Split(text, "\n")
	var lines []string
	for i := range max(len(left), len(right)) {
		line := "  "
		if i < len(left) {
			line += left[i]
		}
		if i < len(right) {
			line += strings.Repeat(" ", max(room+4-utf8.RuneCountInString(line), 0)) + right[i]
		}
		lines = append(lines, line)
	}
	return lines
}
