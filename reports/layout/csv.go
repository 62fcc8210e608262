package layout

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
)

// CSV writes a page as tidy rows of section, name, item, value, low, high, unit: the figures of every table that has a key, then
// sentences and notes. Where a figure has no interval, low and high are empty; where one could not be assessed, they hold "~".
func (p *Page) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"section", "name", "item", "value", "low", "high", "unit"}}
	for _, s := range p.Sections {
		rows = append(rows, s.data()...)
	}
	for _, s := range p.Sections {
		rows = append(rows, s.sentences()...)
	}
	for _, row := range rows {
		for i, text := range row {
			row[i] = Harmless(Printable(text))
		}
	}
	if err := out.WriteAll(rows); err != nil {
		return err
	}
	return out.Error()
}

// data are the figures of a section's table.
func (s *Section) data() [][]string {
	if s.Key == "" || s.Table.empty() {
		return nil
	}
	var rows [][]string
	lines := s.Table.Rows
	if s.Table.Foot != nil {
		lines = append(lines[:len(lines):len(lines)], s.Table.Foot)
	}
	for _, line := range lines {
		name := s.Table.nameOf(line)
		for i, c := range s.Table.Columns {
			if c.Key != "" && i < len(line) && line[i] != Blank {
				rows = append(rows, append([]string{s.Key, name, c.Key}, line[i].data()...))
			}
		}
	}
	return rows
}

// nameOf joins the words that name a row.
func (t *Table) nameOf(line []Cell) string {
	var words []string
	for i, c := range t.Columns {
		if c.Key == "" && !c.Figures && i < len(line) && line[i].text != "" {
			words = append(words, line[i].text)
		}
	}
	return strings.Join(words, "/")
}

// data are value, low, high and unit.
func (c Cell) data() []string {
	iv, figure := c.Figure()
	switch {
	case !figure:
		return []string{c.text, "", "", c.unit}
	case c.lone:
		return []string{Digits(iv.Mean), "", "", c.unit}
	}
	return []string{Digits(iv.Mean), Digits(iv.Low), Digits(iv.High), c.unit}
}

// sentences are what a section says in words.
func (s *Section) sentences() [][]string {
	var rows [][]string
	for _, text := range s.Text {
		rows = append(rows, []string{"text", s.Heading, "sentence", text, "", "", ""})
	}
	for _, text := range s.Notes {
		rows = append(rows, []string{"text", s.Heading, "note", text, "", "", ""})
	}
	return rows
}

// Digits prints a figure for data, to twelve digits.
func Digits(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return None
	}
	return strconv.FormatFloat(Portable(x), 'g', -1, 64)
}

// Portable is a figure rounded to twelve digits. What lies behind them may differ from processor to processor, where a product and a sum
// are fused or a function is approximated in another way.
func Portable(x float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	if err != nil {
		return x
	}
	return rounded
}

// Harmless puts an apostrophe before a text that a spreadsheet would take for a formula. Numbers are left as they are.
func Harmless(text string) string {
	if text == "" || !strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return text
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return text
	}
	return "'" + text
}
