package scenarios

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// mostMoves is how many segments a cam may have.
const mostMoves = 60

// readCam reads the segments of an axis: a list of {move: rise, by: 8.5 in, from: 90 deg, to: 160 deg, law: modified sine}.
// Where a dose is known, a piston may move "by: dose". It is nil where there was a mistake.
func (r *lineReader) readCam(name string, list *document.Node, doseStroke float64) (cam *motion.Cam, turns bool) {
	items := list.List(&r.p)
	if len(items) == 0 || len(items) > mostMoves {
		if list != nil && list.Kind() == document.List {
			r.p.Add(list, fmt.Sprintf("has %d moves", len(items)), "give moves such as {move: rise, by: 8 in, from: 90 deg, to: 160 deg, law: modified sine}")
		}
		return nil, false
	}
	before := r.p.Len()
	axis := motion.Axis{Name: name}
	for i, n := range items {
		s, turning := r.readSegment(n, doseStroke)
		if i > 0 && s.Kind != motion.Dwell && axis.Segments[0].Kind != motion.Dwell && turning != turns {
			r.p.Add(n, "turns, but another move of the axis does not", "give all of them as lengths, or all as angles")
		}
		turns = turns || turning
		axis.Segments = append(axis.Segments, s)
	}
	if r.p.Len() > before {
		return nil, turns
	}
	cam, problems := motion.NewCam(axis)
	for _, p := range problems {
		r.addMotion(segmentNode(list, p.Path), p)
	}
	for _, p := range axis.Cautions() {
		r.warn(list.Path(), "%s", p.Message)
	}
	return cam, turns
}

// readSegment reads one segment of a cam.
func (r *lineReader) readSegment(n *document.Node, doseStroke float64) (s motion.Segment, turns bool) {
	f := n.Map(&r.p)
	if name := f.Take("name"); name != nil {
		s.Name = r.name(name)
	}
	s.Kind = motion.SegmentKind(f.Require("move", "rise").OneOf(&r.p, "rise", "dwell", "return", "index"))
	s.From = motion.Degrees(f.Require("from", "90 deg").Angle(&r.p))
	s.To = motion.Degrees(f.Require("to", "160 deg").Angle(&r.p))
	if s.Kind != motion.Dwell {
		s.Travel, turns = r.readTravel(f.Require("by", "8.5 in"), doseStroke)
		s.Law = r.readLaw(f.Require("law", "modified sine"))
	}
	f.Done()
	return s, turns
}

// readTravel reads how far a move goes: a length in m, an angle in rad, or a dose or a share of it.
func (r *lineReader) readTravel(n *document.Node, doseStroke float64) (travel float64, turns bool) {
	inner := n.Assumed(&r.p)
	if inner == nil {
		return 0, false
	}
	if share, ok := shareOf("dose", inner.Raw()); ok {
		if share <= 0 || share > 1 {
			r.p.Add(inner, "is no share of a dose above 0 % and up to 100 %", "write by: dose, or 40 % of dose for each of several shots")
			return 0, false
		}
		if doseStroke == 0 {
			r.p.Add(inner, "stands for the stroke of a dose, but none is known here", "add dosing: {dose: 64 fl oz, cylinder: {volume: 10 floz/in}}")
		}
		return share * doseStroke, false
	}
	q, err := quantity.Parse(inner.Raw())
	if err == nil && q.Is(quantity.Angle) {
		return n.Angle(&r.p, document.Limit{Above: "0 deg"}, document.Limit{Max: "3600 deg"}) * math.Pi / 180, true
	}
	return n.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "10 m"}), false
}

// travelUnits is in what the moves of an axis are written; a dose goes by the cylinder.
func travelUnits(moves *document.Node, dosing *DosingMotion) Units {
	for _, move := range moves.List(&document.Problems{}) {
		by := move.Map(&document.Problems{}).Take("by")
		if by == nil {
			continue
		}
		if _, ok := shareOf("dose", by.Raw()); ok && dosing != nil {
			return dosing.CylinderUnits
		}
		return unitsOf(by)
	}
	return Metric
}

// readLaw reads a motion law by its name; the zero Law where there is none.
func (r *lineReader) readLaw(n *document.Node) motion.Law {
	name := r.readMotionLaw(n)
	law, err := motion.LawByName(name)
	if err != nil {
		return motion.Law{}
	}
	return law
}

