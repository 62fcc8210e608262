package scenarios

import (
	"dwellcast/stations/motion"
)

// SloshTiming is the wave in an open carton at the setting, in m at the wall.
type SloshTiming struct {
	Tank  motion.Tank
	Units Units
	Move  motion.IndexMove
	// First is the wave mode that matters most, with its frequency.
	First motion.Mode
	// Open is the wave over the Indexes that a carton makes while it is open, from rest: the verdict rests on it. Beside it stand
	// Steady, the wave under endless indexes, Once, that of a single index, and WorstPhase, what no timing exceeds.
	Open, Steady, Once motion.Response
	Indexes            int
	WorstPhase         float64
	// Residual is what one index leaves in the first mode, QuasiStatic the tilt under the peak acceleration alone.
	Residual, QuasiStatic float64
	// BeyondLinear are the limits of linear theory that the wave exceeds, in words; none: the figures may be believed.
	BeyondLinear []string
	// Quieter and Slower are the nearest index times below and above the present one at which the first mode is left nearly still;
	// 0 where there is none.
	Quieter, Slower motion.QuietIndex
}

// sloshOf solves the wave of a conveyor's index; nil where it can't be solved.
func sloshOf(f *File, m *ConveyorMotion, indexes int, setting motion.CartonsPerHour) *SloshTiming {
	index := m.Cam.Axis().Segments[0]
	s := &SloshTiming{Tank: *f.Mechanics.Liquid, Units: f.Mechanics.Wave, Move: motion.IndexMove{
		Law: index.Law, Travel: index.Travel, Time: index.Span().Time(m.Master.RevolutionAt(setting)), Cycle: m.Master.CycleAt(setting)}}
	wave, problems := motion.NewSlosh(s.Tank, s.Move)
	if len(problems) > 0 {
		return nil
	}
	s.First, s.Indexes = s.Tank.Mode(1), indexes
	s.Open = wave.Indexes(indexes, s.Move.Cycle-s.Move.Time)
	s.Steady, s.Once = wave.Steady(), wave.Indexes(1, s.Move.Cycle)
	s.WorstPhase, s.Residual, s.QuasiStatic = wave.WorstPhase(), wave.Residual(0), wave.QuasiStatic()
	s.BeyondLinear = s.Tank.BeyondLinear(max(s.Open.Peak, s.Steady.Peak))
	for _, q := range s.Tank.QuietIndexTimes(s.Move.Law, s.Move.Travel, s.Move.Time/2, 2*s.Move.Time) {
		if q.Time <= s.Move.Time {
			s.Quieter = q
		} else if s.Slower.Time == 0 {
			s.Slower = q
		}
	}
	return s
}
