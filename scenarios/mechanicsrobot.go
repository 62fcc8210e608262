package scenarios

import (
	"fmt"
	"math"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// offloadTimes are the parts of a robot's cycle: the cycle as given, or its moves in turn.
func (r *lineReader) offloadTimes(d *draft) []stations.Part {
	moves, cycle := d.fields.Take("moves"), d.fields.Take("cycle")
	switch {
	case moves != nil && cycle != nil:
		r.p.Add(cycle, "stands beside moves", "keep cycle or moves")
		return nil
	case moves == nil:
		return []stations.Part{{Name: "cycle", Time: r.time(d.fields.Require("cycle", "2.1 s"), actUpTo(time.Hour))}}
	}
	r.described()
	items := moves.List(&r.p)
	if moves.Kind() == document.List && (len(items) == 0 || len(items) > mostMoves) {
		r.p.Add(moves, fmt.Sprintf("has %d moves", len(items)), "give moves such as {name: to pallet, distance: 1.2 m, speed: 2 m/s, acceleration: 6 m/s2}")
	}
	var parts []stations.Part
	seen := map[string]bool{}
	for _, n := range items {
		part, move := r.readRobotMove(n)
		if seen[part.Name] && part.Name != "" {
			r.p.Add(n, "has the name of two moves: "+part.Name, "give each its own")
		}
		seen[part.Name] = true
		parts, d.motion.Moves = append(parts, part), append(d.motion.Moves, move)
	}
	return parts
}

// readRobotMove reads a servo move along a line or around an axis, or a time of its own.
func (r *lineReader) readRobotMove(n *document.Node) (stations.Part, RobotMove) {
	f := n.Map(&r.p)
	m := RobotMove{Name: r.name(f.Require("name", "to pallet"))}
	part := stations.Part{Name: m.Name}
	takes, distance, turn := f.Take("takes"), f.Take("distance"), f.Take("turn")
	before := r.p.Len()
	switch given := countNodes(takes, distance, turn); {
	case f.Node() == nil:
		return part, m
	case given != 1:
		r.p.Add(n, "needs one of distance, turn and takes", "write distance: 1.2 m, turn: 90 deg, or takes: 0.3 s")
	case takes != nil:
		part.Time = r.time(takes, actUpTo(time.Hour))
		m.Time = motion.SecondsOf(part.Time.Mean())
	case distance != nil:
		m.Move.Distance = distance.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "100 m"})
		r.readMoveLimits(f, &m.Move)
	default:
		m.Move.Distance = turn.Measure(&r.p, quantity.Angle, "deg", document.Limit{Above: "0 deg"}, document.Limit{Max: "3600 deg"}) * math.Pi / 180
		m.Move.Speed = r.readTurning(f.Require("speed", "180 deg/s"), false)
		m.Move.Acceleration = r.readTurning(f.Require("acceleration", "600 deg/s2"), true)
	}
	f.Done()
	if takes == nil && r.p.Len() == before && r.checkMove(n, m.Move) {
		m.Time = m.Move.Time()
		part.Time = random.Fixed(m.Time.Duration())
	}
	return part, m
}

func countNodes(nodes ...*document.Node) int {
	count := 0
	for _, n := range nodes {
		if n != nil {
			count++
		}
	}
	return count
}
