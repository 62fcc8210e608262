package scenarios

import (
	"math"

	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// DosingTiming is what a filler's dose comes to; volumes in m3, lengths in m.
type DosingTiming struct {
	Dose, Stroke, Capacity float64
	// Bore of a round piston of the same area.
	Bore float64
	// Level of the liquid above the carton's bottom when filled.
	Level float64
	// Flows are zero without a cam of the piston; Exit is the peak velocity at the nozzle, 0 where its bore is not given.
	Flows motion.Flows
	Exit  float64
	// LevelSpeed is how fast the level rises at the peak flow, m/s.
	LevelSpeed float64
	Splash     float64 // limit of Exit; 0 for none

	// Declared content, spread and giveaway; Declared is 0 where the file does not say, and then so is the rest.
	Declared, Spread, Giveaway float64
	// Tolerable deficiency, and by whom: the file, or OIML R 87.
	Tolerable   float64
	TolerableBy string
	// ShareShort is the share of cartons short of the declared content by more than that, ShareShortTwice by more than twice that.
	ShareShort, ShareShortTwice float64
	// LeastGiveaway keeps the share of short cartons at 2.5 %, with the mean not below the declared content.
	LeastGiveaway float64
	// Units of volumes, of their spread, of the cylinder, of the level in the carton, and of the exit velocity.
	Units, SpreadUnits, CylinderUnits, LevelUnits, SplashUnits Units
}

// shortShare is the share of cartons that may be short of the declared content by more than the tolerable deficiency: 2.5 %,
// as OIML R 87 (2004) has it of inspection lots; from memory.
const shortShare = 0.025

// dosingOf computes the figures of a dose; nil where the file gives none.
func dosingOf(f *File, moves *StationMotion, conveyor int, t *Timing) *DosingTiming {
	m := moves.Dosing
	if m == nil {
		return nil
	}
	d := &DosingTiming{Dose: m.Dose, Stroke: m.Dose / m.Piston.Area, Capacity: m.Piston.Capacity(), Bore: m.Piston.Bore(),
		Level: motion.FillHeight(m.Dose, f.Mechanics.Carton.Area()), Splash: m.Splash,
		Units: m.Units, SpreadUnits: m.SpreadUnits, CylinderUnits: m.CylinderUnits, LevelUnits: f.Mechanics.Carton.Units, SplashUnits: m.SplashUnits}
	if piston := moves.axis("piston"); piston != nil && conveyor >= 0 {
		d.Flows = m.Piston.Flows(piston.Cam, t.Conveyors[conveyor].Revolution)
		d.LevelSpeed = motion.LevelSpeed(d.Flows.Dispense.Value, f.Mechanics.Carton.Area())
		if m.NozzleArea > 0 {
			d.Exit = motion.ExitVelocity(d.Flows.Dispense.Value, m.NozzleArea)
		}
	}
	if m.Declared > 0 {
		d.content(m)
	}
	return d
}

// content compares the dose with the declared content. OIML R 87's table is in ml.
func (d *DosingTiming) content(m *DosingMotion) {
	d.Declared, d.Spread = m.Declared, m.Spread
	law := motion.Dosing{Declared: m.Declared, Mean: m.Dose, Spread: m.Spread}
	d.Giveaway = law.Giveaway()
	d.Tolerable, d.TolerableBy = m.Tolerable, "the file"
	if m.Tolerable == 0 {
		ml, err := motion.TolerableDeficiency(1e6 * m.Declared)
		if err != nil {
			d.TolerableBy = ""
			return
		}
		d.Tolerable, d.TolerableBy = ml/1e6, "OIML R 87 (2004)"
	}
	d.ShareShort, d.ShareShortTwice = law.ShareShort(d.Tolerable), law.ShareShort(2*d.Tolerable)
	d.LeastGiveaway = law.LeastGiveaway(d.Tolerable, shortShare)
}

// SealTiming is what the jaws do and what the seal needs.
type SealTiming struct {
	Lag, Close, Dwell, Open motion.Seconds
	// Reaches says which limit bounds the jaws' peak speed; empty where no move is described.
	Jaws *motion.Jaws
	// Least is the dwell that heat or glue need, Short the dwell that all but one act in a thousand have, and Margin what that has above
	// the least, as the limit has it; all 0 where the file does not say.
	Least, Short, Margin motion.Seconds
	// Interface is the temperature between the boards after the dwell, C; NaN without heat.
	Interface   float64
	Heat        *motion.HeatSeal
	Sensitivity motion.DwellSensitivity
	Glue        *motion.Glue
	// Laid is the station that lays the glue, so many cycles before; empty where the file does not say. It then lies open for Open, at the
	// setting and for all but one act in a thousand.
	Laid       string
	LaidBefore int
	LiesOpen   motion.Seconds
	// JawUnits are those of the jaws' stroke, HeatUnits those of the temperatures.
	JawUnits, HeatUnits Units
	// Reject is the share of rejects at this dwell and setting.
	Reject float64
}

// sealingOf computes the figures of a seal; nil for another kind of station.
func sealingOf(spec *stations.Station, moves *StationMotion) *SealTiming {
	if spec.Kind != stations.Seal {
		return nil
	}
	s := &SealTiming{Jaws: moves.Jaws, Least: moves.LeastDwell, Interface: math.NaN(), Heat: moves.Heat, Glue: moves.Glue, Reject: spec.Reject,
		JawUnits: moves.JawUnits, HeatUnits: moves.HeatUnits}
	for _, part := range spec.Parts {
		if part.Does == stations.DwellPart && s.Least > 0 {
			s.Short = motion.SecondsOf(part.Time.Quantile(shortSeals))
		}
		*map[stations.PartKind]*motion.Seconds{stations.LagPart: &s.Lag, stations.ClosePart: &s.Close, stations.DwellPart: &s.Dwell, stations.OpenPart: &s.Open}[part.Does] = motion.SecondsOf(part.Time.Mean())
	}
	if s.Least > 0 {
		s.Margin = s.Short - s.Least
	}
	if s.Heat != nil {
		s.Interface = s.Heat.InterfaceTemperature(s.Dwell)
		s.Sensitivity, _ = s.Heat.Sensitivity() // an error was reported when the file was read
	}
	return s
}
