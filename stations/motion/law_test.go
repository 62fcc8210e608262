package motion_test

import (
	"errors"
	"math"
	"testing"

	"dwellcast/stations/motion"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// allLaws is every law of the package, with shares that are not only the standard ones.
func allLaws(t testing.TB) []motion.Law {
	t.Helper()
	names := append(motion.LawNames(),
		"trapezoidal velocity 1/4-1/2-1/4", "trapezoidal velocity 0.2-0.3-0.5", "S-curve 1/3-1/3-1/3, half jerk",
		"S-curve 1/2-0-1/2, full jerk", "S-curve 1/4-1/4-1/2, 30 % jerk", "modified sine, 20 % constant velocity")
	laws := make([]motion.Law, len(names))
	for i, name := range names {
		law, err := motion.LawByName(name)
		if err != nil {
			t.Fatal(err)
		}
		laws[i] = law
	}
	return laws
}

// grid calls f at places inside 0..1 that are no joint of any law's pieces.
func grid(f func(z float64)) {
	for i := range 997 {
		f((float64(i) + 0.37) / 997)
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tolerance)
	}
}

func TestLaws(t *testing.T) {
	for _, law := range allLaws(t) {
		t.Run(law.Name(), func(t *testing.T) {
			t.Run("ends", func(t *testing.T) { checkEnds(t, law) })
			t.Run("symmetry", func(t *testing.T) { checkSymmetry(t, law) })
			t.Run("derivatives", func(t *testing.T) { checkDerivatives(t, law) })
			t.Run("integral of v", func(t *testing.T) { checkIntegral(t, law) })
			t.Run("peaks", func(t *testing.T) { checkPeaks(t, law) })
			t.Run("inverse", func(t *testing.T) { checkInverse(t, law) })
			t.Run("name", func(t *testing.T) { checkName(t, law) })
		})
	}
}

func checkEnds(t *testing.T, law motion.Law) {
	c := law.Coefficients()
	for _, z := range []float64{0, 1} {
		near(t, "s", law.Position(z), z, 0)
		near(t, "s close to the end", law.Position(math.Abs(z-1e-9)), z, 1e-8)
		if !c.VelocitySteps {
			near(t, "v", law.Velocity(z), 0, 1e-12)
		}
		if !c.AccelerationStep {
			near(t, "a", law.Acceleration(z), 0, 1e-11)
		}
	}
}

// checkSymmetry: s(1-z) = 1 - s(z), except where the two ramps differ on purpose.
func checkSymmetry(t *testing.T, law motion.Law) {
	if math.Abs(law.Position(0.5)-0.5) > 1e-12 {
		if law.Name() != "trapezoidal velocity 1/5-3/10-1/2" && law.Name() != "S-curve 1/4-1/4-1/2, 30 % jerk" {
			t.Errorf("%s is lopsided", law.Name())
		}
		return
	}
	grid(func(z float64) {
		near(t, "s", law.Position(1-z), 1-law.Position(z), 1e-12)
		near(t, "v", law.Velocity(1-z), law.Velocity(z), 1e-11)
		near(t, "a", law.Acceleration(1-z), -law.Acceleration(z), 1e-9)
		near(t, "j", law.Jerk(1-z), law.Jerk(z), 1e-8)
	})
}

// checkDerivatives compares each derivative with a central difference, away from the joints.
func checkDerivatives(t *testing.T, law motion.Law) {
	const h = 1e-5
	grid(func(z float64) {
		if law.Jerk(z-h) != law.Jerk(z) && math.Abs(law.Jerk(z-h)-law.Jerk(z+h)) > 1 {
			return // a joint of two pieces lies within h
		}
		m := law.Motion(z)
		slope := func(f func(float64) float64) float64 { return (f(z+h) - f(z-h)) / (2 * h) }
		near(t, "v", m.Velocity, slope(law.Position), 1e-6)
		near(t, "a", m.Acceleration, slope(law.Velocity), 1e-5)
		if math.Abs(law.Acceleration(z+h)-law.Acceleration(z-h)) < 1 {
			near(t, "j", m.Jerk, slope(law.Acceleration), 5e-3)
		}
		near(t, "s at once", m.Position, law.Position(z), 1e-15)
		near(t, "v at once", m.Velocity, law.Velocity(z), 1e-12)
		near(t, "a at once", m.Acceleration, law.Acceleration(z), 1e-12)
	})
}

func checkIntegral(t *testing.T, law motion.Law) {
	const cells = 1200 // 1200 is a multiple of the joints' denominators, so that no cell straddles a joint
	sum := 0.0
	for i := range cells {
		sum += quad.Fixed(law.Velocity, float64(i)/cells+1e-15, float64(i+1)/cells-1e-15, 5, nil, 0)
	}
	near(t, "integral of v", sum, 1, 1e-9)
}

// checkPeaks: no place exceeds a coefficient, and the place named reaches it.
func checkPeaks(t *testing.T, law motion.Law) {
	c := law.Coefficients()
	grid(func(z float64) {
		m := law.Motion(z)
		if m.Velocity < -1e-12 || m.Velocity > c.Cv+1e-9 || math.Abs(m.Acceleration) > c.Ca+1e-9 || math.Abs(m.Jerk) > c.Cj+1e-7 {
			t.Fatalf("at %g: %+v exceeds %+v", z, m, c)
		}
		if math.Abs(m.Velocity*m.Acceleration) > c.Power+1e-9 {
			t.Fatalf("at %g: power %g exceeds %g", z, m.Velocity*m.Acceleration, c.Power)
		}
	})
	near(t, "v at its peak", law.Velocity(c.AtV), c.Cv, 1e-9)
	near(t, "a near its peak", math.Max(math.Abs(law.Acceleration(c.AtA-1e-12)), math.Abs(law.Acceleration(c.AtA))), c.Ca, 1e-6)
}

