package motion

import (
	"fmt"
	"math"
)

// NewInterlockLimit holds while every interlock is kept in a revolution of the setting's length. Its margin is the
// least time left, s; where an interlock fails by distance only, that distance in m (below 0).
func NewInterlockLimit(name string, master Master, interlocks func(revolution Seconds) []Margin) Limit {
	margin := func(setting CartonsPerHour) float64 {
		least := math.Inf(1)
		for _, m := range interlocks(master.RevolutionAt(setting)) {
			least = min(least, float64(m.Time))
			if m.Distance < -distanceRounding {
				least = min(least, m.Distance)
			}
		}
		return least
	}
	return Limit{
		Name: name, Kind: InterlockLimit, Unit: "s", Margin: margin,
		Lift: "move the phases apart, or shorten what the master does not time (valve, drop)",
	}
}

// NewMotorLimit holds while no rating of the drive is exceeded. Its margin is the free share of the most used rating.
func NewMotorLimit(name string, master Master, cam *Cam, drive Drive) Limit {
	margin := func(setting CartonsPerHour) float64 {
		return 1 - drive.Load(cam, master.RevolutionAt(setting)).HighestShare()
	}
	return Limit{
		Name: name, Kind: MotorLimit, Unit: "of rating", Margin: margin,
		Lift: "a longer angle, a gentler law, less mass, or a stronger drive",
	}
}

// NewAccelerationLimit holds while the peak acceleration of an axis is at most highest, m/s2 or rad/s2.
func NewAccelerationLimit(name string, master Master, cam *Cam, highest float64) Limit {
	margin := func(setting CartonsPerHour) float64 {
		return highest - cam.Peaks(master.RevolutionAt(setting)).Acceleration.Value
	}
	return Limit{
		Name: name, Kind: AccelerationLimit, Unit: "m/s2", Margin: margin,
		Lift: "a longer angle, or a law with a lower Ca",
	}
}

// NewFlowLimit holds while the dose leaves the nozzle, of an open area in m2, at no more than the splash limit, m/s.
func NewFlowLimit(name string, master Master, cam *Cam, piston Piston, nozzleArea, splash float64) Limit {
	margin := func(setting CartonsPerHour) float64 {
		flow := piston.Flows(cam, master.RevolutionAt(setting)).Dispense.Value
		return splash - ExitVelocity(flow, nozzleArea)
	}
	return Limit{
		Name: name, Kind: FlowLimit, Unit: "m/s", Margin: margin,
		Lift: "a longer dispensing angle, a wider nozzle, or a law with a lower Cv",
	}
}

// NewDwellLimit holds while what does not shrink with the setting (sensor lag, jaw travel, dwell) fits into the stand
// of a conveyor that moves within the given angle. Its margin is the time left of the stand, s.
func NewDwellLimit(name string, master Master, moving Degrees, needed Seconds) Limit {
	margin := func(setting CartonsPerHour) float64 {
		return float64(master.StandAt(setting, moving) - needed)
	}
	return Limit{
		Name: name, Kind: DwellLimit, Unit: "s", Margin: margin,
		Lift: "a shorter dwell, faster jaws, or a shorter index angle",
	}
}

// NewCycleLimit holds while a number of like units (1 or more), each taking cycle for one carton, keep up with the
// setting. Its margin is time left per carton and unit, s.
func NewCycleLimit(name string, kind LimitKind, units int, cycle Seconds) Limit {
	margin := func(setting CartonsPerHour) float64 {
		return float64(PacePeriod(setting, max(units, 1)) - cycle)
	}
	return Limit{
		Name: name, Kind: kind, Unit: "s", Margin: margin,
		Lift: "a shorter cycle, or one unit more",
	}
}

// NewSealLimit holds while the jaws press for as long as the seal needs. Its margin is the time to spare, s, the same at every
// setting.
func NewSealLimit(name string, dwell, least Seconds) Limit {
	return Limit{
		Name: name, Kind: SealLimit, Unit: "s", Margin: func(CartonsPerHour) float64 { return float64(dwell - least) },
		Lift: "a longer dwell, hotter jaws, or a glue that sets sooner",
	}
}

