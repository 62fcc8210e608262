package scenarios

import "dwellcast/scenarios/document"

// Units is the system in which a file has written a quantity. What follows from it is told in the same.
type Units uint8

// The systems. What a file does not write is metric.
const (
	Metric Units = iota
	US           // inches, feet, pounds, fluid ounces, degrees Fahrenheit
)

// unitsOf is the system of the first of some quantities that the file gives.
func unitsOf(written ...*document.Node) Units {
	for _, n := range written {
		switch {
		case n == nil:
		case n.Customary():
			return US
		default:
			return Metric
		}
	}
	return Metric
}
