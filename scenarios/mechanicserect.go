package scenarios

import (
	"math"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// readDrop reads where the arm lets the erected carton go, how far it falls, and how far the arm may go until then.
func (r *lineReader) readDrop(d *draft) {
	n := d.fields.Take("drop")
	if n == nil {
		return
	}
	r.described()
	f := n.Map(&r.p)
	drop := &motion.Drop{}
	at := f.Require("at", "200 deg")
	drop.At = motion.Degrees(at.Angle(&r.p, document.Limit{Min: "0 deg"}, document.Limit{Below: "360 deg"}))
	height := f.Require("height", "50 mm")
	drop.Height = height.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "5 m"})
	drop.Time = motion.SecondsOf(f.Take("takes").PositiveDuration(&r.p, document.Limit{Max: "10 s"}))
	free := f.Take("free")
	d.motion.Free = free.Angle(&r.p, document.Limit{Above: "0 deg"}, document.Limit{Max: "360 deg"}) * math.Pi / 180
	d.motion.DropUnits = unitsOf(height)
	f.Done()
	arm := d.motion.axis("arm")
	if !r.ridesOnMaster(d, n, "is timed by a master") {
		return
	}
	switch {
	case free != nil && arm == nil && !d.fields.Has("cams"):
		r.p.Add(free, "is how far the arm may go, but there is none", "add cams: {arm: [{move: index, by: 90 deg, from: 0 deg, to: 120 deg, law: modified sine}]}")
	case free != nil && arm != nil && !arm.Turns:
		r.p.Add(free, "is an angle, but the arm moves along", "give the arm's moves in deg")
	case at != nil && height != nil:
		d.motion.Drop = drop
	}
}

// erectTimes are the parts of an erector's act: until its arm stands, the bottom seal, and what is left until the carton has
// dropped.
func (r *lineReader) erectTimes(d *draft, seal []stations.Part) []stations.Part {
	m := r.conveyorMotion(d)
	if m == nil || m.Cam == nil || d.motion.axis("arm") == nil && d.motion.Drop == nil {
		return seal
	}
	revolution := r.line.Conveyors[d.Feed.Conveyor].Revolution
	if revolution == 0 {
		return seal
	}
	after := func(angle motion.Degrees) time.Duration { // since the conveyor came to a stand
		return time.Duration(float64((angle-m.Cam.Moving()[0].To).Within())/360*float64(revolution) + 0.5)
	}
	var parts []stations.Part
	var done time.Duration
	if arm := d.motion.axis("arm"); arm != nil {
		if stands := after(armStands(m.Cam, arm.Cam)); stands > 0 {
			parts = append(parts, fixedPart("arm", stations.ArmPart, stands))
			done = stands
		}
	}
	parts = append(parts, seal...)
	done += seal[0].Time.Mean()
	if drop := d.motion.Drop; drop != nil {
		if down := after(drop.At) + drop.FallTime().Duration(); down > done {
			parts = append(parts, fixedPart("drop", stations.DropPart, down-done))
		}
	}
	return parts
}

// armStands is the angle at which the arm comes to a stand after the conveyor has, or that of the conveyor if it stands before.
func armStands(conveyor, arm *motion.Cam) motion.Degrees {
	index := conveyor.Moving()[0]
	last := index.To
	for _, w := range arm.Moving() {
		if w.Span() < 360 && (w.To-index.To).Within() < 360-index.Span() {
			last = max(last, index.To+(w.To-index.To).Within())
		}
	}
	return last
}