func checkInverse(t *testing.T, law motion.Law) {
	grid(func(z float64) {
		near(t, "z", law.Inverse(law.Position(z)), z, 2e-14/law.Velocity(z)+1e-12) // rounding of s over the slope
	})
	near(t, "inverse of 0", law.Inverse(0), 0, 0)
	near(t, "inverse of 1", law.Inverse(1), 1, 0)
	if !math.IsNaN(law.Inverse(1.1)) || !math.IsNaN(law.Inverse(-0.1)) {
		t.Error("a fraction outside 0..1 must have no place")
	}
}

func checkName(t *testing.T, law motion.Law) {
	again, err := motion.LawByName(law.Name())
	if err != nil || again.Name() != law.Name() {
		t.Errorf("LawByName(%q) = %v, %v", law.Name(), again, err)
	}
}

// TestLawSteps: which laws step is a matter of definition (Norton 2009, ch. 2: the fundamental law of cam design).
func TestLawSteps(t *testing.T) {
	for name, want := range map[string][2]bool{
		"straight line": {true, true}, "constant acceleration": {false, true}, "simple harmonic": {false, true},
		"trapezoidal velocity": {false, true}, "S-curve": {false, false}, "cycloidal": {false, false},
		"polynomial 3-4-5": {false, false}, "modified sine": {false, false}, "modified trapezoid": {false, false},
	} {
		law, err := motion.LawByName(name)
		if err != nil {
			t.Fatal(err)
		}
		c := law.Coefficients()
		if got := [2]bool{c.VelocitySteps, c.AccelerationStep}; got != want {
			t.Errorf("%s: velocity, acceleration steps = %v, want %v", name, got, want)
		}
	}
}

func TestLawByNameHints(t *testing.T) {
	for name, want := range map[string]string{
		"cycloid al": "cycloidal", "modifed sine": "modified sine", "polynominal 3-4-5": "polynomial 3-4-5",
		"straight": "straight line", "modified trapezoids": "modified trapezoid", "": "cycloidal",
	} {
		_, err := motion.LawByName(name)
		var unknown motion.UnknownLawError
		if !errors.As(err, &unknown) || unknown.Nearest != want {
			t.Errorf("LawByName(%q): %v, want the hint %q", name, err, want)
		}
	}
	for _, name := range []string{
		"trapezoidal velocity 1/2-1/2-1/2", "trapezoidal velocity 0-1-0", "trapezoidal velocity 1/2-1/2", "trapezoidal velocity 1/0-1-1",
		"S-curve 1/3-1/3-1/3, no jerk", "S-curve 1/3-1/3-1/3, 0 % jerk", "modified sine, 100 % constant velocity",
	} {
		if law, err := motion.LawByName(name); err == nil {
			t.Errorf("LawByName(%q) = %v, want an error", name, law)
		}
	}
}

// TestSharedLawsAnyShares draws shares at random: end conditions and coefficients by the textbook formulas Cv = 2/(1
// + run) for equal ramps, Ca = Cv/ramp (kinematics of the trapezoid).
func TestSharedLawsAnyShares(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		ramp := rapid.Float64Range(0.01, 0.5).Draw(r, "ramp")
		jerk := rapid.Float64Range(0.01, 1).Draw(r, "jerk")
		trapezoid, err := motion.TrapezoidalVelocity(ramp, 1-2*ramp, ramp)
		if err != nil {
			r.Fatal(err)
		}
		curve, err := motion.SCurve(ramp, 1-2*ramp, ramp, jerk)
		if err != nil {
			r.Fatal(err)
		}
		cv := 1 / (1 - ramp)
		for _, law := range []motion.Law{trapezoid, curve} {
			if got := law.Coefficients().Cv; math.Abs(got-cv) > 1e-9 {
				r.Fatalf("%v: Cv = %.12g, want %.12g", law, got, cv)
			}
		}
		if got := trapezoid.Coefficients().Ca; math.Abs(got-cv/ramp) > 1e-9*cv/ramp {
			r.Fatalf("%v: Ca = %g, want %g", trapezoid, got, cv/ramp)
		}
		if got, want := curve.Coefficients().Ca, cv/ramp/(1-jerk/2); math.Abs(got-want) > 1e-9*want {
			r.Fatalf("%v: Ca = %g, want %g", curve, got, want)
		}
	})
}

// BenchmarkLawPosition evaluates each law at places in no order, so that no branch is easy to foretell.
func BenchmarkLawPosition(b *testing.B) {
	var places [1024]float64
	for i := range places {
		_, places[i] = math.Modf(float64(i) * math.Phi)
	}
	for _, law := range allLaws(b) {
		b.Run(law.Name(), func(b *testing.B) {
			b.ReportAllocs()
			sum := 0.0
			for i := range b.N {
				sum += law.Position(places[i&1023])
			}
			if math.IsNaN(sum) {
				b.Fatal(sum)
			}
		})
	}
}
