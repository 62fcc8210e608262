package acceptance

import (
	"math"
	"time"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"

	"dwellcast/sim/stats"
)

// ShownAvailability is the interval of the availability after so many stops, each cleared, with so much time up and down in all, both
// exponential: the ratio of two chi-squares (Trivedi 2001, example 10.27). Without a stop nothing is known: it is not assessed.
func ShownAvailability(stops int, up, down time.Duration, confidence float64) stats.Interval {
	iv := stats.Interval{Mean: math.NaN(), Low: math.Inf(-1), High: math.Inf(1), N: stops, Confidence: confidence}
	if stops < 1 || up <= 0 || down <= 0 {
		return iv
	}
	a := (1 - confidence) / 2
	ratio := down.Seconds() / up.Seconds()
	iv.Mean = 1 / (1 + ratio)
	iv.Low, iv.High = 1/(1+ratio*fQuantile(1-a, 2*stops)), 1/(1+ratio*fQuantile(a, 2*stops))
	return iv
}

// LeastAvailability is the lower bound of the availability, one-sided, after as much as in ShownAvailability.
func LeastAvailability(stops int, up, down time.Duration, confidence float64) float64 {
	return ShownAvailability(stops, up, down, 2*confidence-1).Low
}

// fQuantile is the quantile of the F distribution with as many degrees of freedom above as below.
func fQuantile(p float64, degrees int) float64 {
	x := mathext.InvRegIncBeta(float64(degrees)/2, float64(degrees)/2, p)
	return x / (1 - x)
}

// LeastBetweenStops is the lower bound, one-sided, of the mean time between stops after a run of this much time up with so many stops,
// which ended by the clock: twice the time over the chi-square quantile with 2 stops + 2 degrees of freedom (Epstein 1960; from memory).
func LeastBetweenStops(up time.Duration, stops int, confidence float64) time.Duration {
	chi := distuv.ChiSquared{K: float64(2*stops + 2)}.Quantile(confidence)
	return time.Duration(2 * float64(up) / chi)
}

// WithoutStop is how long a run without any stop must last to show a mean time between stops with this confidence.
func WithoutStop(between time.Duration, confidence float64) time.Duration {
	return time.Duration(-math.Log(1-confidence) * float64(between))
}

// ShownShare is the interval of a share of which so many of n were seen, exact in that its chance of holding the share is at least the
// confidence (Clopper and Pearson 1934). n is 1 or more.
func ShownShare(seen, n int, confidence float64) stats.Interval {
	a := (1 - confidence) / 2
	iv := stats.Interval{Mean: float64(seen) / float64(n), Low: 0, High: 1, N: n, Confidence: confidence}
	if seen > 0 {
		iv.Low = mathext.InvRegIncBeta(float64(seen), float64(n-seen)+1, a)
	}
	if seen < n {
		iv.High = mathext.InvRegIncBeta(float64(seen)+1, float64(n-seen), 1-a)
	}
	return iv
}
