package reports

import (
	"encoding/csv"
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// sheet collects tidy rows: section, name, item, value, low, high, unit. Where a figure has no interval, low and high are
// empty; where one could not be assessed, they hold "~".
type sheet struct{ rows [][]string }

func newSheet() *sheet {
	return &sheet{rows: [][]string{{"section", "name", "item", "value", "low", "high", "unit"}}}
}

// figure adds a figure without an interval.
func (s *sheet) figure(section, name, item string, value float64, unit string) {
	s.text(section, name, item, layout.Digits(value), unit)
}

// interval adds a figure with its interval.
func (s *sheet) interval(section, name, item string, iv interval, unit string) {
	s.rows = append(s.rows, []string{section, name, item, layout.Digits(iv.Mean), layout.Digits(iv.Low), layout.Digits(iv.High), unit})
}

// text adds a value that is no number.
func (s *sheet) text(section, name, item, value, unit string) {
	s.rows = append(s.rows, []string{section, name, item, value, "", "", unit})
}

// warnings adds what to be careful of, each with what it is about.
func (s *sheet) warnings(list []scenarios.Warning) {
	for _, warning := range list {
		s.text("warning", warning.About, "text", warning.Text, "")
	}
}

// refused adds the limit that a line breaks, where it breaks one.
func (s *sheet) refused(section, name, limit string) {
	if limit != "" {
		s.text(section, name, "refused", limit, "")
	}
}

func (s *sheet) writeTo(w io.Writer) error {
	for _, row := range s.rows {
		for i, text := range row {
			row[i] = layout.Printable(text)
		}
	}
	out := csv.NewWriter(w)
	if err := out.WriteAll(s.rows); err != nil {
		return err
	}
	return out.Error()
}
