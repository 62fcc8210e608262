package random

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The complementary error function must give p back. The rational function
// (two polynomials of three levels and a quotient) and the argument of Erfc are
// good for 5 units in the last place of z, which the tail magnifies by 1+z^2.
func TestNormalQuantileAgainstErfc(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for i := range 20_000 {
		p := r.Float64() / 2
		if i%2 == 1 {
			p = math.Exp(-700 * r.Float64())
		}
		z := normalQuantile(p)
		tol := p * 5 * 0x1p-52 * (1 + z*z)
		if got := math.Erfc(-z/math.Sqrt2) / 2; math.Abs(got-p) > tol {
			t.Errorf("quantile of %g is %.17g, whose chance is off by %.3g, tolerance %.3g", p, z, got-p, tol)
		}
		if p > 0x1p-20 && math.Abs(normalQuantile(1-p)+z) > 1e-9 {
			t.Errorf("quantiles of %g and 1-%g do not mirror", p, p)
		}
	}
}

// The log of Gamma(1/2) is good for 1.1e-14 (see its test), the exponent for a
// few units that z^2 magnifies; near the middle one tail is 1 minus the other.
func TestNormalTailsAgainstErfc(t *testing.T) {
	for z := -37.0; z < 37; z += 0.0937 {
		below, above := normalTails(z)
		for _, c := range [][2]float64{{below, math.Erfc(-z/math.Sqrt2) / 2}, {above, math.Erfc(z/math.Sqrt2) / 2}} {
			tol := (1.1e-14 + 1e-15*z*z) * c[1]
			if math.Abs(z) < 2 {
				tol += 4e-16
			}
			if math.Abs(c[0]-c[1]) > tol {
				t.Errorf("tail at %g is %.17g, want %.17g", z, c[0], c[1])
			}
		}
	}
}
