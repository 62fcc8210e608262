package layout

import "cmp"

// Style says how a report is to look.
type Style struct {
	// Width of a terminal screen in columns; 0 is 80, and less than 40 counts as 40.
	Width int
	// Comma writes CSV with decimal commas, its fields parted by semicolons.
	Comma bool
	// Brief leaves the answer, what limits, and the warnings that belong to them.
	Brief bool
	// Bold sets headings and the answer in bold, for a terminal that can.
	Bold bool
}

// Wide says that there is room for the roomier layout of tables.
func (s Style) Wide() bool { return s.Columns() >= 110 }

// Columns is the width to fill, at most 120: longer lines are hard to follow.
func (s Style) Columns() int { return min(max(cmp.Or(s.Width, 80), 40), 120) }
