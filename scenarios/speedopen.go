package scenarios

import (
	"math"

	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// openName is what the limit of glue is called.
const openName = "glue closed within its open time"

// openTime is how long the glue of a station may lie open: over the cycles since it was laid, and what the jaws take to close. It forbids
// slow settings.
func (w *limitFinder) openTime(m *ConveyorMotion, g stations.Group, i int) {
	glue := w.file.Line.Stations[i].Glue
	if glue == nil {
		return
	}
	w.add(w.file.Line.Stations[i].Name, motion.NewOpenLimit(openName, motion.SecondsOf(glue.Open), func(setting motion.CartonsPerHour) motion.Seconds {
		return openFor(w.file, m, g, i, setting)
	}))
}

// openFor is how long the glue of a station has lain open at a setting when it is closed, unless something stops the line: as many cycles
// as it was laid before, and the time to close. Where that varies, it is one that all but one act in a thousand keep.
func openFor(f *File, m *ConveyorMotion, g stations.Group, i int, setting motion.CartonsPerHour) motion.Seconds {
	st := &f.Line.Stations[i]
	closing := motion.Seconds(0)
	for _, part := range st.Parts[:st.Glue.Closes] {
		closing += motion.SecondsOf(part.Time.Quantile(1 - shortSeals))
	}
	return closing + motion.Seconds(laidBefore(f.Line, i))*cycleAt(f, m, g, setting)
}

// laidBefore is how many cycles before a station closes it its glue was laid.
func laidBefore(l *stations.Line, i int) int {
	cycles := 0
	for k := l.Stations[i].Glue.From; k < i; k++ {
		cycles += l.Stations[k].Turns + l.Stations[k+1].Feed.Pitches
	}
	return cycles
}

// cycleAt is the cycle of a conveyor at a setting, by the means of its acts; without a setting as its slowest station leaves it.
func cycleAt(f *File, m *ConveyorMotion, g stations.Group, setting motion.CartonsPerHour) motion.Seconds {
	if setting == 0 {
		section := sectionOf(f.Line, g, false, 0)
		return motion.SecondsOf(section.Cycle)
	}
	cycle, turn := motion.PacePeriod(setting, max(f.Line.Lanes, 1)), motion.Seconds(0)
	if m.Timed {
		cycle, turn = m.Master.CycleAt(setting), m.Master.RevolutionAt(setting)
	}
	_, index := m.moving()
	for i := g.First; i <= g.Last; i++ {
		if moving, needed := standNeeds(m, &f.Line.Stations[i], &f.Mechanics.Stations[i]); needed > 0 {
			cycle = max(cycle, moving.Time(turn)+index+needed)
		}
	}
	if m.Timed && m.Master.Continuous {
		cycle = motion.Seconds(math.Ceil(float64(cycle/turn)-1e-9)) * turn
	}
	return cycle
}
