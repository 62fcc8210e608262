package motion

import "math"

// root is a zero of a continuous f between lo and hi, whose values there must not have the same sign. It keeps a
// bracket: a secant step where that shrinks the bracket well, else bisection. It ends at a bracket no wider than
// tolerance, or of two neighbouring numbers.
func root(f func(float64) float64, lo, hi, tolerance float64) float64 {
	flo, fhi := f(lo), f(hi)
	switch {
	case flo == 0:
		return lo
	case fhi == 0:
		return hi
	}
	for i := 0; ; i++ {
		x := lo + (hi-lo)/2
		if x == lo || x == hi || math.Abs(hi-lo) <= tolerance {
			return x
		}
		if i%3 != 2 {
			x = secant(lo, hi, flo, fhi, x)
		}
		fx := f(x)
		switch {
		case fx == 0:
			return x
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
	x += (middle - x) * 1e-3 // the push
	if !(x > min(lo, hi) && x < max(lo, hi)) {
		return middle
	}
	return x
}

// allowedEnd is the last x from good towards bad for which ok still holds, to within tolerance; ok(good) must hold and ok(bad)
// must not.
func allowedEnd(ok func(float64) bool, good, bad, tolerance float64) float64 {
	for math.Abs(bad-good) > tolerance {
		x := good + (bad-good)/2
		if x == good || x == bad {
			break
		}
		if ok(x) {
			good = x
		} else {
			bad = x
		}
	}
	return good
}