// NewSloshLimit holds while the wave stays within the tank's freeboard over as many indexes from rest as a carton makes while it is
// open; with 0 indexes that of endlessly repeated ones. Its margin is the freeboard left, m. The wave is not monotonic in the
// setting, so the limit has Dips: settings whose cycle is a whole number of periods of a mode.
func NewSloshLimit(name string, master Master, conveyor *Cam, tank Tank, indexes int) (Limit, error) {
	var index *camMove
	for i := range conveyor.moves {
		if m := &conveyor.moves[i]; m.travel > 0 && index == nil {
			index = m
		} else if m.travel != 0 {
			return Limit{}, fmt.Errorf("%s: slosh is solved for one index in a revolution", name)
		}
	}
	if index == nil {
		return Limit{}, fmt.Errorf("%s: the conveyor has no index", name)
	}
	if _, problems := NewSlosh(tank, IndexMove{index.law, index.travel, 1, 2}); len(problems) > 0 {
		return Limit{}, fmt.Errorf("%s: %w", name, problems[0])
	}
	angle := Degrees(index.to - index.from)
	margin := func(setting CartonsPerHour) float64 {
		move := IndexMove{index.law, index.travel, angle.Time(master.RevolutionAt(setting)), master.CycleAt(setting)}
		s, problems := NewSlosh(tank, move)
		if len(problems) > 0 {
			return math.NaN()
		}
		if float64(move.Time)*tank.Mode(1).Frequency > slowIndex {
			return tank.Freeboard - 2*s.QuasiStatic()
		}
		return tank.Freeboard - s.wave(indexes)
	}
	return Limit{
		Name: name, Kind: SloshLimit, Unit: "m", Margin: margin, DipWidth: max(tank.Damping, 1e-4),
		Lift: "more freeboard, a gentler or longer index, or an index time near a node of the residual",
		Dips: func(lo, hi CartonsPerHour) []CartonsPerHour { return tank.resonances(master, lo, hi) },
	}, nil
}

// slowIndex is so many periods of the first mode that the liquid follows an index of this length without swinging: twice the tilt is then
// more than it ever rises.
const slowIndex = 60

// wave is the highest over a number of indexes from rest and the stands behind them; with 0 that of endless ones.
func (s *Slosh) wave(indexes int) float64 {
	if indexes > 0 {
		return s.Indexes(indexes, s.move.Cycle-s.move.Time).Peak
	}
	return s.Steady().Peak
}

// Beyond these, a cycle in step with a mode raises no dip: after so many cycle times of decay a thousandth of the wave is left, and no
// tank keeps step for so many periods.
const (
	stillAfter  = 6.9 // natural logarithm of a thousand
	mostPeriods = 1000
)

// resonances are the settings between lo and hi whose cycle is a whole number of periods of an odd mode, as long as the wave of one
// cycle still meets the next, and, where the master never stops, those at which the cycle jumps.
func (t Tank) resonances(master Master, lo, hi CartonsPerHour) []CartonsPerHour {
	var found []CartonsPerHour
	perHour := 3600 * float64(master.lanes())
	for i := range t.modeCount() {
		f := t.Mode(2*i+1).Frequency * math.Sqrt(1-t.Damping*t.Damping)
		most := min(perHour*f/float64(lo), mostPeriods, stillAfter/(2*math.Pi*max(t.Damping, 1e-9)))
		for m := math.Ceil(perHour * f / float64(hi)); m <= most; m++ {
			if m > 0 {
				found = append(found, CartonsPerHour(perHour*f/m))
			}
		}
	}
	if master.Continuous && master.Revolution > 0 {
		for m := 1.0; m <= mostPeriods && perHour/(m*float64(master.Revolution)) >= float64(lo); m++ {
			jump := perHour / (m * float64(master.Revolution))
			found = append(found, CartonsPerHour(jump*(1-1e-6)), CartonsPerHour(jump*(1+1e-6)))
		}
	}
	return found
}
