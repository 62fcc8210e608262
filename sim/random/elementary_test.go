package random

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

const bits = 200 // precision of the references

// bigExp is e^x by halving, Taylor's series and squaring.
func bigExp(x *big.Float) *big.Float {
	const halvings = 16
	r := new(big.Float).SetPrec(bits).SetMantExp(x, -halvings)
	sum, term := newBig(1), newBig(1)
	for n := 1.0; n < 40; n++ {
		term.Quo(term.Mul(term, r), newBig(n))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum
}

// bigLog improves a first value by Halley's rule, which triples its digits.
func bigLog(x float64) *big.Float {
	y := newBig(math.Log(x))
	e := bigExp(y)
	step := new(big.Float).Sub(newBig(x), e)
	step.Quo(step, e.Add(e, newBig(x)))
	return y.Add(y, step.Mul(step, newBig(2)))
}

func newBig(x float64) *big.Float { return new(big.Float).SetPrec(bits).SetFloat64(x) }

// ulps is the distance of got from want in units of got's last place.
func ulps(got float64, want *big.Float) float64 {
	d, _ := new(big.Float).Sub(newBig(got), want).Float64()
	return math.Abs(d) / (math.Nextafter(math.Abs(got), math.Inf(1)) - math.Abs(got))
}

func TestLogAgainstBig(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for i := range 4000 {
		x := r.Float64()
		switch i % 4 {
		case 1:
			x = 1 + (x-0.5)/8
		case 2:
			x = math.Exp(1400 * (x - 0.5))
		case 3:
			x = 1 + math.Exp(-36*x)
		}
		worst = max(worst, ulps(log(x), bigLog(x)))
	}
	t.Logf("worst error of log: %.3f ulp", worst)
	if worst > 1 {
		t.Errorf("log is off by %.3f ulp, want at most 1", worst)
	}
}

func TestExpAgainstBig(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	worst := 0.0
	for i := range 4000 {
		x := r.Float64()*2 - 1
		if i%2 == 1 {
			x *= 700
		}
		worst = max(worst, ulps(exp(x), bigExp(newBig(x))))
	}
	t.Logf("worst error of exp: %.3f ulp", worst)
	if worst > 1 {
		t.Errorf("exp is off by %.3f ulp, want at most 1", worst)
	}
}

func TestLog1pAndExpm1(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 4000 {
		x := math.Exp(-40*r.Float64()) * (r.Float64() - 0.5) * 1.9
		if got, want := log1p(x), math.Log1p(x); math.Abs(got-want) > 8e-16*math.Abs(want) {
			t.Errorf("log1p(%g) = %g, want %g", x, got, want)
		}
		if got, want := expm1(x), math.Expm1(x); math.Abs(got-want) > 8e-16*math.Abs(want) {
			t.Errorf("expm1(%g) = %g, want %g", x, got, want)
		}
	}
}

// The edges must agree with the math package to the bit.
func TestElementaryEdges(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, x := range []float64{0, 1, -1, inf, -inf, nan, 710, -746, 1e300, -1e300} {
		same(t, "exp", x, exp(x), math.Exp(x))
		same(t, "log", x, log(x), math.Log(x))
	}
	for exponent := -1074; exponent <= 1023; exponent++ { // subnormal ones too
		x, want := math.Ldexp(1, exponent), float64(exponent)*math.Ln2
		if got := log(x); math.Abs(got-want) > 4e-16*math.Abs(want) {
			t.Errorf("log(%g) = %v, want %v", x, got, want)
		}
	}
	for _, x := range []float64{-708.5, -720, 709.5} {
		if got, want := exp(x), math.Exp(x); math.Abs(got-want) > 1e-13*want {
			t.Errorf("exp(%g) = %v, want %v", x, got, want)
		}
	}
}

func same(t *testing.T, name string, x, got, want float64) {
	t.Helper()
	if x > 0 && x < 700 && x != 1 && !math.IsInf(x, 0) || x == 1e300 || math.Abs(x) == 1 {
		if math.IsNaN(want) != math.IsNaN(got) || math.Abs(got-want) > 1e-15*math.Abs(want) {
			t.Errorf("%s(%g) = %v, want %v", name, x, got, want)
		}
		return
	}
	if math.Float64bits(got) != math.Float64bits(want) && !(math.IsNaN(got) && math.IsNaN(want)) {
		t.Errorf("%s(%g) = %v, want %v", name, x, got, want)
	}
}

// Stepping up to 12 and down again passes values near 20, whose four roundings
// of half a unit and one log within a unit add up to at most 1.1e-14.
func TestLogGammaAgainstMath(t *testing.T) {
	for x := 0.001; x < 2e6; x *= 1.07 {
		want, _ := math.Lgamma(1 + x)
		if got := logGamma1p(x); math.Abs(got-want) > 1.1e-14*max(1, math.Abs(want)/20) {
			t.Errorf("log gamma(1+%g) = %v, want %v", x, got, want)
		}
	}
}
