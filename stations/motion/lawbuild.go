package motion

// phase is a stretch of a law by its acceleration, of any scale: over width (share of the time), with u from its
// start, a(u) = sum of poly[k] u^k + amp sin(rate u + shift). With a sine, poly may hold a constant at most.
type phase struct {
	width            float64
	poly             []float64
	amp, rate, shift float64
}

// newLaw integrates the phases twice, from rest or from the starting velocity, and scales the result to s(1) = 1.
func newLaw(name string, start float64, phases ...phase) Law {
	l := Law{&lawShape{name: name}}
	z, s, v := 0.0, 0.0, start
	for _, ph := range phases {
		if ph.width <= 0 {
			continue
		}
		p := ph.integrate(z, s, v)
		l.pieces = append(l.pieces, p)
		z, s, v = p.to, p.position(ph.width), p.velocity(ph.width)
	}
	l.pieces[len(l.pieces)-1].to = 1
	for i := range l.pieces {
		l.pieces[i].scale(1 / s)
	}
	l.coef = coefficients(l)
	return l
}

// integrate is the piece that starts at z with displacement s and velocity v and has the phase's acceleration.
func (ph phase) integrate(z, s, v float64) piece {
	p := piece{from: z, to: z + ph.width, degree: 1, rate: ph.rate, phase: ph.shift}
	for k, c := range ph.poly {
		p.s[k+2] = c / float64((k+1)*(k+2))
		p.degree = k + 2
	}
	if ph.amp != 0 {
		p.amp = -ph.amp / (ph.rate * ph.rate)
	}
	p.differentiate()
	p.s[0], p.s[1] = s-p.position(0), v-p.velocity(0)
	p.differentiate()
	return p
}

// differentiate fills the coefficients of the derivatives from those of s.
func (p *piece) differentiate() {
	for k := 1; k < 8; k++ {
		p.v[k-1] = p.s[k] * float64(k)
	}
	for k := 1; k < 7; k++ {
		p.a[k-1] = p.v[k] * float64(k)
	}
	for k := 1; k < 6; k++ {
		p.j[k-1] = p.a[k] * float64(k)
	}
}

// scale multiplies the displacement of the piece.
func (p *piece) scale(by float64) {
	for k := range p.s {
		p.s[k] *= by
	}
	p.amp *= by
	p.differentiate()
}
