package motion

import "math"

// Cam is an axis made ready for evaluation. Home is its lowest position, 0.
type Cam struct {
	axis     Axis
	moves    []camMove // tile the revolution from start on
	start    float64   // where the first move begins, degrees
	perTurn  float64   // growth of the position with each revolution, m or rad
	farthest float64   // highest position of a reciprocating axis
}

// camMove is a stretch of the revolution, in degrees after the start of the cam.
type camMove struct {
	to      float64
	from    float64
	perSpan float64 // 1/(to - from)
	base    float64 // position at from
	travel  float64 // signed; 0: stands
	law     Law
	segment int // index in the axis; -1: a stand that no segment names
}

// NewCam checks the axis and makes it ready. With problems there is no cam.
func NewCam(a Axis) (*Cam, []Problem) {
	if problems := a.Problems(); len(problems) > 0 {
		return nil, problems
	}
	a = a.closed()
	c := &Cam{axis: a}
	order := a.inOrder()
	c.start = float64(a.Segments[order[0]].From)
	at, position, lowest := 0.0, 0.0, 0.0
	for _, i := range order {
		s := a.Segments[i]
		from := float64(s.From) - c.start
		c.stand(at, from, position)
		at = from + float64(s.Span())
		travel := s.signedTravel()
		c.moves = append(c.moves, camMove{at, from, 1 / (at - from), position, travel, s.Law, i})
		position += travel
		lowest = min(lowest, position)
		c.farthest = max(c.farthest, position)
	}
	c.stand(at, fullTurn, position)
	c.moves[len(c.moves)-1].to = fullTurn
	if c.Feeds() {
		c.perTurn = position
		return c, nil
	}
	for i := range c.moves {
		c.moves[i].base -= lowest
	}
	c.farthest -= lowest
	return c, nil
}

// stand adds the stand between two named segments.
func (c *Cam) stand(from, to, position float64) {
	if to-from > angleRounding {
		c.moves = append(c.moves, camMove{from: from, to: to, perSpan: 1 / (to - from), base: position, segment: -1})
	}
}

// signedTravel counts away from home.
func (s Segment) signedTravel() float64 {
	switch s.Kind {
	case Dwell:
		return 0
	case Return:
		return -s.Travel
	}
	return s.Travel
}

// Axis is the description that the cam was made from.
func (c *Cam) Axis() Axis { return c.axis }

// Feeds reports whether the axis only goes forward: it has index segments.
func (c *Cam) Feeds() bool {
	for _, s := range c.axis.Segments {
		if s.Kind == Index {
			return true
		}
	}
	return false
}

// Stroke is the highest position of a reciprocating axis, or the growth in a revolution of one that feeds; m or rad.
func (c *Cam) Stroke() float64 {
	if c.Feeds() {
		return c.perTurn
	}
	return c.farthest
}

// find is the move at an angle, how far into the revolution of the cam the angle is, and the whole revolutions
// before.
func (c *Cam) find(at Degrees) (m *camMove, r, turns float64) {
	r = float64(at) - c.start
	turns = math.Floor(r * (1 / fullTurn))
	r -= turns * fullTurn
	moves := c.moves
	for i := range moves {
		if r < moves[i].to {
			return &moves[i], r, turns
		}
	}
	return &moves[len(moves)-1], r, turns
}

// Position at any angle, m or rad. A feeding axis counts from the start of its first segment after the zero of the
// master.
func (c *Cam) Position(at Degrees) float64 {
	m, r, turns := c.find(at)
	p := m.base + turns*c.perTurn
	if m.travel == 0 {
		return p
	}
	return p + m.travel*m.law.Position((r-m.from)*m.perSpan)
}

// Motion at any angle when a revolution lasts revolution (more than 0): position, and velocity, acceleration, jerk
// per second.
func (c *Cam) Motion(at Degrees, revolution Seconds) Motion {
	m, r, turns := c.find(at)
	here := Motion{Position: m.base + turns*c.perTurn}
	if m.travel == 0 {
		return here
	}
	n := m.law.Motion((r - m.from) * m.perSpan)
	rate := m.perSpan * fullTurn / float64(revolution) // share of the move per second
	here.Position += m.travel * n.Position
	here.Velocity = m.travel * rate * n.Velocity
	here.Acceleration = m.travel * rate * rate * n.Acceleration
	here.Jerk = m.travel * rate * rate * rate * n.Jerk
	return here
}
