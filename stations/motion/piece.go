package motion

import "math"

// piece is a stretch of a law: with u = z - from, s = position(u) = sum of s[k] u^k + amp sin(rate u + phase). The
// coefficients of the derivatives are kept beside it.
type piece struct {
	from, to         float64
	degree           int // of the polynomial of s, 0..7
	s, v, a, j       [8]float64
	amp, rate, phase float64 // amp 0: no sine
}

func (p *piece) position(u float64) float64 {
	y := p.s[0] + u*(p.s[1]+u*p.s[2])
	if p.amp != 0 {
		return y + p.amp*math.Sin(p.rate*u+p.phase)
	}
	if p.degree > 2 {
		y += u * u * u * (p.s[3] + u*(p.s[4]+u*(p.s[5]+u*(p.s[6]+u*p.s[7]))))
	}
	return y
}

// horner is the polynomial with coefficients c of the given degree at u.
func horner(c *[8]float64, degree int, u float64) float64 {
	if degree <= 2 {
		return c[0] + u*(c[1]+u*c[2])
	}
	if degree > 5 {
		return c[0] + u*(c[1]+u*(c[2]+u*(c[3]+u*(c[4]+u*(c[5]+u*(c[6]+u*c[7]))))))
	}
	return c[0] + u*(c[1]+u*(c[2]+u*(c[3]+u*(c[4]+u*c[5]))))
}

func (p *piece) velocity(u float64) float64 {
	y := horner(&p.v, p.degree-1, u)
	if p.amp != 0 {
		y += p.amp * p.rate * math.Cos(p.rate*u+p.phase)
	}
	return y
}

func (p *piece) acceleration(u float64) float64 {
	y := horner(&p.a, p.degree-2, u)
	if p.amp != 0 {
		y -= p.amp * p.rate * p.rate * math.Sin(p.rate*u+p.phase)
	}
	return y
}

func (p *piece) jerk(u float64) float64 {
	y := horner(&p.j, p.degree-3, u)
	if p.amp != 0 {
		y -= p.amp * p.rate * p.rate * p.rate * math.Cos(p.rate*u+p.phase)
	}
	return y
}

func (p *piece) motion(u float64) Motion {
	m := Motion{
		horner(&p.s, p.degree, u), horner(&p.v, p.degree-1, u),
		horner(&p.a, p.degree-2, u), horner(&p.j, p.degree-3, u),
	}
	if p.amp != 0 {
		sin, cos := math.Sincos(p.rate*u + p.phase)
		r := p.rate
		m.Position += p.amp * sin
		m.Velocity += p.amp * r * cos
		m.Acceleration -= p.amp * r * r * sin
		m.Jerk -= p.amp * r * r * r * cos
	}
	return m
}

// width is the share of the time that the piece takes.
func (p *piece) width() float64 { return p.to - p.from }

// derivative is the k-th derivative of s at u, for any k; slower than the four above.
func (p *piece) derivative(k int, u float64) float64 {
	y := 0.0
	for i := p.degree; i >= k; i-- {
		c := p.s[i]
		for m := range k {
			c *= float64(i - m)
		}
		y = y*u + c
	}
	if p.amp != 0 {
		y += p.amp * math.Pow(p.rate, float64(k)) * math.Sin(p.rate*u+p.phase+float64(k)*math.Pi/2)
	}
	return y
}

// zeros are the places inside the piece where the k-th derivative changes sign, ascending. They lie between the zeros
// of the next derivative, one at most between two neighbours, down to a derivative whose zeros are known.
func (p *piece) zeros(k int) []float64 {
	if k >= p.degree && p.amp == 0 {
		return nil
	}
	if k > p.degree {
		return p.sineZeros(k)
	}
	marks := append([]float64{0}, p.zeros(k+1)...)
	marks = append(marks, p.width())
	var found []float64
	for i := 1; i < len(marks); i++ {
		lo, hi := marks[i-1], marks[i]
		f := func(u float64) float64 { return p.derivative(k, u) }
		if f(lo)*f(hi) < 0 {
			found = append(found, root(f, lo, hi, 0))
		}
	}
	return found
}

// sineZeros are the zeros of the k-th derivative where only the sine is left of it.
func (p *piece) sineZeros(k int) []float64 {
	shift := p.phase + float64(k)*math.Pi/2
	first := math.Floor(min(shift, shift+p.rate*p.width())/math.Pi) + 1
	var found []float64
	for m := first; m*math.Pi < max(shift, shift+p.rate*p.width()); m++ {
		if u := (m*math.Pi - shift) / p.rate; u > 0 && u < p.width() {
			found = append(found, u)
		}
	}
	return found
}
