package scenarios

import "dwellcast/stations"

// File is a line file that was read without a mistake.
type File struct {
	Name string
	Line *stations.Line
	// Target is the wanted number of good cartons per shift; 0 when there is none.
	Target float64
	// Steady asks for long-run figures; nil for shifts.
	Steady   *SteadySpec
	Warnings []Warning
}
