package reports

import (
	"dwellcast/reports/layout"
	"dwellcast/sim/stats"
)

// interval is short for the statistics' own.
type interval = stats.Interval

// cartonsAShift is the unit of cartons counted by the shift.
const cartonsAShift = "cartons/shift"

// exactWidth prints the half-width of an interval to the digits that it supports.
func exactWidth(iv interval) string {
	if !iv.Assessed() {
		return layout.None
	}
	return layout.Fixed(iv.HalfWidth(), layout.Decimals(iv.HalfWidth()))
}

// percent prints a share in percent with one decimal, a bare dash for nothing at all.
func percent(share float64) string {
	if share == 0 {
		return "-"
	}
	return layout.Fixed(100*share, 1)
}
