package motion

import (
	"math"
	"math/cmplx"
)

// QuietIndex is an index time that leaves little of the first mode behind.
type QuietIndex struct {
	Time     Seconds
	Residual float64 // m at the wall, of the first mode
}

// QuietIndexTimes are the index times between shortest and longest at which the residual of the first mode has a
// node, or with damping a dip, in ascending order; at most 200 slosh periods are looked at. There the liquid is
// nearly still when the conveyor stops.
func (t Tank) QuietIndexTimes(law Law, travel float64, shortest, longest Seconds) []QuietIndex {
	mode := newLiquidMode(t.Mode(1), t.Damping)
	period := 2 * math.Pi / mode.omegaD
	longest = min(longest, shortest+Seconds(200*period))
	residual := func(time float64) float64 { return mode.residual(law, travel, time) }
	step := period / 40
	var found []QuietIndex
	for x := float64(shortest) + step; x < float64(longest)-step/2; x += step {
		if y := residual(x); y <= residual(x-step) && y < residual(x+step) {
			at := lowPoint(residual, x-step, x+step, 1e-9*x)
			found = append(found, QuietIndex{Seconds(at), residual(at)})
		}
	}
	return found
}

// residual is the amplitude at the wall that one index from rest leaves in a mode.
func (m liquidMode) residual(law Law, travel, time float64) float64 {
	y := complex128(0)
	modes := []liquidMode{m}
	for i := range law.pieces {
		st := newStretch(&law.pieces[i], travel, time, modes)
		y = st.advance(0, m, y, st.width)
	}
	return cmplx.Abs(y) / m.omegaD
}

// ResidualRatio is the amplitude that an index of the law leaves in an undamped oscillator, in units of its static
// answer to the peak acceleration, for an index that lasts ratio (more than 0) periods of the oscillator. A cycloidal
// index leaves nothing at 2, 3, ...
func ResidualRatio(law Law, ratio float64) float64 {
	w := 2 * math.Pi * ratio
	m := liquidMode{complex(0, w), w, w * w}
	return m.residual(law, 1, 1) / law.Coefficients().Ca
}

// lowPoint is the place, to within tolerance, of the least value of f, which has one dip between lo and hi, by golden
// section.
func lowPoint(f func(float64) float64, lo, hi, tolerance float64) float64 {
	const golden = 0.6180339887498949
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for hi-lo > tolerance {
		if fa < fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		}
	}
	return lo + (hi-lo)/2
}
