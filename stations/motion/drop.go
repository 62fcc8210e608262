package motion

import "math"

// Drop is a carton's fall from the erector's arm onto the conveyor.
type Drop struct {
	At     Degrees // where the arm lets go
	Height float64 // m of free fall, 0 or more
	Time   Seconds // measured time of the fall with release; 0: that of a free fall from Height
}

// FallTime is Time, or that of a free fall without air: sqrt(2 Height/g).
func (d Drop) FallTime() Seconds {
	if d.Time > 0 {
		return d.Time
	}
	return Seconds(math.Sqrt(2 * d.Height / StandardGravity))
}

// Window of the master in which the carton falls.
func (d Drop) Window(revolution Seconds) Window {
	return Window{d.At, d.At + d.FallTime().Angle(revolution)}
}

// BeforeIndex is the margin of "carton dropped before the conveyor moves". Distance is how much further it could have
// fallen until then. Where the arm lets go while the conveyor moves, the margin is by how much the drop would have to come later, or, if that
// is less, earlier; the carton then has its whole fall before it.
func (d Drop) BeforeIndex(conveyor *Cam, revolution Seconds) Margin {
	fall := d.Window(revolution)
	m := Margin{Name: "carton dropped before the next index", Angle: fullTurn, Distance: math.Inf(1)}
	for _, w := range conveyor.Moving() {
		room := (w.From - fall.From).Within() - fall.Span()
		if (fall.From - w.From).Within() < w.Span() { // let go while it moves
			later, earlier := (w.To - fall.From).Within(), (fall.From-w.From).Within()+fall.Span()
			room = -min(later, earlier)
		}
		if room < m.Angle {
			m.Angle, m.AngleAt = room, w.From.Within()
		}
	}
	m.Time, m.DistanceAt = m.Angle.Time(revolution), m.AngleAt
	available := float64(max(0, m.Time+d.FallTime()) / d.FallTime())
	m.Distance = d.Height * (available*available - 1)
	if d.Moving(conveyor) {
		m.Distance = -d.Height
	}
	return m
}

// Moving says that the arm lets go while the conveyor moves.
func (d Drop) Moving(conveyor *Cam) bool {
	for _, w := range conveyor.Moving() {
		if (d.At - w.From).Within() < w.Span() {
			return true
		}
	}
	return false
}

// ArmClear is the margin of "arm clear of the drop": until the carton has fallen the arm may go no further than free
// (m, or rad for one that turns; more than 0) from where it let go. Distance is the travel that is left of it.
func (d Drop) ArmClear(arm *Cam, free float64, revolution Seconds) Margin {
	w := d.Window(revolution)
	here := arm.Position(d.At)
	ahead := curve{free + here, []curveTerm{{-1, arm}}}
	behind := curve{free - here, []curveTerm{{1, arm}}}
	around := func(w Window) Window { return Window{w.From, w.From + fullTurn + w.Span()} }
	const name = "arm clear of the drop"
	m := during(name, []Window{w}, ahead, around, revolution)
	if back := during(name, []Window{w}, behind, around, revolution); back.Distance < m.Distance {
		m.Distance, m.DistanceAt = back.Distance, back.DistanceAt
		if back.Angle < m.Angle {
			m.Angle, m.AngleAt, m.Time = back.Angle, back.AngleAt, back.Time
		}
	}
	return m
}

// Clearance is any further interlock: within the windows an axis stays below a position, or above it.
type Clearance struct {
	Name  string
	Axis  *Cam
	Limit float64 // m or rad
	Above bool    // the axis must be above the limit; else below it
	While []Window
}

// Margin of the clearance. Distance is the least distance from the limit on the safe side.
func (c Clearance) Margin(revolution Seconds) Margin {
	q := curve{c.Limit, []curveTerm{{-1, c.Axis}}}
	if c.Above {
		q = q.negated()
	}
	return during(c.Name, c.While, q, aTurnAround, revolution)
}
