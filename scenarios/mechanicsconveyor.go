package scenarios

import (
	"dwellcast/scenarios/document"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// readConveyorMotion reads how a conveyor is driven, and makes the cam of its index where that is an arc of a revolution.
func (r *lineReader) readConveyorMotion(f *document.Fields, c stations.Conveyor, travel Travel, share float64) ConveyorMotion {
	m := ConveyorMotion{
		Master:  motion.Master{Share: share, Continuous: c.Release == stations.AtCamZero, Lanes: r.line.Lanes},
		Timed:   c.Revolution > 0,
		Index:   motion.SecondsOf(c.Index),
		Travels: travel.Pitch > 0 && travel.Law != "" && travel.Shared,
	}
	if share == 0 {
		m.Master.Revolution = motion.SecondsOf(c.Revolution)
	}
	if m.Travels && share > 0 {
		r.described() // the whole motion of the conveyor follows the setting
	}
	m.Units = unitsOf(f.Take("pitch"))
	m.Drive, m.TorqueUnits = r.readDrive(f.Take("drive"), false)
	acceleration := f.Take("acceleration")
	m.AccelerationUnits = unitsOf(acceleration)
	m.Acceleration = r.readAcceleration(acceleration, false)
	encoder := f.Take("encoder")
	m.Encoder.PulsesPerTurn = r.readPulses(encoder)
	for _, n := range []*document.Node{f.Take("drive"), acceleration, encoder} {
		if n != nil && !m.Travels {
			r.p.Add(n, "needs to know how the conveyor moves", "add pitch: 6 in, revolution: 2 s and index: {from: 0 deg, to: 110 deg, law: modified sine}")
			break
		}
	}
	m.Cam = indexCam(travel)
	return m
}

// indexCam is the cam of an index that is an arc of the revolution. Where pitch or law are missing, its windows are right all the
// same, and nothing else is asked of it.
func indexCam(travel Travel) *motion.Cam {
	arc := travel.To - travel.From
	if !travel.Shared || arc <= 0 || arc >= 360 {
		return nil
	}
	law, err := motion.LawByName(travel.Law)
	if err != nil {
		law = motion.ModifiedSine()
	}
	pitch := travel.Pitch
	if pitch <= 0 {
		pitch = 1
	}
	index := motion.Segment{Name: "index", Kind: motion.Index, From: motion.Degrees(travel.From), To: motion.Degrees(travel.To), Travel: pitch, Law: law}
	cam, problems := motion.NewCam(motion.Axis{Name: "conveyor", Segments: []motion.Segment{index}})
	if len(problems) > 0 {
		return nil // reported where the index was read
	}
	return cam
}

// readAcceleration reads the highest acceleration that an axis may have, m/s2 or rad/s2; 0 where none is given.
func (r *lineReader) readAcceleration(n *document.Node, turns bool) float64 {
	if n == nil {
		return 0
	}
	r.described()
	if turns {
		return r.readTurning(n, true)
	}
	return r.readAlong(n, "m/s2")
}
