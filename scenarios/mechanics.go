package scenarios

import (
	"dwellcast/stations/motion"
)

// Mechanics is how a line moves, as far as its file says so: what its times come from, and what limits its setting.
// Lengths are in metres, areas in square metres, volumes in cubic metres, angles of the master in degrees.
type Mechanics struct {
	// Described says that the file gives more than times: cams, drives, a dose, jaws, an arm, moves, a liquid, or a conveyor
	// whose motion follows the setting. Only then does a ceiling bind a run.
	Described bool
	// Carton is the carton's inside; nil where the file does not say.
	Carton *Carton
	// Liquid is what sloshes in an open carton between filler and sealer; nil where the file does not say.
	Liquid *motion.Tank
	// Wave is in what the liquid's height at the wall is told: as its freeboard, or the carton's height.
	Wave Units
	// Conveyors in the order of Line.Conveyors.
	Conveyors []ConveyorMotion
	// Stations in the order of Line.Stations.
	Stations []StationMotion
}

// Carton is the inside of an open carton that stands on the conveyor, each side above 0.
type Carton struct {
	Length float64 // along the conveyor
	Width  float64 // across it
	Height float64 // to the rim
	Level  float64 // of the liquid above the bottom, below Height; 0 where the file does not say
	Units  Units   // of its height
}

// Area is the inside area of the carton seen from above, m2.
func (c Carton) Area() float64 { return c.Length * c.Width }

// ConveyorMotion is how an indexing conveyor moves.
type ConveyorMotion struct {
	// Master turns the cams; with neither a fixed time nor a share of the pace there is none.
	Master motion.Master
	Timed  bool
	// Cam of the index; nil where the index is given as a time.
	Cam *motion.Cam
	// Index is the time of an index that is no arc of the master's revolution.
	Index motion.Seconds
	// Travels says that pitch and law are given, so that speeds and accelerations are known.
	Travels bool
	// Encoder counts pulses of the master; 0 where the file does not say.
	Encoder motion.Encoder
	Drive   *motion.Drive
	// Highest acceleration that the cartons bear, m/s2; 0 for no limit.
	Acceleration float64
	// Units of the pitch, of the drive's torque, and of the acceleration.
	Units, TorqueUnits, AccelerationUnits Units
}

// moving is the angle of the master in which the conveyor moves, and what is left that takes time whatever the master does.
func (c ConveyorMotion) moving() (motion.Degrees, motion.Seconds) {
	if c.Cam == nil {
		return 0, c.Index
	}
	var angle motion.Degrees
	for _, w := range c.Cam.Moving() {
		angle += w.Span()
	}
	return angle, 0
}

// StationMotion is how a station moves; what the file does not say is nil.
type StationMotion struct {
	// Axes are the cams that the station adds to the master.
	Axes []AxisMotion
	// Fill needs an axis called nozzle; Dosing one called piston too.
	Fill   *motion.FillStation
	Dosing *DosingMotion
	Jaws   *motion.Jaws
	// Heat or Glue say how long the jaws must stay closed.
	Heat *motion.HeatSeal
	Glue *motion.Glue
	// LeastDwell is the dwell that heat or glue need; 0 where the file does not say.
	LeastDwell motion.Seconds
	// Drop is the erected carton's fall from the arm, and Free how far the arm may go until it has fallen (rad).
	Drop *motion.Drop
	Free float64
	// JawUnits, HeatUnits and DropUnits are those of the jaws' stroke, of the temperatures, and of the height that the carton falls.
	JawUnits, HeatUnits, DropUnits Units
	// Moves of a robot in turn.
	Moves []RobotMove
}

// axis returns the station's axis of a name; nil where there is none.
func (s *StationMotion) axis(name string) *AxisMotion {
	for i := range s.Axes {
		if s.Axes[i].Name == name {
			return &s.Axes[i]
		}
	}
	return nil
}

// AxisMotion is one cam on the master.
type AxisMotion struct {
	Name string
	// Turns says that it turns: its travel is in radians.
	Turns bool
	Cam   *motion.Cam
	Drive *motion.Drive
	// Highest acceleration, m/s2 or rad/s2; 0 for no limit.
	Acceleration float64
	// Units of its travel, of the drive's torque, and of the acceleration.
	Units, TorqueUnits, AccelerationUnits Units
	// Clearances keep it clear of the conveyor or of other axes.
	Clearances []motion.Clearance
}

// DosingMotion is how a filler meters.
type DosingMotion struct {
	Dose       float64 // m3, more than 0
	Declared   float64 // m3 on the label; 0 where the file does not say
	Spread     float64 // standard deviation of the dose, m3
	Tolerable  float64 // deficiency that the user tolerates, m3; 0 takes OIML R 87
	Piston     motion.Piston
	NozzleArea float64 // m2; 0 where the file does not say
	Splash     float64 // highest exit velocity, m/s; 0 for no limit
	// Units of the dose, of its spread, of the cylinder, and of the exit velocity.
	Units, SpreadUnits, CylinderUnits, SplashUnits Units
}

// RobotMove is a part of a robot's cycle: a servo move, or a time of its own such as gripping.
type RobotMove struct {
	Name string
	Move motion.Move // its Distance is 0 where the time is given
	Time motion.Seconds
}
