package scenarios

import (
	"fmt"
	"math"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// mostAxes is how many cams a station may have.
const mostAxes = 20

// readMotion reads how a station moves. Its times follow in fillTimes, sealTimes, erectTimes and offloadTimes.
func (r *lineReader) readMotion(d *draft) {
	cams := d.fields.Take("cams")
	if d.Kind == stations.Fill && d.known {
		r.readDosing(d, d.fields.Take("dosing"))
	}
	if cams != nil {
		r.readAxes(d, cams)
	}
	switch {
	case !d.known:
	case d.Kind == stations.Fill:
		r.completeFill(d, cams)
	case d.Kind == stations.Erect:
		r.readDrop(d)
	case d.Kind == stations.Seal:
		r.readSealing(d)
	}
}

// conveyorMotion is how the station's conveyor moves; nil for a station that stands on none.
func (r *lineReader) conveyorMotion(d *draft) *ConveyorMotion {
	if !d.onConveyor() {
		return nil
	}
	return &r.file.Mechanics.Conveyors[d.Feed.Conveyor]
}

// readAxes reads the cams that a station adds to the master of its conveyor.
func (r *lineReader) readAxes(d *draft, n *document.Node) {
	r.described()
	entries := n.Map(&r.p).Entries()
	if len(entries) > mostAxes {
		r.p.Add(n, fmt.Sprintf("has %d axes", len(entries)), fmt.Sprintf("a station may have %d", mostAxes))
		return
	}
	if !r.ridesOnMaster(d, n, "ride on a master") {
		return
	}
	for _, e := range entries {
		r.name(e.Key)
		r.readAxis(d, e.Key.Raw(), e.Value)
	}
}

// ridesOnMaster says that the station's conveyor has a cam, and reports it where it has none. A wrong arc was reported before.
func (r *lineReader) ridesOnMaster(d *draft, n *document.Node, what string) bool {
	m := r.conveyorMotion(d)
	if m != nil && m.Cam != nil {
		return true
	}
	if m == nil || !r.file.Travels[d.Feed.Conveyor].Shared {
		r.p.Add(n, what+", but the conveyor's index is no arc of a revolution",
			"give the conveyor revolution: 2 s and index: {from: 0 deg, to: 110 deg, law: modified sine}")
	}
	return false
}

// readAxis reads one cam: its moves alone, or a map with its moves, its drive and what it must keep clear of.
func (r *lineReader) readAxis(d *draft, name string, n *document.Node) {
	doseStroke := 0.0
	if dosing := d.motion.Dosing; dosing != nil && name == "piston" {
		doseStroke = dosing.Dose / dosing.Piston.Area
	} else if name == "piston" && d.fields.Has("dosing") {
		doseStroke = 1 // stands in for one that was reported
	}
	axis := AxisMotion{Name: name}
	if n.Kind() == document.List {
		axis.Cam, axis.Turns = r.readCam(name, n, doseStroke)
		axis.Units = travelUnits(n, d.motion.Dosing)
	} else {
		f := n.Map(&r.p)
		moves := f.Require("moves", "[{move: rise, by: 8 in, from: 90 deg, to: 160 deg, law: modified sine}, ...]")
		axis.Cam, axis.Turns = r.readCam(name, moves, doseStroke)
		axis.Units = travelUnits(moves, d.motion.Dosing)
		axis.Drive, axis.TorqueUnits = r.readDrive(f.Take("drive"), axis.Turns)
		axis.Acceleration = r.readAcceleration(f.Take("acceleration"), axis.Turns)
		axis.AccelerationUnits = unitsOf(f.Take("acceleration"))
		for _, c := range f.Take("clear").List(&r.p) {
			axis.Clearances = append(axis.Clearances, r.readClearance(d, axis, c))
		}
		f.Done()
	}
	if axis.Cam != nil {
		d.motion.Axes = append(d.motion.Axes, axis)
	}
}

// readClearance reads where an axis must be while the conveyor moves, while it stands, or between two angles.
func (r *lineReader) readClearance(d *draft, axis AxisMotion, n *document.Node) motion.Clearance {
	f := n.Map(&r.p)
	below, above := f.Take("below"), f.Take("above")
	c := motion.Clearance{Axis: axis.Cam, Above: above != nil}
	limit := below
	switch {
	case below != nil && above != nil:
		r.p.Add(above, "stands beside below", "keep one of them; write two clearances for both")
	case above != nil:
		limit = above
	case below == nil && f.Node() != nil:
		f.Require("below", "10 mm")
	}
	if axis.Turns {
		c.Limit = limit.Angle(&r.p, document.Limit{Min: "0 deg"}) * math.Pi / 180
	} else {
		c.Limit = limit.Length(&r.p, document.Limit{Min: "0 m"})
	}
	conveyor := r.conveyorMotion(d).Cam
	when := f.Take("while")
	while := when.OneOf(&r.p, "conveyor moves", "conveyor stands")
	from, to := f.Take("from"), f.Take("to")
	word := map[bool]string{true: "above", false: "below"}[c.Above]
	switch {
	case while == "conveyor moves":
		c.While = conveyor.Moving()
	case while == "conveyor stands":
		c.While = conveyor.Standing()
	case from != nil && to != nil:
		c.While, while = []motion.Window{turnWindow(from.Angle(&r.p), to.Angle(&r.p))}, from.Raw()+" to "+to.Raw()
	case f.Node() != nil && when == nil:
		r.p.Add(n, "does not say when", "add while: conveyor moves, while: conveyor stands, or from: and to:")
	}
	f.Done()
	if limit != nil {
		c.Name = fmt.Sprintf("%s %s %s, %s", axis.Name, word, limit.Assumed(&r.p).Raw(), while)
	}
	return c
}

// turnWindow is the window between two angles, through the zero of the master if it ends before it begins.
func turnWindow(from, to float64) motion.Window {
	w := motion.Window{From: motion.Degrees(from).Within(), To: motion.Degrees(to)}
	for w.To <= w.From {
		w.To += 360
	}
	return w
}
