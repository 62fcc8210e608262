package scenarios

import (
	"math"
	"slices"
	"strings"

	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// Kinds of limit beside those of the motion package.
const (
	// MasterLimit: the revolution of fixed length outlasts the pace period.
	MasterLimit motion.LimitKind = "master"
	// ActLimit: the act of a filler or machine whose time is given outlasts its share of the cycle.
	ActLimit motion.LimitKind = "act"
)

// SpeedLimit is one reason why the line cannot be set faster, and the station or conveyor that it concerns.
type SpeedLimit struct {
	Where string
	// Units in which the file writes what is limited.
	Units Units
	motion.Limit
}

// marginRounding is the violation of a margin, in its own unit, that is put down to rounding.
const marginRounding = 1e-9

// Unassessed is a limit that the file asks for and that can't be told from what it says. No verdict counts it as kept.
type Unassessed struct {
	Where, Name, Why string
}

// limitFinder collects the limits of a line.
type limitFinder struct {
	file       *File
	limits     []SpeedLimit
	unassessed []Unassessed
}

// speedLimits are all limits that the file describes, in the order of the line, and those that can't be told.
func speedLimits(f *File) ([]SpeedLimit, []Unassessed) {
	w := &limitFinder{file: f}
	groups := f.Line.Sections()
	for k, g := range groups {
		if g.Conveyor < 0 {
			w.seal(g.First)
			if k > 0 || hasConveyor(groups) || f.Line.Setting > 0 {
				w.alone(g.First)
			}
			continue
		}
		m := &f.Mechanics.Conveyors[g.Conveyor]
		w.conveyor(m, g)
		for i := g.First; i <= g.Last; i++ {
			w.station(m, i)
			w.openTime(m, g, i)
		}
	}
	return w.limits, w.unassessed
}

// add takes a limit whose margin may be short by no more than rounding.
func (w *limitFinder) add(where string, l motion.Limit) {
	inner := l.Margin
	l.Margin = func(setting motion.CartonsPerHour) float64 {
		m := inner(setting)
		if m < 0 && m > -marginRounding {
			return 0
		}
		return m
	}
	w.limits = append(w.limits, SpeedLimit{Where: where, Limit: l})
}

// addIn takes a limit whose margin is to be told in the units of the file.
func (w *limitFinder) addIn(units Units, where string, l motion.Limit) {
	w.add(where, l)
	w.limits[len(w.limits)-1].Units = units
}

func (w *limitFinder) lift(where, lift string, l motion.Limit) {
	l.Lift = lift
	w.add(where, l)
}

// alone is a station that runs on its own.
func (w *limitFinder) alone(i int) {
	st := &w.file.Line.Stations[i]
	if act := actOfParts(st); act > 0 {
		form := &kindForms[st.Kind]
		w.lift(st.Name, form.liftAlone, motion.NewCycleLimit(form.limitName, form.limit, st.Units, act))
	}
}

func actOfParts(st *stations.Station) motion.Seconds {
	var act motion.Seconds
	for _, part := range st.Parts {
		act += motion.SecondsOf(part.Time.Mean())
	}
	return act
}

// conveyor is what limits a conveyor and its master.
func (w *limitFinder) conveyor(m *ConveyorMotion, g stations.Group) {
	where := w.conveyorName(g)
	if m.Timed && m.Master.Continuous {
		w.wholeTurns(where, m, g)
	} else if m.Timed && m.Master.Revolution > 0 {
		w.lift(where, "a shorter revolution, or one that follows the pace", motion.NewCycleLimit("revolution of the master", MasterLimit, max(m.Master.Lanes, 1), m.Master.Revolution))
	}
	if m.Cam == nil || !m.Travels {
		w.noSlosh(where, g, "the conveyor has no index with a pitch and a motion law")
		return
	}
	if m.Drive != nil {
		w.add(where, motion.NewMotorLimit("conveyor drive", m.Master, m.Cam, *m.Drive))
	}
	if m.Acceleration > 0 {
		w.addIn(m.AccelerationUnits, where, motion.NewAccelerationLimit("acceleration of the cartons", m.Master, m.Cam, m.Acceleration))
	}
	if w.carriesLiquid(g) {
		l, err := motion.NewSloshLimit(sloshName, m.Master, m.Cam, *w.file.Mechanics.Liquid, openIndexes(w.file.Line, g))
		if err != nil {
			w.noSlosh(where, g, strings.TrimPrefix(err.Error(), sloshName+": "))
			return
		}
		w.addIn(w.file.Mechanics.Wave, where, l)
	}
}

const (
	sloshName  = "slosh in the open carton"
	splashName = "splash at the nozzle"
)

// noSlosh notes that the wave of an open carton can't be told.
func (w *limitFinder) noSlosh(where string, g stations.Group, why string) {
	if w.carriesLiquid(g) {
		w.unassessed = append(w.unassessed, Unassessed{where, sloshName, why})
	}
}

// openIndexes is how many indexes a carton makes on a conveyor while it is open, from rest: from the filler, or from the first pitch
// where it comes filled, to the sealer, or to the end.
func openIndexes(l *stations.Line, g stations.Group) int {
	indexes, open := 0, !slices.ContainsFunc(l.Stations[g.First:g.Last+1], func(st stations.Station) bool { return st.Kind == stations.Fill })
	for i := g.First; i <= g.Last; i++ {
		st := &l.Stations[i]
		if open && i > g.First {
			indexes += st.Feed.Pitches
		}
		switch st.Kind {
		case stations.Fill:
			open = true
		case stations.Seal:
			if open {
				return max(indexes, 1)
			}
		}
	}
	return max(indexes+l.Conveyors[g.Conveyor].RunOut, 1)
}

// seal is what heat or glue need of the jaws. Where the dwell varies, so much of it counts as all but one act in a thousand have.
func (w *limitFinder) seal(i int) {
	st, moves := &w.file.Line.Stations[i], &w.file.Mechanics.Stations[i]
	if st.Kind != stations.Seal || moves.LeastDwell == 0 {
		return
	}
	for _, part := range st.Parts {
		if part.Does == stations.DwellPart {
			w.add(st.Name, motion.NewSealLimit("dwell that the seal needs", motion.SecondsOf(part.Time.Quantile(shortSeals)), moves.LeastDwell))
		}
	}
}

// shortSeals is the share of acts whose dwell may be shorter than the seal needs.
const shortSeals = 0.001

// wholeTurns holds a conveyor whose master never stops to its true cadence: the next index begins at a zero of the master, so that a cycle is
// as many whole turns as the slowest station needs, and at least as many as the pace asks for. It is the law by which BudgetOf and the
// simulation go.
func (w *limitFinder) wholeTurns(where string, m *ConveyorMotion, g stations.Group) {
	section := sectionOf(w.file.Line, g, true, w.file.Line.Pace())
	turns := max(1, float64(section.level(section.slowest(-1)))/float64(max(section.Revolution, 1)))
	limit := motion.Limit{Name: "whole turns of the master", Kind: MasterLimit, Unit: "s",
		Lift: "a shorter act, so that fewer turns do, or a revolution that divides the pace",
		Margin: func(setting motion.CartonsPerHour) float64 {
			pace, turn := m.Master.Pace(setting), m.Master.RevolutionAt(setting)
			return float64(pace - motion.Seconds(max(turns, math.Ceil(float64(pace/turn)-1)))*turn)
		}}
	w.add(where, limit)
}

// conveyorName is what a conveyor is called: by its first station where there are several.
func (w *limitFinder) conveyorName(g stations.Group) string {
	if len(w.file.Line.Conveyors) == 1 {
		return "conveyor"
	}
	return "conveyor of " + w.file.Line.Stations[g.First].Name
}

// carriesLiquid says that filled cartons stand open on the conveyor.
func (w *limitFinder) carriesLiquid(g stations.Group) bool {
	if w.file.Mechanics.Liquid == nil {
		return false
	}
	open := false
	for i := range w.file.Line.Stations[:g.Last+1] {
		switch w.file.Line.Stations[i].Kind {
		case stations.Fill:
			open = true
		case stations.Seal:
			if i < g.First {
				open = false
			}
		}
	}
	return open
}

// station is what limits a station on a conveyor.
func (w *limitFinder) station(m *ConveyorMotion, i int) {
	st, moves := &w.file.Line.Stations[i], &w.file.Mechanics.Stations[i]
	w.axes(m, st, moves)
	w.interlocks(m, st, moves)
	if dosing := moves.Dosing; dosing != nil && dosing.Splash > 0 {
		if piston := moves.axis("piston"); piston == nil {
			w.unassessed = append(w.unassessed, Unassessed{st.Name, splashName, "no cam says how the piston moves"})
		} else {
			w.addIn(dosing.SplashUnits, st.Name, motion.NewFlowLimit(splashName, m.Master, piston.Cam, dosing.Piston, dosing.NozzleArea, dosing.Splash))
		}
	}
	w.seal(i)
	w.stand(m, st, moves)
}

func (w *limitFinder) axes(m *ConveyorMotion, st *stations.Station, moves *StationMotion) {
	for _, a := range moves.Axes {
		if a.Drive != nil {
			w.add(st.Name, motion.NewMotorLimit(a.Name+" drive", m.Master, a.Cam, *a.Drive))
		}
		if a.Acceleration > 0 {
			l := motion.NewAccelerationLimit("acceleration of the "+a.Name, m.Master, a.Cam, a.Acceleration)
			if a.Turns {
				l.Unit = "rad/s2"
			}
			w.addIn(a.AccelerationUnits, st.Name, l)
		}
	}
}

// interlocks are limits, each by itself, so that the one at fault is named.
func (w *limitFinder) interlocks(m *ConveyorMotion, st *stations.Station, moves *StationMotion) {
	for _, lock := range interlocksOf(m, moves) {
		l := motion.NewInterlockLimit(lock(1).Name, m.Master, func(revolution motion.Seconds) []motion.Margin {
			return []motion.Margin{lock(revolution)}
		})
		if lift, known := interlockLifts[l.Name]; known {
			l.Lift = lift
		} else {
			l.Lift = "move the phases apart, or change the stroke"
		}
		if drop := moves.Drop; drop != nil && l.Name == dropInterlock && drop.Moving(m.Cam) {
			l.Lift = "a drop that begins once the conveyor stands"
		}
		w.add(st.Name, l)
	}
}

// dropInterlock is the name that the motion package gives to a drop's margin against the index.
const dropInterlock = "carton dropped before the next index"

// interlockLifts say what gives an interlock room.
var interlockLifts = map[string]string{
	"nozzle out of the carton while the conveyor moves": "a later descent or an earlier lift of the nozzle",
	"dose only inside the carton":                       "an earlier end of the dose, or a later lift of the nozzle",
	"dose drawn before it is dispensed":                 "an earlier end of drawing, or a faster valve",
	"nozzle tip above the level, at least":              "a nozzle that lifts sooner, or a later dose",
	"nozzle tip above the level, at most":               "a nozzle that lifts later or stays lower",
	"carton dropped before the next index":              "an earlier or a shorter drop",
	"arm clear of the drop":                             "an earlier or a shorter drop, or an arm that leaves later",
}

// interlocksOf are the interlocks of a station that the master times.
func interlocksOf(m *ConveyorMotion, moves *StationMotion) []func(motion.Seconds) motion.Margin {
	var locks []func(motion.Seconds) motion.Margin
	if m.Cam == nil {
		return nil
	}
	if fill := moves.Fill; fill != nil {
		locks = append(locks, fill.NozzleOutWhileMoving)
		if fill.Piston != nil {
			locks = append(locks, fill.DoseInsideCarton, fill.DoseDrawn, fill.TipAboveLevel)
			if fill.MostAboveLevel > 0 {
				locks = append(locks, fill.TipNearLevel)
			}
		}
	}
	if drop := moves.Drop; drop != nil {
		locks = append(locks, func(revolution motion.Seconds) motion.Margin { return drop.BeforeIndex(m.Cam, revolution) })
		if arm := moves.axis("arm"); arm != nil && moves.Free > 0 {
			free := moves.Free
			locks = append(locks, func(revolution motion.Seconds) motion.Margin { return drop.ArmClear(arm.Cam, free, revolution) })
		}
	}
	for _, a := range moves.Axes {
		for _, c := range a.Clearances {
			locks = append(locks, c.Margin)
		}
	}
	return locks
}

// stand is what a station needs of the conveyor's stand. What rides on the master shrinks with the setting and is no such limit.
func (w *limitFinder) stand(m *ConveyorMotion, st *stations.Station, moves *StationMotion) {
	form := &kindForms[st.Kind]
	name := form.limitName
	switch {
	case st.Kind == stations.Erect:
		name = "bottom seal within the stand"
	case st.Away > 0:
		w.lift(st.Name, form.liftStand, motion.NewCycleLimit("robot cycle", form.limit, st.Units*max(m.Master.Lanes, 1), actOfParts(st)))
		name = "gripper away within the stand"
	}
	if moving, needed := standNeeds(m, st, moves); needed > 0 {
		_, index := m.moving()
		l := motion.NewDwellLimit(name, m.Master, moving, needed+index)
		l.Kind = form.limit
		w.lift(st.Name, form.liftStand, l)
	}
}

// standNeeds is what a station needs of the conveyor's stand, from the end of an angle of the master on; 0 of what rides on the master
// until the end of its revolution.
func standNeeds(m *ConveyorMotion, st *stations.Station, moves *StationMotion) (moving motion.Degrees, needed motion.Seconds) {
	moving, _ = m.moving()
	switch {
	case st.Kind == stations.Fill && st.ActsEmpty && m.Timed:
		return moving, 0
	case st.Kind == stations.Erect:
		if arm := moves.axis("arm"); arm != nil && m.Cam != nil {
			moving += armStands(m.Cam, arm.Cam) - m.Cam.Moving()[0].To
		}
		return moving, bottomSeal(st)
	case st.Away > 0:
		return moving, motion.SecondsOf(st.Away)
	}
	return moving, actOfParts(st)
}

// bottomSeal is the part of an erector's act that the master does not time, once the arm stands.
func bottomSeal(st *stations.Station) motion.Seconds {
	var needed motion.Seconds
	for _, part := range st.Parts {
		if part.Does != stations.ArmPart && part.Does != stations.DropPart {
			needed += motion.SecondsOf(part.Time.Mean())
		}
	}
	return needed
}

// lowest is a setting from which limits are looked at, and highest one up to which.
const (
	lowestSetting  motion.CartonsPerHour = 1
	highestSetting motion.CartonsPerHour = 1_000_000
)

// broken says whether a limit forbids a setting; a margin that is not a number counts as broken.
func (l SpeedLimit) broken(setting motion.CartonsPerHour) bool {
	m := l.Margin(setting)
	return m < 0 || math.IsNaN(m)
}
