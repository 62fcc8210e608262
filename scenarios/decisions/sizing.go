package decisions

import (
	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// Sizing is which of some lines makes a demand, with what certainty, and what that costs.
type Sizing struct {
	Title string
	Seed  uint64
	Spec  SizeSpec
	// Candidates stand in the order of the study.
	Candidates []Sized
	// Best is the recommended candidate by index, -1 where none makes the demand; Next is the one that would be taken without
	// it, -1 for none.
	Best, Next int
	// Undecided is a candidate by index that may make the demand and would be taken then; -1 where there is none.
	Undecided int
	// Reachable is the candidate that has the best chance of making the demand.
	Reachable int
	// Ranges is what becomes of the choice at the ends of the ranges in the study and its lines; see FindOverturns.
	Ranges
	Warnings []scenarios.Warning
}

// Sized is what one candidate can do and what it costs. Outputs are good cartons, intervals come from the shifts that were run.
type Sized struct {
	SizeCandidate
	// Operating point: the candidate's own setting, or the one needed where that does not make the demand; cartons/h, 0 for a
	// line without a setting. Raised says which.
	Setting float64
	Raised  bool
	// Beyond lists the limits of the mechanics that the setting breaks.
	Beyond []scenarios.LimitFinding
	// NetHours of a year, and how many undiminished shifts they come to.
	NetHours, YearShifts float64
	// PerShift is the output of one line, ShiftSD the spread of single shifts.
	PerShift stats.Interval
	ShiftSD  float64
	// Year is the output of a year on average; YearSD the spread of single years, the sum of independent shifts.
	Year   stats.Interval
	YearSD float64
	// Chance of making the demand in a year; its interval comes from that of the mean.
	Chance stats.Interval
	Verdict
	// Own is the chance at the candidate's own setting.
	Own stats.Interval
	// Needed is the setting that makes the demand; nil for a line without a setting, or where none was looked for.
	Needed *NeededSetting
	// LinesNeeded of this kind make the demand with the wanted probability; 0 where 100 of them do not.
	LinesNeeded int
	// Spare is the share of the year's output that the expected demand leaves unused, below 0 where it is short.
	Spare stats.Interval
	// Sold cartons and WasteCartons of a full year.
	Sold, WasteCartons stats.Interval
	Money
	// DominatedBy names a candidate that makes no less and costs no more; empty for none.
	DominatedBy string

	shifts *scenarios.Shifts
	years  []float64 // output of a year made of the like of each shift
}

// Verdict says whether a candidate makes the demand with the wanted probability.
type Verdict int

// A verdict is open where the interval of the chance holds the wanted probability.
const (
	Open Verdict = iota
	Makes
	Short
)

// String is the verdict in a word.
func (v Verdict) String() string { return [...]string{"open", "makes", "short"}[v] }

// verdictOf judges a chance.
func verdictOf(chance stats.Interval, wanted float64) Verdict {
	switch {
	case !chance.Assessed():
		return Open
	case chance.Low >= wanted:
		return Makes
	case chance.High < wanted:
		return Short
	}
	return Open
}

// Demanded says that the candidate is sure to make the demand as often as wanted.
func (s *Sized) Demanded() bool { return s.Verdict == Makes }

// Money is what a candidate costs and brings, in the study's currency. Intervals come from the shifts that were run.
type Money struct {
	// AnnualCost is the equivalent annual cost of price, salvage, operating, crew and waste over the life.
	AnnualCost stats.Interval
	// CostPerThousand is the present value of all costs by that of the cartons sold, for a thousand of them.
	CostPerThousand stats.Interval
	// AnnualWorth is the contribution of the cartons sold less all costs, as an equivalent annual amount.
	AnnualWorth stats.Interval
	// NetPresentValue over the life, counted against the candidate that one has, if the study names it.
	NetPresentValue stats.Interval
	// SimplePayback and DiscountedPayback in years, RateOfReturn a year; NaN where there is none.
	SimplePayback, DiscountedPayback, RateOfReturn float64
}

// NeededSetting is the least setting that makes the demand with the wanted probability.
type NeededSetting struct {
	// Found is false where no setting looked at does; Setting is then the one that makes most.
	Found bool
	// Open says that none is found, but that these shifts do not rule out one of those looked at: Setting is then that one.
	Open bool
	// Setting in whole cartons/h that makes it even by the lower bound of the output.
	Setting float64
	// At is where it is made on average, with the interval that the shifts leave open; assessed only where Found.
	At stats.Interval
	// Most is the highest setting looked at, and why no higher.
	Most    float64
	MostWhy string
	// Chance of making the demand at Setting, and the output of a year there.
	Chance, Year stats.Interval

	file *scenarios.File
}
