package layout

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
)

// CSV writes a page as tidy rows of section, name, item, value, low, high, unit: the figures of every table that has a key, then
// sentences and notes. Where a figure has no interval, low and high are empty; where one could not be assessed, they hold "~". With a
// decimal comma, fields are parted by semicolons.
func (p *Page) CSV(w io.Writer, comma bool) error {
	out := csv.NewWriter(w)
	digits := Digits
	if comma {
		out.Comma = ';'
		digits = func(x float64) string { return strings.Replace(Digits(x), ".", ",", 1) }
	}
	rows := [][]string{{"section", "name", "item", "value", "low", "high", "unit"}}
	for _, s := range p.Sections {
		rows = append(rows, s.figures(digits)...)
	}
	for _, s := range p.Sections {
		rows = append(rows, s.sentences()...)
	}
	return out.WriteAll(rows)
}

// figures are the rows of a section's table, words too where they are said of a row.
func (s *Section) figures(digits func(float64) string) [][]string {
	if s.Key == "" || s.Table == nil {
		return nil
	}
	var rows [][]string
	for _, line := range s.Table.data() {
		name := safe(s.Table.nameOf(line))
		for i, c := range s.Table.Columns {
			if c.Key != "" && i < len(line) && line[i] != Blank {
				rows = append(rows, append([]string{s.Key, name, safe(c.Key)}, line[i].data(digits)...))
			}
		}
	}
	return rows
}

// nameOf joins the words that name a row.
func (t *Table) nameOf(line []Cell) string {
	var words []string
	for i, c := range t.Columns {
		if c.Key == "" && !c.Figures && !c.Drawn && i < len(line) && line[i].text != "" {
			words = append(words, line[i].text)
		}
	}
	return strings.Join(words, "/")
}

// data are value, low, high and unit.
func (c Cell) data(digits func(float64) string) []string {
	iv, figure := c.Figure()
	switch {
	case !figure:
		return []string{safe(c.text), "", "", c.unit}
	case c.lone:
		return []string{digits(iv.Mean), "", "", c.unit}
	}
	return []string{digits(iv.Mean), digits(iv.Low), digits(iv.High), c.unit}
}

// sentences are what a section says in words.
func (s *Section) sentences() [][]string {
	var rows [][]string
	add := func(item, text string) {
		rows = append(rows, []string{"text", safe(s.Heading), item, safe(text), "", "", ""})
	}
	for _, text := range s.Text {
		add("sentence", text)
	}
	for _, text := range s.Notes {
		add("note", text)
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

// safe is a text that neither disturbs a terminal nor becomes a formula.
func safe(text string) string { return harmless(Printable(text)) }

// harmless puts an apostrophe before a text that a spreadsheet would take for a formula. Numbers are left as they are.
func harmless(text string) string {
	if text == "" || !strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return text
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		return text
	}
	return "'" + text
}
