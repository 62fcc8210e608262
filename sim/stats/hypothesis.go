package stats

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// TTest is the outcome of a two-sided t test of equal means.
type TTest struct {
	T  float64 // test statistic
	DF float64 // degrees of freedom, not necessarily whole
	P  float64 // two-sided p value; NaN when not assessed
}

// Assessed reports whether there were data enough for a p value.
func (t TTest) Assessed() bool { return !math.IsNaN(t.P) }

// Welch tests whether two independent samples of possibly unequal variance
// have equal means: t = (mean a - mean b)/sqrt(va + vb) with v = s^2/n, and
// df = (va + vb)^2/(va^2/(na-1) + vb^2/(nb-1)) (Welch 1947). Each sample
// needs two observations. Without any variance, P is 1 when the means are
// equal and 0 when not.
func Welch(a, b []float64) TTest {
	ma, mb := momentsOf(a), momentsOf(b)
	va := ma.Variance() / float64(ma.N())
	vb := mb.Variance() / float64(mb.N())
	df := float64(ma.N() + mb.N() - 2)
	if va+vb > 0 {
		df = (va + vb) * (va + vb) / (va*va/float64(ma.N()-1) + vb*vb/float64(mb.N()-1))
	}
	return tTest(ma.Mean()-mb.Mean(), math.Sqrt(va+vb), df)
}

// PairedT tests whether a[i] - b[i] has mean zero, for two systems run on
// common random numbers. It needs two pairs, and panics when the lengths
// differ.
func PairedT(a, b []float64) TTest {
	m := differences(a, b)
	return tTest(m.Mean(), m.StdDev()/math.Sqrt(float64(m.N())), float64(m.N()-1))
}

// tTest is the test of a difference with the given standard error.
func tTest(difference, stdErr, df float64) TTest {
	switch {
	case math.IsNaN(difference) || math.IsNaN(stdErr):
		return TTest{T: math.NaN(), DF: math.NaN(), P: math.NaN()}
	case stdErr == 0 && difference == 0:
		return TTest{T: 0, DF: df, P: 1}
	case stdErr == 0:
		return TTest{T: math.Copysign(math.Inf(1), difference), DF: df, P: 0}
	}
	t := difference / stdErr
	return TTest{T: t, DF: df, P: 2 * distuv.StudentsT{Mu: 0, Sigma: 1, Nu: df}.CDF(-math.Abs(t))}
}
