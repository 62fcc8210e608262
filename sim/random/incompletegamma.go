package random

import "math"

// gammaLaw is a gamma law of mean 1, handled through y = log x, which is safe
// for the smallest quantiles of small shapes.
type gammaLaw struct {
	shape float64
	peak  float64 // log of the density of y at y = 0, where it is greatest
}

func standardGamma(shape float64) gammaLaw {
	return gammaLaw{shape, float64(0.5*(log(shape)-logTwoPi)) - stirlingError(shape)}
}

// logDensity returns the log of the density of y: shape^shape / Gamma(shape)
// exp(shape (y - e^y)), written so that nothing large cancels.
func (g gammaLaw) logDensity(y float64) float64 {
	return g.peak - float64(g.shape*expExcessWide(y))
}

// tails returns the logs of the chances below and above y, the regularised
// incomplete gamma functions P and Q, and the log of the density of y. It sums
// the power series below the mean's neighbourhood and the continued fraction
// above (Abramowitz and Stegun 1964, 6.5.29 and 6.5.31).
func (g gammaLaw) tails(y float64) (logP, logQ, logF float64) {
	x := float64(g.shape * exp(y))
	logF = g.logDensity(y)
	if x < g.shape+1 {
		logP = logF + log(g.series(x)/g.shape)
		return logP, log1p(-exp(logP)), logF
	}
	logQ = logF + log(g.fraction(x))
	return log1p(-exp(logQ)), logQ, logF
}

// series returns 1 + x/(a+1) + x^2/((a+1)(a+2)) + ..., x < a+1.
func (g gammaLaw) series(x float64) float64 {
	sum, term := 1.0, 1.0
	for n := g.shape + 1; term > float64(sum*0x1p-55); n++ {
		term = float64(term * (x / n))
		sum += term
	}
	return sum
}

// fraction returns the continued fraction 1/(x+1-a- 1(1-a)/(x+3-a- ...)),
// x >= a+1, by the forward recurrence of its convergents' ratios (Lentz 1976).
func (g gammaLaw) fraction(x float64) float64 {
	b := x + 1 - g.shape
	c, d := math.Inf(1), 1/b
	h := d
	for n := 1.0; n < 1e6; n++ {
		a := float64(n * (g.shape - n))
		b += 2
		d = 1 / muladd(a, d, b)
		c = b + a/c
		change := float64(c * d)
		h = float64(h * change)
		if !(math.Abs(change-1) > 0x1p-52) {
			break
		}
	}
	return h
}

// solve returns y with chances below and above it, by Newton's rule on the log
// of the smaller one, which is concave in y, so that it converges from any
// start.
func (g gammaLaw) solve(below, above, y float64) float64 {
	for range 200 {
		logP, logQ, logF := g.tails(y)
		var step float64
		if below <= above {
			step = float64((log(below) - logP) * exp(logP-logF))
		} else {
			step = float64((logQ - log(above)) * exp(logQ-logF))
		}
		step = max(-longestStep, min(longestStep, step))
		y += step
		if math.Abs(step) < 1e-9 { // the error now is about its square
			break
		}
	}
	return y
}

// longestStep keeps a first step of solve from leaving the range of exp.
const longestStep = 5

// lowestStart returns a y below the solution for the standard normal quantile
// z, from P <= (shape x)^shape / Gamma(shape+1).
func (g gammaLaw) lowestStart(z float64) float64 {
	below, _ := normalTails(z)
	return (log(below)-g.peak+log(g.shape))/g.shape - 1
}
