package reports

import "dwellcast/sim/stats"

// interval is short for the statistics' own.
type interval = stats.Interval

// cartonsAShift is the unit of cartons counted by the shift.
const cartonsAShift = "cartons/shift"
