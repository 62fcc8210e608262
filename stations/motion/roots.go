package motion

import "math"

// root is a zero of a continuous f between lo and hi, whose values there must not have the same sign, to within
// tolerance (0: to neighbouring numbers).
func root(f func(float64) float64, lo, hi, tolerance float64) float64 {
	a, b := narrow(f, lo, hi, tolerance)
	return a + (b-a)/2
}

// narrow shrinks a bracket whose ends have different signs of f until it is no wider than tolerance: by a secant step
// where that shrinks it well, else by bisection. Ends keep their signs; an exact zero comes back as both ends.
func narrow(f func(float64) float64, lo, hi, tolerance float64) (float64, float64) {
	flo, fhi := f(lo), f(hi)
	switch {
	case flo == 0:
		return lo, lo
	case fhi == 0:
		return hi, hi
	}
	for i := 0; ; i++ {
		x := lo + (hi-lo)/2
		if x == lo || x == hi || math.Abs(hi-lo) <= tolerance {
			return lo, hi
		}
		if i%3 != 2 {
			x = secant(lo, hi, flo, fhi, x)
		}
		fx := f(x)
		switch {
		case fx == 0:
			return x, x
		case (fx < 0) == (flo < 0):
			lo, flo = x, fx
		default:
			hi, fhi = x, fx
		}
	}
}

// secant is where the chord crosses zero, pushed a little towards the middle so that it bites off both ends in turn;
// the middle itself if the chord is of no use.
func secant(lo, hi, flo, fhi, middle float64) float64 {
	x := lo - flo*(hi-lo)/(fhi-flo)
	x += (middle - x) * 1e-3
	if !(x > min(lo, hi) && x < max(lo, hi)) {
		return middle
	}
	return x
}

// lastAllowed is the last x from good towards bad at which ok still holds, to within tolerance; ok(good) must hold
// and ok(bad) must not.
func lastAllowed(ok func(float64) bool, good, bad, tolerance float64) float64 {
	sign := func(x float64) float64 {
		if ok(x) {
			return 1
		}
		return -1
	}
	good, _ = narrow(sign, good, bad, tolerance)
	return good
}
