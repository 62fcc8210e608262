package stats

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// RinottH is Rinott's (1978) constant h for k >= 2 systems, n0 >= 2
// first-stage replications and a probability of correct selection pStar
// (1/k < pStar < 1): the root of
//
//	int [int Phi(h/sqrt((n0-1)(1/x+1/y))) f(x) dx]^(k-1) f(y) dy = pStar
//
// with f the chi-square density of n0-1 degrees of freedom.
func RinottH(k, n0 int, pStar float64) (float64, error) {
	if err := checkTwoStage(k, n0, pStar); err != nil {
		return 0, err
	}
	df := float64(n0 - 1)
	chi := chiRule(df, 128)
	return increasingRoot(pStar, func(h float64) float64 {
		return chi.integrate(func(y float64) float64 {
			one := chi.integrate(func(x float64) float64 {
				return normalCDF(h * x * y / math.Sqrt(df*(x*x+y*y)))
			})
			return math.Pow(one, float64(k-1))
		})
	}), nil
}

// RinottSizes are the total replications of each system by Rinott's
// two-stage procedure, max(n0, ceil((h S/delta)^2)), from the first-stage
// variances S^2 >= 0 and the indifference zone delta > 0. The system of
// largest overall mean is then selected.
func RinottSizes(h, delta float64, n0 int, variances []float64) []int {
	sizes := make([]int, len(variances))
	for i, v := range variances {
		sizes[i] = max(n0, ceilCount(h*h*v/(delta*delta)))
	}
	return sizes
}

// DudewiczDalalH is the constant h1 of Dudewicz & Dalal (1975) for k >= 2
// systems, n0 >= 2 first-stage replications and a probability of correct
// selection pStar (1/k < pStar < 1): the root of
//
//	int F(t+h)^(k-1) f(t) dt = pStar
//
// with F and f Student's t of n0-1 degrees of freedom.
func DudewiczDalalH(k, n0 int, pStar float64) (float64, error) {
	if err := checkTwoStage(k, n0, pStar); err != nil {
		return 0, err
	}
	student := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n0 - 1)}
	return increasingRoot(pStar, func(h float64) float64 {
		return allBeaten(student, h, k-1)
	}), nil
}

// allBeaten is the probability that all of the given number of independent
// Student variables stay below another one plus h, the integral over t of
// F(t+h)^others f(t). It is taken in two parts that meet halfway between the
// turning points 0 of f and -h of F, each even in asinh of the distance from
// its turning point, for the tails are long when there are few degrees of
// freedom.
func allBeaten(student distuv.StudentsT, h float64, others int) float64 {
	const points = 160
	edge := math.Sqrt(student.Nu * (math.Pow(negligible, -2/student.Nu) - 1))
	integrand := func(t float64) float64 {
		return math.Pow(student.CDF(t+h), float64(others)) * student.Prob(t)
	}
	right := quad.Fixed(func(v float64) float64 {
		return integrand(math.Sinh(v)) * math.Cosh(v)
	}, math.Asinh(-h/2), math.Asinh(edge), points, nil, 0)
	left := quad.Fixed(func(v float64) float64 {
		return integrand(math.Sinh(v)-h) * math.Cosh(v)
	}, math.Asinh(-edge), math.Asinh(h/2), points, nil, 0)
	return right + left
}

// DudewiczDalalSize is the total replications of a system with first-stage
// variance S^2: max(n0+1, ceil((h1 S/delta)^2)).
func DudewiczDalalSize(h1, delta float64, n0 int, variance float64) int {
	return max(n0+1, ceilCount(h1*h1*variance/(delta*delta)))
}

// DudewiczDalalWeights are the weights, summing to 1, of a system's
// first-stage and second-stage means, n > n0 being its total replications:
//
//	w1 = n0/n (1 + sqrt(1 - n/n0 (1 - (n-n0) delta^2/(h1 S)^2)))
//
// The system of largest weighted mean is selected. Without variance the
// stages are weighted by their sizes.
func DudewiczDalalWeights(h1, delta float64, n0, n int, variance float64) (w1, w2 float64) {
	share := float64(n0) / float64(n)
	if variance == 0 {
		return share, 1 - share
	}
	rest := 1 - float64(n-n0)*delta*delta/(h1*h1*variance)
	w1 = share * (1 + math.Sqrt(math.Max(0, 1-rest/share)))
	return w1, 1 - w1
}

func checkTwoStage(k, n0 int, pStar float64) error {
	if k < 2 {
		return fmt.Errorf("%d systems to select from; at least 2 are needed", k)
	}
	return checkSelection(k, n0, pStar)
}

// ceilCount is the least count not below x, at most MaxReplications.
func ceilCount(x float64) int {
	return int(math.Min(math.Ceil(x), MaxReplications))
}
