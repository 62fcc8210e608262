package decisions

import (
	"fmt"
	"math"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// Elasticity is the percent of good output for one percent of the speed of something: a station with all its times, the pace of
// the setting, a conveyor, a buffer's transit, the crew's reaction. It is a bottleneck's true share: the sum over all is that of
// the shift's length (Kuo, Lim & Meerkov 1996 define a bottleneck by such sensitivities). It is told by one-sided differences on
// common random numbers, since a line stands at a kink wherever its setting is well chosen.
type Elasticity struct {
	Name string
	// Ours says that the name is our own words, and not one out of the file.
	Ours bool
	Sides
	// Holder is the station, the setting or the master; nobody where the active-period method has no share for it.
	Holder Holder
	// PeriodShare is the active-period share of the holder.
	PeriodShare stats.Interval
}

// elasticities runs the line with each speed a step up and a step down.
func (e *explaining) elasticities(out *Explanation, speeds []speed) error {
	shared := map[Holder]bool{} // a share is shown once
	for i, s := range speeds {
		sides, err := e.sides(fmt.Sprintf("speed %d", i), s.scale)
		if err != nil {
			return err
		}
		row := Elasticity{Name: s.name, Ours: s.ours, Sides: sides}
		if !s.holder.Nobody() && !shared[s.holder] {
			shared[s.holder] = true
			row.Holder, row.PeriodShare = s.holder, s.holder.shareOf(out.Base)
		}
		out.Elasticities = append(out.Elasticities, row)
		if i == 0 {
			out.Sum = sides
		} else {
			out.Sum = e.plus(out.Sum, sides)
		}
	}
	// A longer shift is what a faster line is: scale it the other way round.
	var err error
	if out.Shift, err = e.sides("shift", func(l *stations.Line, k float64) { scaleShift(l, 1/k) }); err != nil {
		return err
	}
	counted := float64(len(speeds) + 1)
	out.Apart = e.apart(out.Shift.Faster.Mean-out.Sum.Faster.Mean, differences(out.Shift.faster, out.Sum.faster), counted) ||
		e.apart(out.Shift.Slower.Mean-out.Sum.Slower.Mean, differences(out.Shift.slower, out.Sum.slower), counted)
	out.judge()
	return nil
}

// sides runs the line with something made a step faster, and a step slower. The tag tells it from all else.
func (e *explaining) sides(tag string, scale func(*stations.Line, float64)) (Sides, error) {
	k := 1 + e.spec.Step
	faster, err := e.good(fmt.Sprintf("%s %g times faster", tag, k), func(l *stations.Line) { scale(l, 1/k) })
	if err != nil {
		return Sides{}, err
	}
	slower, err := e.good(fmt.Sprintf("%s %g times slower", tag, k), func(l *stations.Line) { scale(l, k) })
	if err != nil {
		return Sides{}, err
	}
	return e.sidesOf(faster, slower), nil
}

// judge says who limits the line by either measure, and whether they agree.
func (out *Explanation) judge() {
	var periods, speeds *Elasticity
	for i := range out.Elasticities {
		row := &out.Elasticities[i]
		if !row.Holder.Nobody() && row.PeriodShare.Mean > 0 && (periods == nil || row.PeriodShare.Mean > periods.PeriodShare.Mean) {
			periods = row
		}
		if row.Faster.Assessed() && row.Faster.Mean > 0 && (speeds == nil || row.Faster.Mean > speeds.Faster.Mean) {
			speeds = row
		}
	}
	out.ByPeriods = periods
	if speeds != nil && speeds.Faster.Low > 0 {
		out.BySpeed = speeds
	}
	if periods == nil || speeds == nil || periods == speeds || math.IsNaN(periods.Faster.Mean) {
		return
	}
	out.Ahead = aroundResiduals(speeds.Faster.Mean-periods.Faster.Mean, differences(speeds.faster, periods.faster), out.Confidence)
	out.Agreement = Undecided
	if out.Ahead.Low > 0 {
		out.Agreement = Disagree
	}
}
