package motion

import (
	"math"
	"math/cmplx"
)

// crest is the largest wave in a stretch and when it came.
type crest struct{ height, at float64 }

// stepsPerPeriod is how finely the wave is looked at, per period of the highest mode; a crest between the looks is
// then found exactly.
const stepsPerPeriod = 16

// waveFinder follows the modes through stretches and finds the highest crest of each. Its buffers are used again.
type waveFinder struct {
	modes []liquidMode
	step  float64      // s, largest time between two looks
	free  []complex128 // state of the free waves at the start of the current look
	wave  []float64    // heights at the steps
}

func newWaveFinder(modes []liquidMode) *waveFinder {
	highest := modes[len(modes)-1].omegaD
	return &waveFinder{
		modes: modes, step: 2 * math.Pi / highest / stepsPerPeriod, free: make([]complex128, len(modes)),
	}
}

// driven takes the states to the end of a stretch and returns its highest crest.
func (f *waveFinder) driven(st *stretch, states []complex128) crest {
	for i, m := range f.modes {
		f.free[i] = states[i] - st.answers[i].at(m, st.rate, 0)
	}
	best := f.look(st, st.width)
	for i, m := range f.modes {
		states[i] = f.free[i]*decay(m, st.width) + st.answers[i].at(m, st.rate, st.width)
	}
	return best
}

// undriven does the same where the conveyor stands for a time. It looks at one period of the slowest mode after the
// other, and stops when what is left cannot reach the highest crest so far.
func (f *waveFinder) undriven(width float64, states []complex128) crest {
	copy(f.free, states)
	var best crest
	period := 2 * math.Pi / f.modes[0].omegaD
	for t := 0.0; t < width && f.envelope() > best.height; t += period {
		w := min(period, width-t)
		if c := f.look(nil, w); c.height > best.height {
			best = crest{c.height, t + c.at}
		}
		for i, m := range f.modes {
			f.free[i] *= decay(m, w)
		}
	}
	for i, m := range f.modes {
		states[i] *= decay(m, width)
	}
	return best
}

// envelope is a height that the free waves cannot exceed from now on.
func (f *waveFinder) envelope() float64 {
	sum := 0.0
	for i, m := range f.modes {
		sum += cmplx.Abs(f.free[i]) / m.omegaD
	}
	return sum
}

// decay is exp(lambda t).
func decay(m liquidMode, t float64) complex128 { return cmplx.Exp(m.lambda * complex(t, 0)) }

// look finds the highest crest of the free waves, and of the driven ones of st if it is not nil, over a time.
func (f *waveFinder) look(st *stretch, width float64) crest {
	steps := f.steps(st, width)
	dt := width / float64(steps)
	f.wave = append(f.wave[:0], make([]float64, steps+1)...)
	for i, m := range f.modes {
		y, turn := f.free[i]/complex(m.omegaD, 0), decay(m, dt)
		for k := range f.wave {
			f.wave[k] += imag(y)
			y *= turn
		}
		if st != nil {
			st.answers[i].addHeights(f.wave, m, st.rate, dt)
		}
	}
	return f.highest(st, dt, width)
}

// steps is how many looks a time takes: by the highest mode, and by the drive's own sine or polynomial.
func (f *waveFinder) steps(st *stretch, width float64) int {
	steps := max(4, int(math.Ceil(width/f.step)))
	if st != nil {
		steps = max(steps, int(math.Ceil(width*st.rate/(2*math.Pi)*stepsPerPeriod)), 4*len(st.answers[0].poly))
	}
	return steps
}

// addHeights adds the particular solution of a mode at equal steps.
func (a *answer) addHeights(wave []float64, m liquidMode, rate, dt float64) {
	e, turn := complex(1, 0), cis(rate*dt)
	for k := range wave {
		t := float64(k) * dt
		y := 0.0
		for i := len(a.poly) - 1; i >= 0; i-- {
			y = y*t + imag(a.poly[i])
		}
		if rate != 0 {
			y += imag(a.plus*e + a.minus*cmplx.Conj(e))
			e *= turn
		}
		if a.resonant != 0 {
			y += imag(a.resonant * decay(m, t) * a.growth(t))
		}
		wave[k] += y / m.omegaD
	}
}

// highest is the highest crest among the looks, made exact.
func (f *waveFinder) highest(st *stretch, dt, width float64) crest {
	var best crest
	for k, w := range f.wave {
		if h := math.Abs(w); h > best.height {
			best = crest{h, float64(k) * dt}
		}
	}
	enough := best.height - f.hidden(st, dt, best.height)
	last := len(f.wave) - 1
	for k, w := range f.wave {
		h := math.Abs(w)
		if h >= enough && h >= math.Abs(f.wave[max(0, k-1)]) && h >= math.Abs(f.wave[min(last, k+1)]) {
			if c := f.climb(st, float64(k)*dt, dt, width); c.height > best.height {
				best = c
			}
		}
	}
	return best
}

// hidden is by how much a crest may rise above the look next to it: no look is further than dt/2 away, so each free
// wave hides its amplitude times 1 - cos(omega dt/2); a driven one, looked at as finely as the highest mode, 2 %.
func (f *waveFinder) hidden(st *stretch, dt, height float64) float64 {
	sum := 0.0
	for i, m := range f.modes {
		sum += cmplx.Abs(f.free[i]) / m.omegaD * (1 - math.Cos(m.omegaD*dt/2))
	}
	if st != nil {
		sum += 0.02 * height
	}
	return sum
}

// climb goes from a look to the crest within h beside it, by parabolas of ever smaller width.
func (f *waveFinder) climb(st *stretch, t, h, width float64) crest {
	best := crest{at: t}
	height := func(t float64) float64 {
		y := math.Abs(f.heightAt(st, t))
		if y > best.height {
			best = crest{y, t}
		}
		return y
	}
	for range 3 {
		t = min(width-h, max(h, t)) // at an end of the stretch the parabola lies inside it
		left, middle, right := height(t-h), height(t), height(t+h)
		if bend := left - 2*middle + right; bend < 0 {
			height(t + min(h, max(-h, h*(left-right)/(2*bend))))
		}
		t = best.at
		h /= 6
	}
	return best
}

// heightAt is the height at a time of the current look.
func (f *waveFinder) heightAt(st *stretch, t float64) float64 {
	sum := 0.0
	for i, m := range f.modes {
		y := f.free[i] * decay(m, t)
		if st != nil {
			y += st.answers[i].at(m, st.rate, t)
		}
		sum += imag(y) / m.omegaD
	}
	return sum
}
