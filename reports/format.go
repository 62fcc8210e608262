// Package reports turns forecasts and time budgets into text: a terminal screen, Markdown, CSV and JSON. It knows nothing of
// how they were made.
package reports

import (
	"fmt"
	"strings"
)

// Format is a way of writing a report.
type Format string

// The formats of every report.
const (
	Table    Format = "table"    // for a terminal
	Markdown Format = "markdown" // for a document
	CSV      Format = "csv"      // tidy: one figure a row
	JSON     Format = "json"     // everything, unrounded
)

// Formats lists the formats in the order in which help shows them.
func Formats() []Format { return []Format{Table, JSON, CSV, Markdown} }

// ParseFormat returns the format of that name.
func ParseFormat(name string) (Format, error) {
	var names []string
	for _, f := range Formats() {
		if string(f) == name {
			return f, nil
		}
		names = append(names, string(f))
	}
	return "", fmt.Errorf("unknown format %q; take one of %s", name, strings.Join(names, ", "))
}

// Style says how a terminal screen is to look.
type Style struct {
	// Width of the screen in columns; less than 80 counts as 80.
	Width int
	// Bold sets headings and the answer in bold, for a terminal that can.
	Bold bool
}

// wide says that there is room for the roomier layout of tables.
func (s Style) wide() bool { return s.columns() >= 110 }

// columns is the width to fill, at most 120: longer lines are hard to follow.
func (s Style) columns() int { return min(max(s.Width, 80), 120) }
