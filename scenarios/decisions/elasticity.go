package decisions

import (
	"fmt"
	"math"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// Elasticity is the percent of good output for one percent of the speed of something: a station with all its times, the pace of
// the setting, a conveyor, a buffer's transit, the crew's reaction. It is a bottleneck's true share: the sum over all is that of
// the shift's length (Kuo, Lim & Meerkov 1996 define a bottleneck by such sensitivities).
type Elasticity struct {
	Name string
	// Of is the elasticity, by central differences on common random numbers.
	Of stats.Interval
	// Holder is the station, the setting or the master; empty where the active-period method has no share for it.
	Holder string
	// PeriodShare is the active-period share of the holder.
	PeriodShare stats.Interval

	residuals []float64
}

// elasticities runs the line with each speed a step up and a step down.
func (e *explaining) elasticities(out *Explanation, speeds []speed) error {
	var sum float64
	total := make([]float64, len(e.base))
	shared := map[string]bool{} // a share is shown once
	for _, s := range speeds {
		x, residuals, err := e.elasticity(s.name, s.scale)
		if err != nil {
			return err
		}
		row := Elasticity{Name: s.name, Of: aroundResiduals(x, residuals, e.spec.Confidence), residuals: residuals}
		if s.holder != "" && !shared[s.holder] {
			shared[s.holder] = true
			row.Holder, row.PeriodShare = s.holder, shareOf(out, s.holder)
		}
		out.Elasticities = append(out.Elasticities, row)
		sum += x
		for i, r := range residuals {
			total[i] += r
		}
	}
	out.Sum = aroundResiduals(sum, total, e.spec.Confidence)
	// A longer shift is what a faster line is: scale it the other way round.
	x, residuals, err := e.elasticity("shift", func(l *stations.Line, k float64) { scaleShift(l, 1/k) })
	if err != nil {
		return err
	}
	out.Shift = aroundResiduals(x, residuals, e.spec.Confidence)
	out.judge()
	return nil
}

func (e *explaining) elasticity(name string, scale func(*stations.Line, float64)) (float64, []float64, error) {
	k := 1 + e.spec.Step
	faster, err := e.good(fmt.Sprintf("%s %g times faster", name, k), func(l *stations.Line) { scale(l, 1/k) })
	if err != nil {
		return 0, nil, err
	}
	slower, err := e.good(fmt.Sprintf("%s %g times slower", name, k), func(l *stations.Line) { scale(l, k) })
	if err != nil {
		return 0, nil, err
	}
	x, residuals := logRatio(faster, slower, e.spec.Step)
	return x, residuals, nil
}

// shareOf is the active-period share of a station, the setting or the master.
func shareOf(out *Explanation, holder string) stats.Interval {
	switch holder {
	case SettingHolds:
		return out.Base.SettingShare
	case MasterHolds:
		return out.Base.MasterShare
	}
	for _, st := range out.Base.Stations {
		if st.Name == holder {
			return st.BottleneckShare
		}
	}
	return stats.MeanInterval(nil, out.Confidence)
}

// judge says who limits the line by either measure, and whether they agree.
func (out *Explanation) judge() {
	var periods, speeds *Elasticity
	for i := range out.Elasticities {
		row := &out.Elasticities[i]
		if row.Holder != "" && row.PeriodShare.Mean > 0 && (periods == nil || row.PeriodShare.Mean > periods.PeriodShare.Mean) {
			periods = row
		}
		if row.Of.Assessed() && row.Of.Mean > 0 && (speeds == nil || row.Of.Mean > speeds.Of.Mean) {
			speeds = row
		}
	}
	if periods != nil {
		out.ByPeriods = periods.Name
	}
	if speeds != nil && speeds.Of.Low > 0 {
		out.BySpeed = speeds.Name
	}
	if periods == nil || speeds == nil || periods == speeds || math.IsNaN(periods.Of.Mean) {
		return
	}
	out.Ahead = aroundResiduals(speeds.Of.Mean-periods.Of.Mean, differences(speeds.residuals, periods.residuals), out.Confidence)
	out.Agreement = Undecided
	if out.Ahead.Low > 0 {
		out.Agreement = Disagree
	}
}
