package scenarios

import (
	"math"
	"strconv"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// readAlong reads a speed, an acceleration or a jerk of something that moves along, above 0, in m/s, m/s2 or m/s3.
func (r *lineReader) readAlong(n *document.Node, unit string) float64 {
	want := map[string]quantity.Dimension{"m/s": quantity.Speed, "m/s2": quantity.Acceleration, "m/s3": quantity.Jerk}[unit]
	return n.Measure(&r.p, want, unit, document.Limit{Above: "0 " + unit})
}

// readTurning reads the angular speed, rad/s, or the angular acceleration, rad/s2, of something that turns, above 0.
func (r *lineReader) readTurning(n *document.Node, acceleration bool) float64 {
	if acceleration {
		return n.Measure(&r.p, quantity.AngularAcceleration, "deg/s2", document.Limit{Above: "0 deg/s2"}) * math.Pi / 180
	}
	return n.Measure(&r.p, quantity.AngularSpeed, "deg/s", document.Limit{Above: "0 deg/s"}) * math.Pi / 180
}

// lengthText is a length in m to four digits, in mm or inches.
func lengthText(m float64, units Units) string {
	if units == US {
		return quantityText(m/quantity.Size("in"), "in")
	}
	return quantityText(1000*m, "mm")
}

// volumeText is a volume in m3 to four digits, in mL or fluid ounces.
func volumeText(m3 float64, units Units) string {
	if units == US {
		return quantityText(m3/quantity.Size("floz"), "fl oz")
	}
	return quantityText(1e6*m3, "mL")
}

// quantityText is a number to four digits with its unit.
func quantityText(x float64, unit string) string {
	return strconv.FormatFloat(x, 'g', 4, 64) + " " + unit
}
