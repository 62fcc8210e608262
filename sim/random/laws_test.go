package random_test

import (
	"math"
	"testing"

	"dwellcast/sim/random"

	"gonum.org/v1/gonum/stat/distuv"
)

// law is one distribution under test with an independent reference.
type law struct {
	name     string
	d        random.Distribution
	cdf      func(x float64) float64 // independent
	discrete bool
	heavy    bool // sample variance too skewed for a normal approximation
	// subtracts: the reference takes the difference of two chances
	subtracts bool
}

// laws lists every kind of law with ordinary and extreme parameters. The
// parameters are invented.
func laws(t testing.TB) []law {
	made := func(d random.Distribution, err error) random.Distribution {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	return []law{
		{name: "constant", d: made(random.Constant(2.5)), cdf: stepAt(2.5), discrete: true},
		{name: "uniform", d: made(random.Uniform(1, 4)), cdf: distuv.Uniform{Min: 1, Max: 4}.CDF},
		{name: "uniform one point", d: made(random.Uniform(3, 3)), cdf: stepAt(3), discrete: true},
		{name: "triangular", d: made(random.Triangular(1, 2, 7)), cdf: distuv.NewTriangle(1, 7, 2, nil).CDF},
		{name: "triangular rising", d: made(random.Triangular(0, 2, 2)), cdf: distuv.NewTriangle(0, 2, 2, nil).CDF},
		{name: "triangular falling", d: made(random.Triangular(1, 1, 2)), cdf: distuv.NewTriangle(1, 2, 1, nil).CDF},
		{name: "exponential", d: made(random.Exponential(20)), cdf: distuv.Exponential{Rate: 1. / 20}.CDF},
		{name: "erlang 1", d: made(random.Erlang(1, 3)), cdf: distuv.Exponential{Rate: 1. / 3}.CDF},
		{name: "erlang 4", d: made(random.Erlang(4, 3)), cdf: distuv.Gamma{Alpha: 4, Beta: 4. / 3}.CDF},
		{name: "gamma cv 2", d: made(random.Gamma(10, 2)), cdf: distuv.Gamma{Alpha: 0.25, Beta: 0.025}.CDF, heavy: true},
		{name: "gamma cv 0.1", d: made(random.Gamma(10, 0.1)), cdf: distuv.Gamma{Alpha: 100, Beta: 10}.CDF},
		{name: "gamma shape", d: made(random.GammaShapeScale(2.5, 4)), cdf: distuv.Gamma{Alpha: 2.5, Beta: 0.25}.CDF},
		{name: "gamma small", d: made(random.GammaShapeScale(0.05, 4)), cdf: distuv.Gamma{Alpha: 0.05, Beta: 0.25}.CDF, heavy: true},
		{name: "weibull shape", d: made(random.WeibullShapeScale(1.7, 30)), cdf: distuv.Weibull{K: 1.7, Lambda: 30}.CDF},
		{name: "weibull early", d: made(random.WeibullShapeScale(0.6, 30)), cdf: distuv.Weibull{K: 0.6, Lambda: 30}.CDF, heavy: true},
		{name: "weibull cv 1", d: made(random.Weibull(30, 1)), cdf: distuv.Exponential{Rate: 1. / 30}.CDF},
		{name: "weibull cv 0.3", d: made(random.Weibull(30, 0.3)), cdf: weibullCDF(30, 0.3)},
		{name: "lognormal", d: made(random.Lognormal(55, 0.9)), cdf: lognormalCDF(55, 0.9), heavy: true},
		{name: "lognormal narrow", d: made(random.Lognormal(55, 0.1)), cdf: lognormalCDF(55, 0.1)},
		{name: "lognormal median", d: made(random.LognormalMedianSigma(40, 0.5)), cdf: distuv.LogNormal{Mu: math.Log(40), Sigma: 0.5}.CDF},
		{name: "normal", d: made(random.Normal(2, 0.3)), cdf: truncatedCDF(2, 0.3), subtracts: true},
		{name: "normal cut", d: made(random.Normal(1, 1)), cdf: truncatedCDF(1, 1), subtracts: true},
		{name: "normal half", d: made(random.Normal(0, 2)), cdf: truncatedCDF(0, 2), subtracts: true},
		{name: "empirical", d: made(random.Empirical([]float64{5, 1, 3, 1}, []float64{2, 1, 4, 1})),
			cdf: func(x float64) float64 { return (2*stepAt(1)(x) + 4*stepAt(3)(x) + 2*stepAt(5)(x)) / 8 }, discrete: true},
		{name: "empirical equal", d: made(random.Empirical([]float64{2, 7, 4}, nil)),
			cdf: func(x float64) float64 { return (stepAt(2)(x) + stepAt(4)(x) + stepAt(7)(x)) / 3 }, discrete: true},
		{name: "geometric", d: made(random.Geometric(10, 2)),
			cdf: func(x float64) float64 { return 1 - math.Pow(0.8, math.Floor(x/2)) }, discrete: true},
	}
}

func stepAt(at float64) func(float64) float64 {
	return func(x float64) float64 {
		if x >= at {
			return 1
		}
		return 0
	}
}

func lognormalCDF(mean, cv float64) func(float64) float64 {
	s2 := math.Log(1 + cv*cv)
	return distuv.LogNormal{Mu: math.Log(mean) - s2/2, Sigma: math.Sqrt(s2)}.CDF
}

func truncatedCDF(mean, sd float64) func(float64) float64 {
	parent := distuv.Normal{Mu: mean, Sigma: sd}
	return func(x float64) float64 {
		if x < 0 {
			return 0
		}
		return (parent.CDF(x) - parent.CDF(0)) / parent.Survival(0)
	}
}

// weibullCDF finds the shape by a search of its own on gonum's moments.
func weibullCDF(mean, cv float64) func(float64) float64 {
	low, high := 0.2, 50.0
	for range 200 {
		k := (low + high) / 2
		if w := (distuv.Weibull{K: k, Lambda: 1}); w.StdDev()/w.Mean() > cv {
			low = k
		} else {
			high = k
		}
	}
	return distuv.Weibull{K: low, Lambda: mean / distuv.Weibull{K: low, Lambda: 1}.Mean()}.CDF
}
