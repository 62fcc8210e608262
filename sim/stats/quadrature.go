package stats

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// rule is a quadrature rule for an expectation: points with weights that sum
// to 1.
type rule struct {
	at     []float64
	weight []float64
}

// integrate is the expectation of f.
func (r rule) integrate(f func(float64) float64) float64 {
	sum := 0.0
	for i, x := range r.at {
		sum += r.weight[i] * f(x)
	}
	return sum
}

// weighted is Gauss-Legendre quadrature on [lo, hi] against a density known
// up to a factor.
func weighted(points int, lo, hi float64, density func(float64) float64) rule {
	r := rule{at: make([]float64, points), weight: make([]float64, points)}
	quad.Legendre{}.FixedLocations(r.at, r.weight, lo, hi)
	total := 0.0
	for i, x := range r.at {
		r.weight[i] *= density(x)
		total += r.weight[i]
	}
	for i := range r.weight {
		r.weight[i] /= total
	}
	return r
}

// negligible is the share of a density that a rule may leave out.
const negligible = 1e-18

// chiRule is quadrature over a chi variable with df >= 1 degrees of freedom
// (the root of a chi-square). Its points are even in log s, where the density
// is s^df exp(-s^2/2), because the integrands turn at a multiple of s that
// may be small. Seven above the mode there is nothing left of it.
func chiRule(df float64, points int) rule {
	const reach = 7
	mode := math.Sqrt(df)
	lo := math.Max(math.Pow(negligible, 1/df), mode-reach)
	r := weighted(points, math.Log(lo), math.Log(mode+reach), func(v float64) float64 {
		s := math.Exp(v)
		return math.Exp(df*(v-math.Log(mode)) - (s*s-df)/2)
	})
	for i, v := range r.at {
		r.at[i] = math.Exp(v)
	}
	return r
}

// increasingRoot is the x >= 0 at which the increasing function f reaches
// target, to about 1e-12 of its size. f must be below target at 0 and reach
// it somewhere.
func increasingRoot(target float64, f func(float64) float64) float64 {
	hi := 1.0
	for f(hi) < target {
		if hi > 1e15 {
			return math.Inf(1) // target within rounding of the limit of f
		}
		hi *= 2
	}
	lo := 0.0
	for hi-lo > 1e-12*hi {
		mid := (lo + hi) / 2
		if f(mid) < target {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func normalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
