package random

import "math"

const logTwoPi = 1.8378770664093454835606594728112352797227949472755668256343

// stirlingError returns log Gamma(a) - ((a-1/2) log a - a + log(2 pi)/2), a > 0:
// by Stirling's series (Abramowitz and Stegun 1964, 6.1.41) from a = 12 on,
// whose first term left out is below 1e-16, and by stepping down from there.
func stirlingError(a float64) float64 {
	if a < 12 {
		return logGamma1p(a) - log(a) - stirlingForm(a)
	}
	return stirlingSeries(a)
}

// stirlingForm returns (a-1/2) log a - a + log(2 pi)/2.
func stirlingForm(a float64) float64 {
	return muladd(a-0.5, log(a), logTwoPi/2-a)
}

func stirlingSeries(a float64) float64 {
	r := 1 / squared(a)
	sum := muladd(r, -691./360360, 1./1188)
	sum = muladd(r, sum, -1./1680)
	sum = muladd(r, sum, 1./1260)
	sum = muladd(r, sum, -1./360)
	sum = muladd(r, sum, 1./12)
	return sum / a
}

// logGamma1p returns log Gamma(1+x), x >= 0.
func logGamma1p(x float64) float64 {
	a, product := 1+x, 1.0
	for a < 12 {
		product = float64(product * a)
		a++
	}
	return stirlingForm(a) + stirlingSeries(a) - log(product)
}

// expm1 returns exp(x) - 1, accurate also for small x.
func expm1(x float64) float64 { return x + expExcessWide(x) }

// expExcessWide returns exp(x) - 1 - x for any x.
func expExcessWide(x float64) float64 {
	if math.Abs(x) <= 0.35 {
		return expExcess(x)
	}
	return exp(x) - 1 - x
}
