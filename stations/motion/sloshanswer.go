package motion

import (
	"math"
	"math/cmplx"
)

// The wave q of a mode at the wall obeys d2q/dt2 + 2 zeta omega dq/dt + omega2 q = drive a(t). With lambda = -zeta
// omega + i omega_d and dY/dt = lambda Y + drive a(t) it is q = Im Y/omega_d (Duhamel's integral): one complex number
// is the whole state. On each piece of a law a(t) is a polynomial plus a sine, and Y has the closed form below.

// liquidMode is a mode with the numbers that its answer needs.
type liquidMode struct {
	lambda complex128
	omegaD float64
	drive  float64
}

func newLiquidMode(m Mode, damping float64) liquidMode {
	w := m.Omega()
	wd := w * math.Sqrt(1-damping*damping)
	return liquidMode{complex(-damping*w, wd), wd, m.Drive}
}

// answer is a particular solution of a mode on one stretch: sum of poly[k] t^k + plus exp(iWt) + minus exp(-iWt), and
// at resonance resonant exp(lambda t) (t + delta t2/2 + delta2 t3/6).
type answer struct {
	poly            []complex128
	plus, minus     complex128
	resonant, delta complex128
}

// stretch is one piece of the index in time.
type stretch struct {
	width   float64 // s
	rate    float64 // W of the sine, rad/s; 0: none
	answers []answer
}

// newStretch solves the modes on a piece of a law, for an index of a travel and a time.
func newStretch(p *piece, travel, time float64, modes []liquidMode) stretch {
	st := stretch{width: p.width() * time}
	scale := travel / (time * time)
	var poly []float64
	for k, c := 0, scale; k <= max(0, p.degree-2); k, c = k+1, c/time {
		poly = append(poly, c*p.a[k])
	}
	amp := -scale * p.amp * p.rate * p.rate
	if amp != 0 {
		st.rate = p.rate / time
	}
	for _, m := range modes {
		a := answer{poly: m.polynomial(poly, st.width)}
		if amp != 0 {
			a.addSine(m, amp*m.drive, st.rate, p.phase, st.width)
		}
		st.answers = append(st.answers, a)
	}
	return st
}

// shortStretch is the |lambda| x width below which the series in powers of time is used, as the recursion would
// cancel.
const shortStretch = 0.3

// polynomial solves Y' = lambda Y + drive sum c[k] t^k by a polynomial.
func (m liquidMode) polynomial(c []float64, width float64) []complex128 {
	if cmplx.Abs(m.lambda)*width < shortStretch {
		y := make([]complex128, len(c)+16)
		for k := range len(y) - 1 {
			next := m.lambda * y[k]
			if k < len(c) {
				next += complex(m.drive*c[k], 0)
			}
			y[k+1] = next / complex(float64(k+1), 0)
		}
		return y
	}
	y := make([]complex128, len(c))
	above := complex128(0)
	for k := len(c) - 1; k >= 0; k-- {
		y[k] = (above - complex(m.drive*c[k], 0)) / m.lambda
		above = y[k] * complex(float64(k), 0)
	}
	return y
}

// addSine adds the answer to amp sin(rate t + phase).
func (a *answer) addSine(m liquidMode, amp, rate, phase, width float64) {
	half := complex(0, -amp/2) // 1/2i
	in, out := half*cis(phase), -half*cis(-phase)
	a.minus = out / (complex(0, -rate) - m.lambda)
	delta := complex(0, rate) - m.lambda
	if cmplx.Abs(delta)*width < 1e-3 { // the series of (exp(delta t) - 1)/delta is exact to rounding here
		a.resonant, a.delta = in, delta
		return
	}
	a.plus = in / delta
}

// at is the particular solution a time after the start of the stretch.
func (a *answer) at(m liquidMode, rate, t float64) complex128 {
	y := complex128(0)
	for k := len(a.poly) - 1; k >= 0; k-- {
		y = y*complex(t, 0) + a.poly[k]
	}
	if rate != 0 {
		e := cis(rate * t)
		y += a.plus*e + a.minus*cmplx.Conj(e)
	}
	if a.resonant != 0 {
		y += a.resonant * cmplx.Exp(m.lambda*complex(t, 0)) * a.growth(t)
	}
	return y
}

// growth is (exp(delta t) - 1)/delta for a delta near 0.
func (a *answer) growth(t float64) complex128 {
	x := a.delta * complex(t, 0)
	return complex(t, 0) * (1 + x/2*(1+x/3*(1+x/4)))
}

// advance is the state at time t of the stretch that it entered with the state start.
func (st *stretch) advance(i int, m liquidMode, start complex128, t float64) complex128 {
	a := &st.answers[i]
	free := start - a.at(m, st.rate, 0)
	return free*cmplx.Exp(m.lambda*complex(t, 0)) + a.at(m, st.rate, t)
}

// cis is exp(ix).
func cis(x float64) complex128 {
	sin, cos := math.Sincos(x)
	return complex(cos, sin)
}
