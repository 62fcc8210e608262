package decisions

import (
	"dwellcast/scenarios"
)

// SizeSpec says what is wanted of a line, for how long it runs, and which lines could be had.
type SizeSpec struct {
	// Currency is a word for printing only.
	Currency string
	Demand   Demand
	// Chance is the wanted probability of making the demand in a year, above 0 and below 1; 0 takes 0.9.
	Chance float64
	// SellsAll says that every good carton can be sold; otherwise no more than the demand.
	SellsAll bool
	// Discount rate a year, 0 or more.
	Discount   float64
	Calendar   Calendar
	Candidates []SizeCandidate
	// Against names the candidate that is what one has; payback, rate of return and net present value then count what another
	// one costs and brings beyond it. Empty counts against nothing.
	Against string
	// Replications is how many shifts of every line are run, at least 2; 0 takes 60.
	Replications int
	// Confidence of the intervals; 0 means 0.95.
	Confidence float64
	// AsSet judges every candidate at its own setting; otherwise the setting needed is looked for too.
	AsSet bool
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// SizeCandidate is a line, or some of them, that could be had, with what it costs. Money is in the study's currency.
type SizeCandidate struct {
	Name string
	// Changes say in words how the line differs from the study's.
	Changes []string
	File    *scenarios.File
	// Lines side by side, 1 or more; all costs but those of a carton are for one of them.
	Lines int
	// Calendar is the study's, perhaps with other shifts a day.
	Calendar Calendar
	RampUp   RampUp
	// Price is paid at the start, 0 or more; Salvage comes in after Life whole years.
	Price, Salvage float64
	Life           int
	// Operating cost a year, 0 or more, beside crew and waste.
	Operating float64
	// Attendants are paid for all scheduled time, AttendantHour each.
	Attendants, AttendantHour float64
	// Waste is the price of a carton that is made and not good, 0 or more.
	Waste float64
	// Contribution is what a good carton that is sold brings, after its own materials; Sells says that it was given.
	Contribution float64
	Sells        bool
}

// WithDefaults fills in what was not asked for.
func (s SizeSpec) WithDefaults() SizeSpec {
	if s.Chance == 0 {
		s.Chance = 0.9
	}
	if s.Replications <= 0 {
		s.Replications = 60
	}
	s.Replications = max(s.Replications, 2)
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

// crewCost is what the crew of all lines costs a year.
func (c SizeCandidate) crewCost() float64 {
	return float64(c.Lines) * c.Attendants * c.AttendantHour * c.Calendar.Scheduled(c.File.Line.Shift)
}
