package motion

// Window is a stretch of the master's revolution. To is never less than From and may pass 360.
type Window struct{ From, To Degrees }

// Span is the length of the window.
func (w Window) Span() Degrees { return w.To - w.From }

// Moving are the windows in which the axis moves, neighbours joined, From in 0 .. 360 (excluded).
func (c *Cam) Moving() []Window {
	return c.windows(func(m camMove) bool { return m.travel != 0 })
}

// Standing are the windows in which the axis stands.
func (c *Cam) Standing() []Window {
	return c.windows(func(m camMove) bool { return m.travel == 0 })
}

// Rising and Returning are the windows of motion away from and towards home.
func (c *Cam) Rising() []Window { return c.windows(func(m camMove) bool { return m.travel > 0 }) }

// Returning are the windows of motion towards home.
func (c *Cam) Returning() []Window { return c.windows(func(m camMove) bool { return m.travel < 0 }) }

// windows joins neighbouring moves that fit, across the end of the revolution too.
func (c *Cam) windows(fits func(camMove) bool) []Window {
	var found []Window
	for _, m := range c.moves {
		if !fits(m) {
			continue
		}
		w := Window{Degrees(c.start + m.from), Degrees(c.start + m.to)}
		if n := len(found); n > 0 && w.From-found[n-1].To < angleRounding {
			found[n-1].To = w.To
		} else {
			found = append(found, w)
		}
	}
	n := len(found)
	if n > 1 && float64(found[0].From) < c.start+angleRounding && float64(found[n-1].To) > c.start+fullTurn-angleRounding {
		found[0].From = found[n-1].From - fullTurn
		found = found[:n-1]
	}
	for i, w := range found {
		from := w.From.Within()
		found[i] = Window{from, from + w.Span()}
	}
	return found
}

// Crossing is where an axis passes a position.
type Crossing struct {
	At   Degrees // 0 to less than 360
	Away bool    // going away from home
}

// Crossings are all angles at which a reciprocating axis passes the position while moving, in order of the cam's
// segments; exact by the inverse of each law. A position that a move only starts from or ends at is not passed.
func (c *Cam) Crossings(position float64) []Crossing {
	var found []Crossing
	for _, m := range c.moves {
		if m.travel == 0 {
			continue
		}
		if f := (position - m.base) / m.travel; f > 0 && f < 1 {
			found = append(found, Crossing{c.angle(m, m.law.Inverse(f)), m.travel > 0})
		}
	}
	return found
}
