package motion

import (
	"fmt"
	"math"
	"strconv"
)

// TrapezoidalVelocity speeds up, runs and slows down at constant acceleration in the given shares of the time: each
// ramp more than 0, the run 0 or more, together 1. Source: Biagiotti and Melchiorri, Trajectory Planning for
// Automatic Machines and Robots (2008), ch. 3.
func TrapezoidalVelocity(accelerate, run, decelerate float64) (Law, error) {
	if err := checkShares("trapezoidal velocity", accelerate, run, decelerate); err != nil {
		return Law{}, err
	}
	return newLaw("trapezoidal velocity "+shares(accelerate, run, decelerate), 0,
		phase{width: accelerate, poly: []float64{1 / accelerate}},
		phase{width: run},
		phase{width: decelerate, poly: []float64{-1 / decelerate}}), nil
}

// SCurve is TrapezoidalVelocity with limited jerk: within each ramp the acceleration rises and falls linearly during
// the share jerk of the ramp, 0 (excluded) to 1 (full: the acceleration is a triangle), half of it at each end.
// Source: Biagiotti and Melchiorri (2008), ch. 3.4.
func SCurve(accelerate, run, decelerate, jerk float64) (Law, error) {
	if err := checkShares("S-curve", accelerate, run, decelerate); err != nil {
		return Law{}, err
	}
	if !(jerk > 0 && jerk <= 1) {
		return Law{}, fmt.Errorf("motion law S-curve: jerk share %g is not in 0 (excluded) .. 1", jerk)
	}
	name := "S-curve " + shares(accelerate, run, decelerate) + ", " + jerkName(jerk)
	phases := append(jerkRamp(accelerate, jerk, 1), phase{width: run})
	return newLaw(name, 0, append(phases, jerkRamp(decelerate, jerk, -1)...)...), nil
}

// jerkRamp changes the velocity by sign in the given width, with the acceleration a trapezoid or triangle.
func jerkRamp(width, jerk, sign float64) []phase {
	edge := width * jerk / 2
	peak := sign / (width - edge)
	return []phase{
		{width: edge, poly: []float64{0, peak / edge}},
		{width: width - 2*edge, poly: []float64{peak}},
		{width: edge, poly: []float64{peak, -peak / edge}},
	}
}

func checkShares(law string, accelerate, run, decelerate float64) error {
	sum := accelerate + run + decelerate
	if accelerate > 0 && run >= 0 && decelerate > 0 && math.Abs(sum-1) <= 1e-6 {
		return nil
	}
	return fmt.Errorf("motion law %s: shares %g, %g, %g must be two ramps above 0 and a run of 0 or more that sum to 1",
		law, accelerate, run, decelerate)
}

// shares writes three shares as fractions where they are simple ones.
func shares(a, b, c float64) string { return fraction(a) + "-" + fraction(b) + "-" + fraction(c) }

func fraction(x float64) string {
	for d := 1.0; d <= 12; d++ {
		n := math.Round(x * d)
		if math.Abs(x*d-n) > 1e-6 {
			continue
		}
		if d == 1 {
			return strconv.FormatFloat(n, 'g', -1, 64)
		}
		return fmt.Sprintf("%g/%g", n, d)
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}

func jerkName(share float64) string {
	switch share {
	case 1:
		return "full jerk"
	case 0.5:
		return "half jerk"
	}
	return fmt.Sprintf("%.6g %% jerk", 100*share)
}
