package decisions

import (
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// rangeShifts is how many shifts are run at the ends of ranges, at the most.
const rangeShifts = 30

// ranges looks at the recommended setting at the ends of the file's ranges: is it allowed there, does another setting make more by more
// than the zone, and is the target still made, or not made. An end may move the highest setting, so that each has settings of its own to
// set it against.
func (p *pacing) ranges(a *Pace) error {
	ends, ranged := endsOf(p.inputs, "setting")
	a.Ranges = Ranges{Inputs: ranged, Replications: min(p.spec.Replications, rangeShifts)}
	for _, e := range ends {
		o, err := p.upset(a, e, 1-(1-p.spec.Confidence)/float64(len(ends)))
		if err != nil {
			return err
		}
		if o != nil {
			a.Overturns = append(a.Overturns, *o)
		}
		p.tell()
	}
	return nil
}

// upset is how an end overturns the recommendation; nil where it does not.
func (p *pacing) upset(a *Pace, e end, confidence float64) (*Overturn, error) {
	setting := a.Rows[a.Recommended].Setting
	there, err := p.file.With(e.input.Path + "=" + e.value)
	if err == nil {
		there, err = atSetting(there, setting)
	}
	if err != nil { // what is right alone may be wrong beside the rest
		o := e.overturn(Forbidden)
		o.Why = err.Error()
		return o, nil
	}
	if refused := scenarios.Refusal(there); refused != "" {
		o := e.overturn(Forbidden)
		o.Why = refused
		return o, nil
	}
	own, err := p.goodAt(a, there)
	if err != nil {
		return nil, err
	}
	others, err := p.rivals(a, there)
	if err != nil {
		return nil, err
	}
	highest, most := own, e.overturn(Outdone)
	for _, f := range others {
		good, err := p.goodAt(a, f)
		if err != nil {
			return nil, err
		}
		if average(good) > average(highest) {
			level := 1 - (1-confidence)/float64(len(others))
			highest, most.Setting, most.Gain = good, f.Line.Setting, stats.PairedInterval(good, own, level)
		}
	}
	if most.Setting > 0 && most.Gain.Low > a.Zone*average(highest) {
		return most, nil
	}
	return p.upsetTarget(a, e, there, own, highest, confidence), nil
}

// upsetTarget says that the target is made no longer, or now.
func (p *pacing) upsetTarget(a *Pace, e end, there *scenarios.File, own, highest []float64, confidence float64) *Overturn {
	target := a.Target
	if target == p.file.Target {
		target = there.Target
	}
	switch {
	case target == 0:
	case a.Rows[a.Recommended].Good.Low >= a.Target && stats.MeanInterval(own, confidence).High < target:
		return e.overturn(Fails)
	case a.Makes < 0 && !a.MayMake && stats.MeanInterval(highest, confidence).Low >= target:
		return e.overturn(Reaches)
	}
	return nil
}

// goodAt is the good cartons, shift by shift, of a line at an end.
func (p *pacing) goodAt(a *Pace, f *scenarios.File) ([]float64, error) {
	shifts, err := extend(p.ctx, p.lab, f, a.Ranges.Replications)
	if err != nil {
		return nil, err
	}
	good := slices.Clone(shifts.Good()[:a.Ranges.Replications])
	return good, p.lab.Release(f)
}

// rivals are the lines at an end at the other settings that may do better there, of those that it may be run at: the best of the answer and
// those beside the recommended one, today's, and the highest that the line can follow and that its mechanics allow there.
func (p *pacing) rivals(a *Pace, there *scenarios.File) ([]*scenarios.File, error) {
	own := there.Line.Setting
	highest := &Pace{Today: own}
	if _, err := highest.settings(p.ctx, there, PaceSpec{List: []float64{own}}); err != nil {
		return nil, err
	}
	settings := []float64{a.Rows[a.Best].Setting, a.Today, math.Floor(highest.Follows), math.Floor(highest.Mechanics), math.Round(0.95 * own)}
	for _, beside := range []int{a.Recommended - 1, a.Recommended + 1} {
		if beside >= 0 && beside < len(a.Rows) {
			settings = append(settings, a.Rows[beside].Setting)
		}
	}
	slices.Sort(settings)
	var list []*scenarios.File
	for _, setting := range slices.Compact(settings) {
		if setting == own || !p.asked(setting) {
			continue
		}
		f, err := atSetting(there, setting)
		if err != nil {
			return nil, err
		}
		if scenarios.Refusal(f) == "" {
			list = append(list, f)
		}
	}
	return list, nil
}

// asked says that a setting is one of those that are looked for.
func (p *pacing) asked(setting float64) bool {
	switch s := p.spec; {
	case s.List != nil:
		return slices.Contains(s.List, setting)
	case s.To > 0 && setting > s.To:
		return false
	default:
		return setting >= 1 && setting >= s.From && !math.IsInf(setting, 1)
	}
}
