package motion

import "math"

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
		peaks := cam.Peaks(master.RevolutionAt(setting))
		if peaks.VelocitySteps { // a jolt has no highest acceleration
			return math.Inf(-1)
		}
		return highest - peaks.Acceleration.Value
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

// NewOpenLimit holds while glue is closed within its open time; closed is how long it has lain open by then at a setting, the shorter the
// faster the line is set. Its margin is the open time left, s.
func NewOpenLimit(name string, open Seconds, closed func(CartonsPerHour) Seconds) Limit {
	return Limit{
		Name: name, Kind: OpenLimit, Unit: "s", Rises: true, Margin: func(setting CartonsPerHour) float64 { return float64(open - closed(setting)) },
		Lift: "a faster setting, fewer pitches since the glue was laid, or a glue that stays open longer",
	}
}
