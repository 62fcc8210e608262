package scenarios

import (
	"errors"

	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// stations times the stations of a section.
func (w *timer) stations(g stations.Group) {
	at := len(w.timing.Stations)
	for i := g.First; i <= g.Last; i++ {
		w.timing.Stations = append(w.timing.Stations, w.station(g, i))
	}
	if g.Conveyor >= 0 {
		markCritical(w.timing.Stations[at:])
		w.countTurns(&w.timing.Conveyors[len(w.timing.Conveyors)-1], &w.file.Mechanics.Conveyors[g.Conveyor], w.timing.Stations[at:])
	}
}

// markCritical finds the stations that the next index waits for: those without slack. Where the setting paces there are none, since any
// station may be late by its slack before the index is.
func markCritical(list []StationTiming) {
	for i := range list {
		list[i].Critical = list[i].Slack < noSlack
	}
}

// noSlack is a slack that is put down to rounding.
const noSlack motion.Seconds = 1e-9

// station lays the parts of a station's act into the cycle.
func (w *timer) station(g stations.Group, i int) StationTiming {
	f := w.file
	spec, moves := &f.Line.Stations[i], &f.Mechanics.Stations[i]
	s := StationTiming{Name: spec.Name, Kind: spec.Kind, Conveyor: -1}
	var at motion.Seconds
	if g.Conveyor >= 0 {
		s.Conveyor = len(w.timing.Conveyors) - 1
		at = w.timing.Conveyors[s.Conveyor].Index
	}
	byMaster := spec.Kind == stations.Fill && spec.ActsEmpty
	for _, part := range spec.Parts {
		window := StationWindow{Name: part.Name, From: at, To: at + motion.SecondsOf(part.Time.Mean())}
		window.ByMaster = byMaster || part.Does == stations.ArmPart || part.Does == stations.DropPart
		s.Windows, at = append(s.Windows, window), window.To
	}
	w.timing.Budget.each(func(_ *SectionBudget, b *StationBudget) {
		if b.Station == i {
			s.Needs, s.Cycle, s.Slack = motion.SecondsOf(b.Needs), motion.SecondsOf(b.Cycle), motion.SecondsOf(b.Slack)
		}
	})
	s.Dosing = dosingOf(f, moves, s.Conveyor, w.timing)
	s.Sealing = sealingOf(spec, moves)
	if glue := spec.Glue; glue != nil {
		s.Sealing.Laid, s.Sealing.LaidBefore = f.Line.Stations[glue.From].Name, laidBefore(f.Line, i)
		s.Sealing.LiesOpen = openFor(f, &f.Mechanics.Conveyors[g.Conveyor], g, i, w.timing.Setting)
	}
	if g.Conveyor >= 0 {
		w.margins(&f.Mechanics.Conveyors[g.Conveyor], spec, moves)
		w.solve(&f.Mechanics.Conveyors[g.Conveyor], spec, moves)
	}
	return s
}

// margins measures the interlocks of a station.
func (w *timer) margins(m *ConveyorMotion, spec *stations.Station, moves *StationMotion) {
	c := &w.timing.Conveyors[len(w.timing.Conveyors)-1]
	for _, lock := range interlocksOf(m, moves) {
		margin := lock(c.Revolution)
		w.timing.Margins = append(w.timing.Margins, PlacedMargin{Where: spec.Name, Turns: turningMargin(moves, margin.Name), Units: marginUnits(moves, margin.Name),
			Before: beginsAt(m, moves, margin.AngleAt), Margin: margin})
	}
	if moves.Jaws != nil && m.Cam != nil && c.Revolution > 0 {
		margin := moves.Jaws.ClearBeforeIndex(c.Stand, m.Cam.Moving()[0].From, c.Revolution)
		w.timing.Margins = append(w.timing.Margins, PlacedMargin{Where: spec.Name, Before: true, Units: moves.JawUnits, Margin: margin})
	}
}

// beginsAt says that a window which must be safe begins at an angle: the conveyor's move, the dose, or that of a clearance.
func beginsAt(m *ConveyorMotion, moves *StationMotion, at motion.Degrees) bool {
	windows := m.Cam.Moving()
	if moves.Fill != nil && moves.Fill.Piston != nil {
		windows = append(windows, moves.Fill.Piston.Returning()...)
	}
	for _, a := range moves.Axes {
		for _, c := range a.Clearances {
			windows = append(windows, c.While...)
		}
	}
	for _, w := range windows {
		if off := (w.From - at).Within(); off < 1e-6 || off > 360-1e-6 {
			return true
		}
	}
	return false
}

// turningMargin says that the distance of a margin is an angle.
func turningMargin(moves *StationMotion, name string) bool {
	if name == "arm clear of the drop" {
		return true
	}
	for _, a := range moves.Axes {
		for _, c := range a.Clearances {
			if c.Name == name {
				return a.Turns
			}
		}
	}
	return false
}

// marginUnits are those of the axis that a margin is about, or of the height that a carton falls.
func marginUnits(moves *StationMotion, name string) Units {
	for _, a := range moves.Axes {
		for _, c := range a.Clearances {
			if c.Name == name {
				return a.Units
			}
		}
	}
	if nozzle := moves.axis("nozzle"); moves.Fill != nil && nozzle != nil {
		return nozzle.Units
	}
	return moves.DropUnits
}

// SolvedPhase is an angle, or a revolution, that the interlocks allow at the most or at the least.
type SolvedPhase struct {
	Where, What string
	// Now and Could are angles of the master in degrees, or seconds where Seconds says so.
	Now, Could float64
	Seconds    bool
	// Fault says why there is no such phase; then Could is not known.
	Fault string
}

// solve finds the earliest descent of the nozzle, the latest reversal of the piston and the shortest revolution.
func (w *timer) solve(m *ConveyorMotion, spec *stations.Station, moves *StationMotion) {
	revolution := w.timing.Conveyors[len(w.timing.Conveyors)-1].Revolution
	add := func(p SolvedPhase, could float64, err error) {
		p.Where, p.Could = spec.Name, could
		if err != nil {
			p.Fault = err.Error()
		}
		w.timing.Solved = append(w.timing.Solved, p)
	}
	if fill := moves.Fill; fill != nil {
		at, err := fill.EarliestDescent(0)
		add(SolvedPhase{What: "earliest descent of the nozzle", Now: firstMove(fill.Nozzle.Rising())}, float64(at), err)
		if fill.Piston != nil {
			at, err := fill.LatestReversal(0, revolution)
			add(SolvedPhase{What: "latest reversal of the piston", Now: firstMove(fill.Piston.Returning())}, float64(at), err)
		}
	}
	if locks := interlocksOf(m, moves); len(locks) > 0 {
		all := func(revolution motion.Seconds) []motion.Margin {
			margins := make([]motion.Margin, len(locks))
			for i, lock := range locks {
				margins[i] = lock(revolution)
			}
			return margins
		}
		least := revolution / 20
		shortest, err := motion.ShortestRevolution(all, least, 20*revolution)
		if err == nil && shortest <= least {
			err = errors.New("none as short as a twentieth of it is too short for them")
		}
		add(SolvedPhase{What: "shortest revolution of its interlocks", Now: float64(revolution), Seconds: true}, float64(shortest), err)
	}
}

func firstMove(windows []motion.Window) float64 {
	if len(windows) == 0 {
		return 0
	}
	return float64(windows[0].From)
}
