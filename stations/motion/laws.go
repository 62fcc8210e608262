package motion

import (
	"fmt"
	"math"
)

// SimpleHarmonic is s = (1 - cos pi z)/2. The acceleration steps at both ends. Source: Norton, Cam Design and
// Manufacturing Handbook (2nd ed. 2009), ch. 3.
func SimpleHarmonic() Law {
	return newLaw("simple harmonic", 0, phase{width: 1, amp: 1, rate: math.Pi, shift: math.Pi / 2})
}

// Cycloidal is s = z - sin(2 pi z)/(2 pi): a full sine of acceleration. Source: Norton (2009), ch. 3; VDI 2143 Bl. 1
// (1980), inclined sine line.
func Cycloidal() Law {
	return newLaw("cycloidal", 0, phase{width: 1, amp: 1, rate: 2 * math.Pi})
}

// Polynomial345 is s = 10 z^3 - 15 z^4 + 6 z^5. Source: Norton (2009), ch. 3; VDI 2143 Bl. 1 (1980).
func Polynomial345() Law {
	return newLaw("polynomial 3-4-5", 0, phase{width: 1, poly: []float64{0, 60, -180, 120}})
}

// Polynomial4567 is s = 35 z^4 - 84 z^5 + 70 z^6 - 20 z^7; its jerk is continuous. Source: Norton (2009), ch. 3.
func Polynomial4567() Law {
	return newLaw("polynomial 4-5-6-7", 0, phase{width: 1, poly: []float64{0, 0, 420, -1680, 2100, -840}})
}

// ConstantAcceleration is s = 2 z^2 to the middle and its mirror image after: the lowest peak acceleration of all,
// with steps at both ends and in the middle. Source: Norton (2009), ch. 3.
func ConstantAcceleration() Law {
	return newLaw("constant acceleration", 0, phase{width: 0.5, poly: []float64{1}}, phase{width: 0.5, poly: []float64{-1}})
}

// ModifiedTrapezoid has a trapezoid of acceleration whose flanks are quarter sines of an eighth of the time. Source:
// Norton (2009), ch. 3; VDI 2143 Bl. 1 (1980).
func ModifiedTrapezoid() Law {
	const eighth, rate = 0.125, 4 * math.Pi
	return newLaw("modified trapezoid", 0,
		phase{width: eighth, amp: 1, rate: rate},
		phase{width: 2 * eighth, poly: []float64{1}},
		phase{width: 2 * eighth, amp: 1, rate: rate, shift: math.Pi / 2},
		phase{width: 2 * eighth, poly: []float64{-1}},
		phase{width: eighth, amp: -1, rate: rate, shift: math.Pi / 2})
}

// ModifiedSine rises to peak acceleration in a quarter sine of an eighth of the moving time and falls in a slower
// quarter sine of three eighths. Source: Norton (2009), ch. 3; VDI 2143 Bl. 1 (1980), modified sine line.
func ModifiedSine() Law { return modifiedSine("modified sine", 0) }

// ModifiedSineConstantVelocity is the modified sine with a stretch of constant velocity in its middle that takes the
// given share of the time, 0 (the plain modified sine) to less than 1. Source: Norton (2009), ch. 3 (20 % and 50 %).
func ModifiedSineConstantVelocity(share float64) (Law, error) {
	if !(share >= 0 && share < 1) {
		return Law{}, fmt.Errorf("motion law modified sine: share of constant velocity %g is not in 0 .. 1 (excluded)", share)
	}
	if share == 0 {
		return ModifiedSine(), nil
	}
	return modifiedSine(fmt.Sprintf("modified sine, %.6g %% constant velocity", 100*share), share), nil
}

func modifiedSine(name string, cruise float64) Law {
	fast, slow := (1-cruise)/8, 3*(1-cruise)/8
	quarter := math.Pi / 2
	return newLaw(name, 0,
		phase{width: fast, amp: 1, rate: quarter / fast},
		phase{width: slow, amp: 1, rate: quarter / slow, shift: quarter},
		phase{width: cruise},
		phase{width: slow, amp: -1, rate: quarter / slow},
		phase{width: fast, amp: -1, rate: quarter / fast, shift: quarter})
}

// StraightLine is s = z: the velocity steps at both ends, so the acceleration there is without bound. It is offered
// because existing cams use it; Axis.Cautions warns of it.
func StraightLine() Law { return newLaw("straight line", 1, phase{width: 1}) }
