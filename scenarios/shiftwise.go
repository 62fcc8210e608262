package scenarios

import (
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// Shiftwise returns the file as decisions take it: as independent shifts. One that asks for a long run is taken as shifts of the
// length that its figures are given for, each from an empty line, and a warning says so.
func (f *File) Shiftwise() *File {
	if f.Steady == nil {
		return f
	}
	shifts, line := *f, *f.Line
	line.Shift = stations.Shift{Length: f.Steady.Shift}
	shifts.Line, shifts.Steady = &line, nil
	shifts.Warnings = append(append([]Warning{}, f.Warnings...), Warning{"good_per_shift",
		"the file asks for one long run; here independent shifts of " + quantity.FormatDuration(f.Steady.Shift) +
			" are compared, each from an empty line"})
	return &shifts
}

// DefaultReplications is how many shifts of a line a run makes where no number is given: what two processors do in about a second.
func DefaultReplications(line *stations.Line) int { return defaultReplications(line) }
