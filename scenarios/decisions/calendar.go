package decisions

import (
	"math"
	"time"

	"dwellcast/stations"
)

// Calendar is the time of a year for which production is scheduled, and what is taken off it beside the stops that a line file
// plans within a shift.
type Calendar struct {
	// Days of production a year, 1 to 366, and Shifts a day, 1 or more.
	Days, Shifts int
	// Breaks are taken off every shift.
	Breaks time.Duration
	// Cleaning and Changeovers are taken off the year.
	Cleaning, Changeovers time.Duration
}

// PerYear is the number of shifts a year.
func (c Calendar) PerYear() int { return c.Days * c.Shifts }

// Scheduled is the time of all shifts of a year, hours.
func (c Calendar) Scheduled(shift stations.Shift) float64 {
	return float64(c.PerYear()) * shift.Length.Hours()
}

// Net is the time of a year that is left for running, hours: scheduled time less breaks, cleaning and changeovers, and less what
// is planned within each shift.
func (c Calendar) Net(shift stations.Shift) float64 {
	perShift := running(shift) - c.Breaks
	return float64(float64(c.PerYear())*perShift.Hours()) - c.Cleaning.Hours() - c.Changeovers.Hours()
}

// WholeShifts is how many undiminished shifts the net time comes to.
func (c Calendar) WholeShifts(shift stations.Shift) float64 {
	return c.Net(shift) / running(shift).Hours()
}

// running is the part of a shift in which no stop is planned.
func running(shift stations.Shift) time.Duration {
	left := shift.Length
	for _, w := range shift.Planned {
		left -= w.To - w.From
	}
	return left
}

// SettingFor is the setting that makes good cartons at a rate, by arithmetic alone, both cartons/h of running time: rate /
// (efficiency x quality), where efficiency is the share of the setting that is made and quality the share of that which is good.
func SettingFor(rate, efficiency, quality float64) float64 { return rate / float64(efficiency*quality) }

// RampUp is how a new line comes up to its output: from a share of it at first, in a straight line to all of it.
type RampUp struct {
	// Takes so many years, 0 for none.
	Takes float64
	// From is the share of the output at the start, 0 to 1.
	From float64
}

// Share is the part of the full output that is made in year k, counted from 1.
func (r RampUp) Share(k int) float64 {
	if r.Takes <= 0 {
		return 1
	}
	from, to := float64(k-1), math.Min(float64(k), r.Takes)
	if from >= r.Takes {
		return 1
	}
	mean := r.From + float64((1-r.From)*(from+to)/2/r.Takes)
	return float64(mean*(to-from)) + (float64(k) - to)
}
