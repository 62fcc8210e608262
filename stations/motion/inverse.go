package motion

import "math"

// Inverse is the z in 0..1 at which the law has done the given fraction of its travel, 0..1; outside it is NaN. Every
// law here grows, so the place is unique; it is found to the last bits.
func (l Law) Inverse(fraction float64) float64 {
	switch {
	case !(fraction >= 0 && fraction <= 1):
		return math.NaN()
	case fraction == 0:
		return 0
	case fraction == 1:
		return 1
	}
	p := &l.pieces[0]
	for i := 1; i < len(l.pieces) && l.pieces[i].position(0) <= fraction; i++ {
		p = &l.pieces[i]
	}
	u := root(func(u float64) float64 { return p.position(u) - fraction }, 0, p.width(), 0)
	return p.from + u
}
