package lifedata

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Trend says whether events come faster or slower as time goes on.
type Trend struct {
	// Laplace is the statistic of Laplace's test, normal without a trend: above 0 events crowd to the end, a machine that gets worse.
	Laplace float64
	// P is its two-sided p-value.
	P float64
	// Beta is the exponent of the power law process (Crow 1974): above 1 events come faster. Military handbook test: 2 n / Beta is
	// chi-square with 2 n degrees of freedom without a trend; PowerP is its two-sided p-value.
	Beta, PowerP float64
}

// FindTrend tests the moments of events, ascending, on a clock that runs from 0 to end. With atEvent the clock was stopped by the last
// event (failure truncation), which then counts as the end (Cox and Lewis 1966, ch. 3; from memory). Less than four events give no
// verdict: NaN.
func FindTrend(moments []float64, end float64, atEvent bool) Trend {
	if atEvent && len(moments) > 0 {
		end = moments[len(moments)-1]
		moments = moments[:len(moments)-1]
	}
	n := float64(len(moments))
	if n < 3 || !(end > 0) {
		return Trend{math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	}
	sum, logs := 0.0, 0.0
	for _, at := range moments {
		sum += at
		logs += math.Log(end / at)
	}
	t := Trend{Laplace: (sum/n - end/2) / (end * math.Sqrt(1/(12*n)))}
	t.P = 2 * distuv.UnitNormal.Survival(math.Abs(t.Laplace))
	t.Beta = n / logs
	chi := distuv.ChiSquared{K: 2 * n}
	t.PowerP = 2 * math.Min(chi.CDF(2*logs), chi.Survival(2*logs))
	return t
}