// fieldKeys are the keys of a line file for the fields that the motion package names otherwise.
var fieldKeys = map[string]string{"travel": "by", "kind": "move"}

// segmentNode finds the value that a path such as "segments[1].travel" is about; the whole list if it names none.
func segmentNode(list *document.Node, path string) *document.Node {
	var i int
	var field string
	head, field, _ := strings.Cut(path, ".")
	if _, err := fmt.Sscanf(head, "segments[%d]", &i); err != nil {
		return list
	}
	items := list.List(&document.Problems{})
	if i >= len(items) {
		return list
	}
	if key, renamed := fieldKeys[field]; renamed {
		field = key
	}
	if n := items[i].Map(&document.Problems{}).Take(field); n != nil && n.Kind() == document.Scalar {
		return n
	}
	return items[i]
}

// addMotion reports what the motion package found wrong.
func (r *lineReader) addMotion(n *document.Node, p motion.Problem) {
	r.p.Report(document.Problem{At: n.At(), Path: n.Path(), Message: p.Message, Hint: p.Hint})
}

// addError reports an error of the motion package.
func (r *lineReader) addError(n *document.Node, err error, hint string) {
	if p, ok := errors.AsType[motion.Problem](err); ok {
		r.addMotion(n, p)
		return
	}
	r.p.Add(n, err.Error(), hint)
}

// readDrive reads the motor and gearing of an axis, and in what its torques are written; nil where the file has none.
func (r *lineReader) readDrive(n *document.Node, turns bool) (*motion.Drive, Units) {
	if n == nil {
		return nil, Metric
	}
	f := n.Map(&r.p)
	d := &motion.Drive{}
	positive := func(want quantity.Dimension, key, unit, example string) float64 {
		return f.Require(key, example).Measure(&r.p, want, unit, document.Limit{Above: "0 " + unit})
	}
	if turns {
		d.TravelPerTurn = positive(quantity.Ratio, "travel", "deg/rev", "36 deg/rev") * math.Pi / 180
		d.Mass = f.Take("moved_inertia").Measure(&r.p, quantity.Inertia, "kg m2", document.Limit{Min: "0 kg m2"})
	} else {
		d.TravelPerTurn = positive(quantity.Travel, "travel", "m/rev", "1 in/rev")
		d.Mass = f.Take("mass").Measure(&r.p, quantity.Mass, "kg", document.Limit{Min: "0 kg"})
	}
	d.Inertia = f.Take("inertia").Measure(&r.p, quantity.Inertia, "kg m2", document.Limit{Min: "0 kg m2"})
	d.RatedSpeed = f.Take("rated_speed").Measure(&r.p, quantity.AngularSpeed, "rpm", document.Limit{Above: "0 rpm"})
	d.RatedTorque = f.Take("rated_torque").Measure(&r.p, quantity.Torque, "N m", document.Limit{Above: "0 N m"})
	d.PeakTorque = f.Take("peak_torque").Measure(&r.p, quantity.Torque, "N m", document.Limit{Above: "0 N m"})
	d.PulsesPerTurn = r.readPulses(f.Take("encoder"))
	f.Done()
	r.described()
	if n.Has("peak_torque") && d.PeakTorque > 0 && d.PeakTorque < d.RatedTorque {
		r.p.Add(f.Take("peak_torque"), "is less than the rated torque", "a motor gives more for short than it can keep up")
	}
	return d, unitsOf(f.Take("rated_torque"), f.Take("peak_torque"))
}

// readPulses reads the pulses of an encoder's turn.
func (r *lineReader) readPulses(n *document.Node) int {
	pulses := n.Measure(&r.p, quantity.PulsesPerTurn, "pulses/rev", document.Limit{Min: "1 pulses/rev"}, document.Limit{Max: "1000000000 pulses/rev"})
	if pulses != math.Round(pulses) {
		r.p.Add(n.Assumed(&r.p), "is not a whole number of pulses", "write for example 262144 pulses/rev")
	}
	return int(math.Round(pulses))
}

// described notes that the file says how the line moves.
func (r *lineReader) described() { r.file.Mechanics.Described = true }
