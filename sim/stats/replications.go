package stats

import "math"

// MaxReplications is the most that the functions below look for.
const MaxReplications = 1_000_000_000

// ReplicationsForHalfWidth is how many replications are needed for a t
// interval of at most the given half-width, judged from the variance of the
// n0 >= 2 made so far: the smallest i >= n0 with
// t(i-1, 1-a/2) sqrt(S^2/i) <= halfWidth (Law, Simulation Modeling and
// Analysis, ch. 9, absolute error). ok is false when it is out of reach or
// an argument is out of range.
func ReplicationsForHalfWidth(variance float64, n0 int, halfWidth, confidence float64) (n int, ok bool) {
	if !(variance >= 0) || n0 < 2 || !(halfWidth >= 0) || !isProbability(confidence) {
		return 0, false
	}
	return smallestCount(n0, func(i int) bool {
		if variance == 0 {
			return true
		}
		t := StudentQuantile(1-(1-confidence)/2, float64(i-1))
		return t*math.Sqrt(variance/float64(i)) <= halfWidth
	})
}

// ReplicationsForRelativeError is how many replications are needed for a
// relative error of at most gamma (0 < gamma < 1) in the mean: the half-width
// may be |mean| gamma/(1+gamma), which allows for the mean being itself an
// estimate (Law, ch. 9, relative error).
func ReplicationsForRelativeError(mean, variance float64, n0 int, gamma, confidence float64) (n int, ok bool) {
	if !isProbability(gamma) {
		return 0, false
	}
	return ReplicationsForHalfWidth(variance, n0, math.Abs(mean)*gamma/(1+gamma), confidence)
}

// ReplicationsForDifference is how many pairs are needed so that a two-sided
// paired t test at the given confidence finds a true mean difference of the
// given size with at least the given power, when the paired differences are
// normal with standard deviation stdDev >= 0.
func ReplicationsForDifference(stdDev, difference, confidence, power float64) (n int, ok bool) {
	if !(stdDev >= 0) || !isFinite(difference) || difference == 0 || !isProbability(confidence) || !isProbability(power) {
		return 0, false
	}
	return smallestCount(2, func(i int) bool {
		return stdDev == 0 || PairedPower(i, math.Abs(difference)/stdDev, confidence) >= power
	})
}

// PairedPower is the probability that a two-sided t test on n >= 2 pairs at
// the given confidence rejects equal means when the mean difference is
// effect >= 0 standard deviations of the differences: the tails of the
// noncentral t distribution, integrated over the sample standard deviation.
func PairedPower(n int, effect, confidence float64) float64 {
	if n < 2 || !isProbability(confidence) {
		return math.NaN()
	}
	df := float64(n - 1)
	critical := StudentQuantile(1-(1-confidence)/2, df)
	shift := effect * math.Sqrt(float64(n))
	return chiRule(df, 64).integrate(func(s float64) float64 {
		reach := critical * s / math.Sqrt(df)
		return normalCDF(shift-reach) + normalCDF(-shift-reach)
	})
}

// smallestCount is the least i >= from with enough(i), where enough stays
// true once it is.
func smallestCount(from int, enough func(i int) bool) (n int, ok bool) {
	lo, hi := from, from
	for !enough(hi) {
		if hi >= MaxReplications {
			return 0, false
		}
		lo, hi = hi+1, min(2*hi, MaxReplications)
	}
	for lo < hi {
		mid := lo + (hi-lo)/2
		if enough(mid) {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return hi, true
}
