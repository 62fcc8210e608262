package scenarios

import (
	"errors"

	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// Timing is the mechanics of a line at its setting: the time budget, the margins of the interlocks, what each axis, motor, dose,
// wave and seal comes to, and how fast the line may be set.
type Timing struct {
	Title   string
	Setting motion.CartonsPerHour
	Pace    motion.Seconds
	// Described says that the file gives more than times.
	Described bool
	Budget    *Budget
	Ceiling   SpeedCeiling
	Conveyors []ConveyorTiming
	// Stations in flow order, with their windows in a cycle.
	Stations []StationTiming
	// Margins of all interlocks, in flow order.
	Margins []PlacedMargin
	// Solved phases: what could be won by moving cams.
	Solved   []SolvedPhase
	Warnings []Warning
}

// ConveyorTiming is one indexing conveyor with the axes on its master.
type ConveyorTiming struct {
	Name string
	// Revolution of the master, 0 without one; Cycle from index to index at the setting, longer where an act is; Index and Stand are its two parts.
	Revolution, Cycle, Index, Stand motion.Seconds
	// Continuous says that the master never stops.
	Continuous bool
	// Turns is how many whole turns of a master that never stops a cycle lasts, 0 of another; and TurnsFrom, of a turn that takes a fixed time, the
	// settings from which fewer turns do, rising.
	Turns     int
	TurnsFrom []TurnsFrom
	// Encoder pulses per degree and per second of the master; 0 where the file does not say.
	PulsesPerDegree, PulsesPerSecond float64
	// Moving are the windows in which the conveyor moves; none where the index is no arc of the revolution.
	Moving []motion.Window
	Axes   []AxisTiming
	// Slosh is nil where no open carton with a liquid stands on the conveyor, or its motion is not known.
	Slosh *SloshTiming
}

// TurnsFrom is a setting from which on a cycle lasts so many turns of the master.
type TurnsFrom struct {
	Setting motion.CartonsPerHour
	Turns   int
}

// AxisTiming is what one axis demands at the setting.
type AxisTiming struct {
	// Station that the axis belongs to; empty for the conveyor itself.
	Station, Name string
	Turns         bool // rad instead of m
	Cam           *motion.Cam
	// Peaks are unknown (zero) for a conveyor without pitch or law.
	Peaks motion.Peaks
	Known bool
	// Load is nil without a drive.
	Load *motion.Load
	// Units of its travel, and of the torques of its drive.
	Units, TorqueUnits Units
}

// StationTiming is when a station does what in a cycle.
type StationTiming struct {
	Name string
	Kind stations.Kind
	// Conveyor is an index into Timing.Conveyors; -1 for a station that runs on its own, whose windows count from its own start.
	Conveyor int
	// Windows in turn, in seconds from the start of the index.
	Windows []StationWindow
	// Needs is the shortest cycle that it allows, and Slack what the cycle leaves it.
	Needs, Cycle, Slack motion.Seconds
	// Turns is how many whole turns of a master that never stops it needs; 0 without one.
	Turns int
	// Critical says that it has no slack: any delay of it delays the next index.
	Critical bool
	Dosing   *DosingTiming
	Sealing  *SealTiming
}

// StationWindow is one part of a station's act.
type StationWindow struct {
	Name     string
	From, To motion.Seconds
	// ByMaster says that the master times it, so that it shrinks with the setting where the revolution follows the pace.
	ByMaster bool
}

// PlacedMargin is the margin of an interlock with the station that it concerns. An interlock of an arm has its Distance in rad.
type PlacedMargin struct {
	Where string
	Turns bool
	// Before says that the unsafe angle lies before AngleAt, as where a window begins; else it lies after it.
	Before bool
	// Units of its Distance.
	Units Units
	motion.Margin
}

// BindingConveyor is the conveyor, by index, on which the limit lies that sets the ceiling; the first where none does.
func (t *Timing) BindingConveyor() int {
	binding := t.Ceiling.Binding()
	if binding == nil {
		return 0
	}
	for i, c := range t.Conveyors {
		if c.Name == binding.Where {
			return i
		}
	}
	for _, s := range t.Stations {
		if s.Name == binding.Where && s.Conveyor >= 0 {
			return s.Conveyor
		}
	}
	return 0
}

// ErrNoSetting says that a file without a setting has no timing.
var ErrNoSetting = errors.New("the line has no setting to be timed at")

// TimingOf computes the timing of a file at its setting.
func TimingOf(f *File) (*Timing, error) {
	if f.Line.Setting == 0 {
		return nil, ErrNoSetting
	}
	t := &Timing{
		Title: f.Line.Title, Setting: motion.CartonsPerHour(f.Line.Setting), Described: f.Mechanics.Described,
		Budget: BudgetOf(f.Line), Warnings: f.Warnings,
	}
	t.Pace = motion.PacePeriod(t.Setting, f.Line.Lanes)
	t.Ceiling = findSpeedCeiling(f)
	w := &timer{file: f, timing: t}
	for _, g := range f.Line.Sections() {
		if g.Conveyor >= 0 {
			w.conveyor(g)
		}
		w.stations(g)
	}
	w.warn()
	return t, nil
}

// timer fills a Timing.
type timer struct {
	file   *File
	timing *Timing
}

// conveyor times a conveyor and the axes on its master.
func (w *timer) conveyor(g stations.Group) {
	f := w.file
	m := &f.Mechanics.Conveyors[g.Conveyor]
	moving, index := m.moving()
	c := ConveyorTiming{Name: (&limitFinder{file: f}).conveyorName(g), Continuous: m.Master.Continuous, Cycle: m.Master.CycleAt(w.timing.Setting)}
	if m.Timed {
		c.Revolution = m.Master.RevolutionAt(w.timing.Setting)
	} else {
		c.Cycle = w.timing.Pace
	}
	c.Cycle = max(c.Cycle, w.cycleOf(g))
	c.Index = index
	if m.Cam != nil {
		c.Index, c.Moving = moving.Time(c.Revolution), m.Cam.Moving()
		axis := AxisTiming{Name: "conveyor", Cam: m.Cam, Units: m.Units, TorqueUnits: m.TorqueUnits}
		if m.Travels {
			w.measure(&axis, m.Drive, c.Revolution)
		}
		c.Axes = append(c.Axes, axis)
	}
	c.Stand = c.Cycle - c.Index
	if m.Encoder.PulsesPerTurn > 0 && c.Revolution > 0 {
		c.PulsesPerDegree, c.PulsesPerSecond = m.Encoder.PulsesPerDegree(), m.Encoder.Frequency(c.Revolution)
	}
	for i := g.First; i <= g.Last; i++ {
		for _, a := range f.Mechanics.Stations[i].Axes {
			axis := AxisTiming{Station: f.Line.Stations[i].Name, Name: a.Name, Turns: a.Turns, Cam: a.Cam, Units: a.Units, TorqueUnits: a.TorqueUnits}
			w.measure(&axis, a.Drive, c.Revolution)
			c.Axes = append(c.Axes, axis)
		}
	}
	if (&limitFinder{file: f}).carriesLiquid(g) && m.Travels {
		c.Slosh = sloshOf(f, m, openIndexes(f.Line, g), w.timing.Setting)
	}
	w.timing.Conveyors = append(w.timing.Conveyors, c)
}

// measure finds the peaks of an axis and the load of its motor.
func (w *timer) measure(axis *AxisTiming, drive *motion.Drive, revolution motion.Seconds) {
	axis.Known, axis.Peaks = true, axis.Cam.Peaks(revolution)
	if drive != nil {
		load := drive.Load(axis.Cam, revolution)
		axis.Load = &load
	}
}

// cycleOf is the cycle that the slowest of the line leaves a section, by which slack is told too.
func (w *timer) cycleOf(g stations.Group) motion.Seconds {
	var cycle motion.Seconds
	w.timing.Budget.each(func(_ *SectionBudget, st *StationBudget) {
		if st.Station == g.First {
			cycle = motion.SecondsOf(st.Cycle)
		}
	})
	return cycle
}
