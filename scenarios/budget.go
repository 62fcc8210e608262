package scenarios

import (
	"slices"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// Budget is the time budget of a line that nothing disturbs: what each station needs in a cycle, who is critical, and how
// much slack the others have. Mean times are compared; what drawn times add to a cycle is in Section.Expected.
type Budget struct {
	// Line is what the budget was made of.
	Line *stations.Line
	// Pace is the pace period of the setting; 0 without a setting.
	Pace     time.Duration
	Sections []SectionBudget
	// Rate is what the line would make without any stop, miss or wait for a buffer, cartons/h.
	Rate float64
	// Limit says what limits that rate.
	Limit Limit
	// Ceiling is the highest setting that the slowest station can follow, cartons/h; +Inf where nothing takes time.
	Ceiling float64
	// Next is the station that limits from there on, by index; -1 where nothing takes time.
	Next int
	Crew CrewBudget
	// PlannedTime is the part of the shift in which the line is planned to stand.
	PlannedTime time.Duration
	// Assumptions are the quantities of the file that carry a source or a range.
	Assumptions []document.Assumption
	Warnings    []Warning
}

// LimitKind is what sort of thing limits a line.
type LimitKind uint8

// What can limit a line that nothing disturbs.
const (
	BySetting LimitKind = iota
	ByStation
	ByMaster  // the master's revolution outlasts all else
	ByCamZero // all are clear in time, but the next cam zero comes late
	ByNothing // no setting, and no station takes time
)

// Limit names what limits a line; Station is an index, and -1 unless Kind is ByStation.
type Limit struct {
	Kind    LimitKind
	Station int
}

// SectionBudget is an indexing conveyor with its stations, or one station that runs on its own.
type SectionBudget struct {
	// Conveyor is an index into the line's conveyors, or -1.
	Conveyor int
	// Paced says that the setting times this section: every conveyor, and the head of a line without one.
	Paced bool
	// Timed says that a cycle lasts a revolution of the master at least. A filler that rides on the master stands for it.
	Timed bool
	// Stations on it, in flow order.
	Stations []StationBudget
	// Index, Revolution and Release are those of the conveyor.
	Index, Revolution time.Duration
	Release           stations.Release
	// Cartons that one cycle moves: lanes on a conveyor, parallel units otherwise.
	Cartons int
	// Cycle is the length of a cycle at mean times, the setting's pace included.
	Cycle time.Duration
	// Expected is the mean cycle when times are drawn, which waits for the slowest draw; equal to Cycle when none is.
	Expected time.Duration
	// Rate is Cartons per Expected, cartons/h; +Inf for a section that takes no time.
	Rate float64
}

// StationBudget is what one station needs of a cycle.
type StationBudget struct {
	// Station is its index in the line.
	Station int
	Parts   []PartBudget
	// Act is the sum of the parts, at their means.
	Act time.Duration
	// Needs is the shortest cycle of its section that the station allows, index included.
	Needs time.Duration
	// Cycle is how long a cycle may last before the station lowers the line's rate.
	Cycle time.Duration
	// Slack is Cycle - Needs, at least 0; a part may grow by it without cost.
	Slack time.Duration
	// Critical says that the station sets the line's rate; Relief is then how much less it would have to need for
	// something else to set it.
	Critical bool
	Relief   time.Duration
	// Ceiling is the highest setting that it can follow, cartons/h; +Inf where it takes no time.
	Ceiling float64
}

// PartBudget is one part of an act.
type PartBudget struct {
	Name string
	// Mean, Low and High are the mean, the least and the greatest that can be drawn.
	Mean, Low, High time.Duration
	// Drawn says that the part differs from cycle to cycle.
	Drawn bool
	// Turns is the value of the part's mean from which its station is critical, or below which it no longer is; 0 where
	// no value of this part alone would do.
	Turns time.Duration
}

// Check is the time budget of a file's line with all that is to be said beside it: what the file rests on, what is odd about it, and where
// its ceiling lies.
func Check(f *File) *Budget {
	b := BudgetOf(f.Line)
	b.Assumptions = f.Assumptions
	b.Warnings = slices.Concat(f.Warnings, b.Warnings, CeilingWarnings(f))
	return b
}

// BudgetOf computes the time budget of a line that Open has checked.
func BudgetOf(line *stations.Line) *Budget {
	b := &Budget{Line: line, Pace: line.Pace()}
	groups := line.Sections()
	for k, group := range groups {
		paced := b.Pace > 0 && (group.Conveyor >= 0 || k == 0 && !hasConveyor(groups))
		b.Sections = append(b.Sections, sectionOf(line, group, paced, b.Pace))
	}
	b.findRate()
	b.findSlack()
	b.findCeiling()
	b.Crew = crewOf(b)
	for _, window := range line.Shift.Planned {
		b.PlannedTime += window.To - window.From
	}
	b.Warnings = warningsOf(b)
	return b
}

func hasConveyor(groups []stations.Group) bool {
	return slices.ContainsFunc(groups, func(g stations.Group) bool { return g.Conveyor >= 0 })
}

// each calls visit for every station of the line in flow order.
func (b *Budget) each(visit func(*SectionBudget, *StationBudget)) {
	for k := range b.Sections {
		for i := range b.Sections[k].Stations {
			visit(&b.Sections[k], &b.Sections[k].Stations[i])
		}
	}
}
