package motion

import "math"

// Margin is how much room an interlock leaves: the smallest over the whole revolution, and where. Negative: violated,
// by that much.
type Margin struct {
	Name       string
	Angle      Degrees // turn of the master between the window that must be safe and the nearest unsafe angle; 360 if there is none
	Time       Seconds // the same as time, or, for acts that the master does not time, what is left of it
	Distance   float64 // m (rad for the arm): smallest distance to the limit within the window
	AngleAt    Degrees // where Angle falls, 0 to less than 360: the end of the window that is nearest to harm
	DistanceAt Degrees // where Distance falls, 0 to less than 360
}

// Kept reports whether the interlock holds.
func (m Margin) Kept() bool { return m.Angle >= 0 && m.Time >= 0 && m.Distance >= -distanceRounding }

// Milliseconds is Time in ms.
func (m Margin) Milliseconds() float64 { return 1000 * float64(m.Time) }

// Millimetres is Distance in mm.
func (m Margin) Millimetres() float64 { return 1000 * m.Distance }

// distanceRounding is the depth in m up to which a touch counts as rounding, a nanometre.
const distanceRounding = 1e-9

// Tightest is the margin with the least time; the zero Margin if there is none.
func Tightest(margins []Margin) Margin {
	var least Margin
	for i, m := range margins {
		if i == 0 || m.Time < least.Time {
			least = m
		}
	}
	return least
}

// during is the margin of "within each window the distance q is not negative", proved for every angle. Unsafe angles
// are looked for in the surroundings of each window.
func during(name string, windows []Window, q curve, around func(Window) Window, revolution Seconds) Margin {
	m := Margin{Name: name, Angle: fullTurn, Distance: math.Inf(1)}
	for _, w := range windows {
		if d, at := q.lowest(float64(w.From), float64(w.To), distanceRounding/10); d < m.Distance {
			m.Distance, m.DistanceAt = d, Degrees(at).Within()
		}
		search := around(w)
		for _, unsafe := range q.below(float64(search.From), float64(search.To), distanceRounding) {
			if room, at := roomBetween(w, unsafe); room < m.Angle {
				m.Angle, m.AngleAt = room, at.Within()
			}
		}
	}
	m.Time = m.Angle.Time(revolution)
	return m
}

// aTurnAround is a window with a revolution before and after it.
func aTurnAround(w Window) Window { return Window{w.From - fullTurn, w.To + fullTurn} }

// roomBetween is the gap between a window and an unsafe stretch, negative by the length of their overlap, and the end
// of the window next to it.
func roomBetween(w, unsafe Window) (Degrees, Degrees) {
	before, after := w.From-unsafe.To, unsafe.From-w.To
	switch {
	case before >= 0:
		return before, w.From
	case after >= 0:
		return after, w.To
	}
	overlap := min(w.To, unsafe.To) - max(w.From, unsafe.From)
	return -overlap, max(w.From, unsafe.From)
}
