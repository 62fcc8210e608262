package random

import "math"

// The natural logarithm split in two: k*ln2High is exact for every exponent k.
const (
	ln2High = 0x1.62e42fefap-1
	ln2Low  = math.Ln2 - ln2High
)

// muladd returns a*b+c with both roundings, so that no processor fuses them.
func muladd(a, b, c float64) float64 { return float64(a*b) + c }

// log returns the natural logarithm of x, within 1 unit in the last place.
// x = 2^k (1+f) with 1+f between the square roots of 1/2 and 2.
func log(x float64) float64 {
	if !(x >= 0x1p-1022 && x <= math.MaxFloat64) {
		return logEdge(x)
	}
	const rootHalf = 0x3fe6a09e667f3bcd // the bits of the square root of 1/2
	bits := math.Float64bits(x)
	k := int64(bits-rootHalf) >> 52
	f := math.Float64frombits(bits-uint64(k)<<52) - 1
	e := float64(k)
	return muladd(e, ln2High, f-(logDefect(f)-float64(e*ln2Low)))
}

// logEdge is log for zero, negative, subnormal, infinite and NaN arguments.
func logEdge(x float64) float64 {
	switch {
	case x == 0:
		return math.Inf(-1)
	case x < 0 || math.IsNaN(x):
		return math.NaN()
	case x < 1:
		return log(float64(x*0x1p54)) - float64(54*math.Ln2)
	}
	return x
}

// log1p returns log(1+x) for x > -1, accurate also for small x.
func log1p(x float64) float64 {
	if x > -0.25 && x < 0.375 {
		return x - logDefect(x)
	}
	return log(1 + x)
}

// logDefect returns f - log(1+f) for 1+f between the square roots of 1/2 and 2.
// With s = f/(2+f), log(1+f) = 2 (s + s^3/3 + s^5/5 + ...), the series of the
// inverse hyperbolic tangent, and f - 2s = s f. Terms beyond s^21 are below
// 1e-18 of the sum.
func logDefect(f float64) float64 {
	s := f / (2 + f)
	t := float64(s * s)
	t2 := float64(t * t)
	t4 := float64(t2 * t2)
	a := muladd(t2, muladd(t, 2./9, 2./7), muladd(t, 2./5, 2./3))
	b := muladd(t2, muladd(t, 2./17, 2./15), muladd(t, 2./13, 2./11))
	c := muladd(t, 2./21, 2./19)
	series := muladd(t4, muladd(t4, c, b), a)
	return float64(s * (f - float64(t*series)))
}

// exp returns e to the power x, within 1 unit in the last place.
// x = k log 2 + r with r at most half of log 2 in size.
func exp(x float64) float64 {
	if !(x > -708 && x < 709) {
		return expEdge(x)
	}
	const shift = 0x1.8p52 // adding and taking it away rounds to a whole number
	k := (float64(x*(1/math.Ln2)) + shift) - shift
	high := x - float64(k*ln2High)
	low := float64(k * ln2Low)
	e := 1 + (high + (expExcess(high-low) - low))
	return math.Float64frombits(math.Float64bits(e) + uint64(int64(k))<<52)
}

// expEdge is exp where the result is not a normal number, or nearly so.
func expEdge(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > 710:
		return math.Inf(1)
	case x < -746:
		return 0
	}
	half := exp(x / 2)
	return float64(half * half)
}

// expExcess returns exp(r) - 1 - r for r of at most 0.35 in size, by the
// Taylor series to r^13/13!; the next term is below 1e-17.
func expExcess(r float64) float64 {
	r2 := float64(r * r)
	r4 := float64(r2 * r2)
	a := muladd(r2, muladd(r, 1./120, 1./24), muladd(r, 1./6, 1./2))
	b := muladd(r2, muladd(r, 1./362880, 1./40320), muladd(r, 1./5040, 1./720))
	c := muladd(r2, muladd(r, 1./6227020800, 1./479001600), muladd(r, 1./39916800, 1./3628800))
	return float64(r2 * muladd(r4, muladd(r4, c, b), a))
}

// pow returns x to the power y for x >= 0. Its relative error is about
// |y log x| units in the last place.
func pow(x, y float64) float64 { return exp(float64(y * log(x))) }
