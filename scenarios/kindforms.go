package scenarios

import (
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// kindForm is what a line file knows of a kind of station, beside its keys in kindKeys.
type kindForm struct {
	// read reads the parts of its act.
	read func(*lineReader, *draft)
	// limit is the kind of the limit that its act sets to the speed, and limitName what that is called.
	limit     motion.LimitKind
	limitName string
	// liftAlone and liftStand say what lifts it where the station runs on its own, and on a conveyor.
	liftAlone, liftStand string
}

// kindForms has a row for each kind of station.
var kindForms = [...]kindForm{
	stations.Erect: {(*lineReader).readErect, motion.ErectorLimit, "act within the cycle",
		"a shorter act, or one erector more", "a shorter bottom seal, an earlier drop, or a shorter index angle"},
	stations.Fill: {(*lineReader).readFill, ActLimit, "fill within the cycle",
		"a shorter fill, or one filler more", "a shorter fill, or a shorter index angle"},
	stations.Seal: {(*lineReader).readSeal, motion.DwellLimit, "seal cycle within the stand",
		"a shorter dwell, faster jaws, or one sealer more", "a shorter dwell, faster jaws, or a shorter index angle"},
	stations.Offload: {(*lineReader).readOffload, motion.RobotLimit, "robot cycle",
		"a shorter cycle, or one robot more", "a shorter cycle, a gripper that is away sooner, or one robot more"},
	stations.Machine: {(*lineReader).readMachine, ActLimit, "act within the cycle",
		"a shorter act, or one machine more", "a shorter act, or a shorter index angle"},
}
