package stats

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// BatchSeries are the means of the given number of successive batches of
// equal size that xs holds. Observations left over at the end are not used.
// It is empty when there are fewer observations than batches.
func BatchSeries(xs []float64, batches int) []float64 {
	if batches < 1 || len(xs) < batches {
		return nil
	}
	return wholeBatchMeans(xs, len(xs)/batches)[:batches]
}

// BatchMeans is the interval for the steady-state mean by nonoverlapping
// batch means: the Student t interval on the means of the given number
// (>= 2) of batches, N being that number. It presumes that the warm-up has
// been dropped and that the batch means are nearly independent; check with
// Independence on BatchSeries.
func BatchMeans(xs []float64, batches int, confidence float64) Interval {
	return MeanInterval(BatchSeries(xs, batches), confidence)
}

// SerialCheck is a check of successive values, such as batch means, for
// dependence.
type SerialCheck struct {
	Lag1       float64 // lag-1 autocorrelation estimate, -1 to 1
	VonNeumann float64 // mean square successive difference over variance; about 2 if independent
	Z          float64 // standard normal statistic, large when positively correlated
	P          float64 // one-sided p value against positive correlation; NaN when not assessed
}

// Assessed reports whether there were at least eight values.
func (c SerialCheck) Assessed() bool { return !math.IsNaN(c.P) }

// Independence checks values by von Neumann's (1941) ratio of the mean
// square successive difference to the variance. With b values and
// C = 1 - sum of squared successive differences/(2 sum of squared
// deviations), Z = C/sqrt((b-2)/(b^2-1)), which is standard normal for
// independent normal values from about eight on (as used for batch means by
// Fishman 1978). Fewer values give no verdict; values that are all equal
// give P = 1, there being nothing to correlate.
func Independence(xs []float64) SerialCheck {
	const fewest = 8
	m := momentsOf(xs)
	if m.n < fewest {
		nan := math.NaN()
		return SerialCheck{Lag1: nan, VonNeumann: nan, Z: nan, P: nan}
	}
	if m.m2 == 0 {
		return SerialCheck{Lag1: 0, VonNeumann: 2, Z: 0, P: 1}
	}
	lagged, squares := 0.0, 0.0
	for i := 1; i < len(xs); i++ {
		lagged += float64((xs[i-1] - m.mean) * (xs[i] - m.mean))
		squares += float64((xs[i] - xs[i-1]) * (xs[i] - xs[i-1]))
	}
	b := float64(m.n)
	z := (1 - squares/(2*m.m2)) / math.Sqrt((b-2)/(b*b-1))
	return SerialCheck{
		Lag1:       lagged / m.m2,
		VonNeumann: squares / m.m2 * b / (b - 1),
		Z:          z,
		P:          distuv.UnitNormal.Survival(z),
	}
}
