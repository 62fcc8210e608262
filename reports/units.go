package reports

import (
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// Pages print what follows from a quantity in the units that the file has written it in; data carry SI units, as their keys say.

// lengthIn prints a length of m in mm or inches.
func lengthIn(m float64, in scenarios.Units, decimals int) string {
	if in == scenarios.US {
		return layout.Fixed(m/quantity.Size("in"), decimals+2) + " in"
	}
	return layout.Fixed(1000*m, decimals) + " mm"
}

// volumeIn prints a volume of m3 in mL or fluid ounces.
func volumeIn(m3 float64, in scenarios.Units) string {
	if in == scenarios.US {
		return layout.Fixed(m3/quantity.Size("floz"), 2) + " fl oz"
	}
	return layout.Fixed(1e6*m3, 1) + " mL"
}

// flowIn prints a flow of m3/s in L/s or fluid ounces a second.
func flowIn(m3 float64, in scenarios.Units) string {
	if in == scenarios.US {
		return layout.Fixed(m3/quantity.Size("floz"), 1) + " fl oz/s"
	}
	return layout.Fixed(1000*m3, 2) + " L/s"
}

// velocityIn prints a speed of m/s, or feet a second.
func velocityIn(m float64, in scenarios.Units) string {
	if in == scenarios.US {
		return layout.Fixed(m/quantity.Size("ft"), 2) + " ft/s"
	}
	return layout.Fixed(m, 2) + " m/s"
}

// torqueIn prints a torque of N m, or pound-force inches.
func torqueIn(nm float64, in scenarios.Units) string {
	if in == scenarios.US {
		return layout.Fixed(nm/(quantity.Size("lbf")*quantity.Size("in")), 1) + " lbf in"
	}
	return layout.Fixed(nm, 2) + " N m"
}

// temperatureIn prints degrees Celsius, or Fahrenheit.
func temperatureIn(celsius float64, in scenarios.Units) string {
	if in == scenarios.US {
		return layout.Fixed(float64(celsius*1.8)+32, 1) + " °F"
	}
	return layout.Fixed(celsius, 1) + " °C"
}

// travelUnit is the unit of an axis's stroke, and how many of them are in its SI unit.
func travelUnit(turns bool, in scenarios.Units) (unit string, perSI float64) {
	switch {
	case turns:
		return "rad", 1
	case in == scenarios.US:
		return "in", 1 / quantity.Size("in")
	}
	return "m", 1
}
