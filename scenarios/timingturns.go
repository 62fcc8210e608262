package scenarios

import (
	"math"

	"dwellcast/stations/motion"
)

// wholeTurnsOf is how many whole turns of a master a time takes; a length that is one but for rounding is not rounded up.
func wholeTurnsOf(time, turn motion.Seconds) int {
	return max(1, int(math.Ceil(float64(time/turn)-1e-9)))
}

// countTurns says how many turns of a master that never stops a cycle and each station's act last, and at which settings that changes: with a
// turn of a fixed time, one turn less does from where the pace is that much shorter, down to what the slowest station needs.
func (w *timer) countTurns(c *ConveyorTiming, m *ConveyorMotion, list []StationTiming) {
	if !c.Continuous || c.Revolution <= 0 {
		return
	}
	least := 1
	for i := range list {
		list[i].Turns = wholeTurnsOf(list[i].Needs, c.Revolution)
		least = max(least, list[i].Turns)
	}
	c.Turns = wholeTurnsOf(c.Cycle, c.Revolution)
	if m.Master.Revolution == 0 {
		return
	}
	for turns := max(c.Turns+1, least); turns >= least; turns-- {
		c.TurnsFrom = append(c.TurnsFrom, TurnsFrom{motion.SettingFor(motion.Seconds(turns)*m.Master.Revolution, max(w.file.Line.Lanes, 1)), turns})
	}
}
