package decisions

import (
	"context"
	"fmt"
	"math"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// Looking for a setting ends when it is known to so many cartons/h, or after so many settings.
const (
	settingTolerance = 2
	mostTrials       = 7
)

// settingTrial is a setting that was run.
type settingTrial struct {
	setting float64
	mean    stats.Interval // of a shift, cartons
	chance  stats.Interval
	needs   float64 // mean of a shift that makes the demand, by the spread seen here
	file    *scenarios.File
	refused string // the limit that it breaks
}

// makes says that a setting makes the demand even by the lower bound of its mean, and keeps the limits of the line.
func (t settingTrial) makes() bool { return t.mean.Low >= t.needs && t.refused == "" }

// open says that the shifts seen leave it open whether a setting makes the demand.
func (t settingTrial) open() bool { return !t.makes() && t.mean.High >= t.needs && t.refused == "" }

// lack is how much the lower bound is below what is needed.
func (t settingTrial) lack() float64 { return t.needs - t.mean.Low }

// settingSearch looks for the least setting of a candidate that makes the demand. All settings meet the same luck, so that output
// rises nearly in a straight line until a station no longer follows.
type settingSearch struct {
	*sizing
	of        *Sized
	trials    []settingTrial
	least     float64 // the lowest that the limits of the line allow, in whole cartons/h; 0 for any
	most      float64
	mostWhy   string
	makes     *settingTrial // the lowest that makes it
	falls     *settingTrial // the highest below it that does not
	furthered bool          // settings between were looked at, since the highest does not make it
}

// needed finds the setting that a candidate's demand needs.
func (a *sizing) needed(own *Sized) (*NeededSetting, error) {
	s := &settingSearch{sizing: a, of: own}
	if err := s.findMost(); err != nil {
		return nil, err
	}
	s.least = math.Ceil(scenarios.Lowest(own.File))
	first := s.trialOf(own, own.File)
	s.take(first)
	for len(s.trials) < mostTrials {
		next, more := s.next()
		if !more {
			break
		}
		f, err := own.File.With(fmt.Sprintf("setting=%.0f cartons/h", next))
		if err != nil {
			return nil, err
		}
		f = f.Shiftwise()
		ran, err := a.at(own.SizeCandidate, f)
		if err != nil {
			return nil, err
		}
		s.take(s.trialOf(ran, f))
	}
	return s.result(), nil
}

// findMost says how far up to look: as far as the mechanics allow, or somewhat beyond what the slowest station can follow.
func (s *settingSearch) findMost() error {
	f := s.of.File
	c, err := s.ceilingOf(f)
	if err != nil {
		return err
	}
	if c.known {
		s.most, s.mostWhy = math.Floor(c.setting), c.why
	} else if follows := scenarios.BudgetOf(f.Line).Ceiling; !math.IsInf(follows, 1) {
		s.most, s.mostWhy = math.Floor(1.25*follows), "a quarter beyond what the slowest station can follow"
	} else {
		s.most, s.mostWhy = math.Floor(2*f.Line.Setting), "twice the candidate's own"
	}
	if s.most < s.of.Setting {
		s.most, s.mostWhy = s.of.Setting, "the candidate's own"
	}
	return nil
}

// ceiling is the highest setting that the mechanics of a line allow.
type ceiling struct {
	setting float64
	why     string
	known   bool
}

// ceilingOf finds the ceiling of a line once for all candidates that have it.
func (a *sizing) ceilingOf(f *scenarios.File) (ceiling, error) {
	if c, met := a.ceilings[f]; met {
		return c, nil
	}
	c, err := ceilingOf(a.ctx, f)
	if err == nil {
		a.ceilings[f] = c
	}
	return c, err
}

// ceilingOf finds the ceiling of a line.
func ceilingOf(ctx context.Context, f *scenarios.File) (ceiling, error) {
	return awaited(ctx, func() (c ceiling) {
		c.setting, c.why, c.known = scenarios.Ceiling(f)
		return c
	})
}

func (s *settingSearch) trialOf(ran *Sized, f *scenarios.File) settingTrial {
	number := ran.YearShifts * float64(ran.Lines)
	return settingTrial{f.Line.Setting, ran.PerShift, ran.Chance, s.spec.Demand.MeanNeeded(s.spec.Chance, ran.YearSD) / number, f, scenarios.Refusal(f)}
}

func (s *settingSearch) take(t settingTrial) {
	s.trials = append(s.trials, t)
	switch {
	case t.makes() && (s.makes == nil || t.setting < s.makes.setting):
		s.makes = &t
	case !t.makes() && (s.falls == nil || t.setting > s.falls.setting) && (s.makes == nil || t.setting < s.makes.setting):
		s.falls = &t
	}
	if s.makes != nil && s.falls != nil && s.falls.setting > s.makes.setting {
		s.falls = nil // it fell beyond the top of the curve
	}
}

// next is the setting to try, or that no more are worth it.
func (s *settingSearch) next() (float64, bool) {
	switch {
	case s.makes == nil:
		return s.above()
	case s.falls == nil:
		return s.below()
	}
	low, high := s.falls, s.makes
	if low.setting < s.least { // forbidden, and not short
		return s.least, high.setting > s.least && !s.tried(s.least)
	}
	if high.setting-low.setting <= settingTolerance {
		return 0, false
	}
	at := math.Ceil(low.setting + (high.setting-low.setting)*low.lack()/(low.lack()-high.lack()))
	if high.setting-at < settingTolerance/2 {
		if high.setting-low.setting > 0.02*high.setting { // far from straight: close in from below
			return math.Ceil((low.setting + high.setting) / 2), true
		}
		return 0, false
	}
	return max(at, low.setting+1), true
}

// above goes up in proportion, to the highest setting at last; where that does not make the demand, what lies between may.
func (s *settingSearch) above() (float64, bool) {
	last := s.trials[len(s.trials)-1]
	if !s.tried(s.most) {
		up := math.Ceil(last.setting * (last.needs + last.mean.HalfWidth()) / last.mean.Mean * 1.0005)
		if last.mean.Low > 0 && up < s.most && up > last.setting {
			return up, true
		}
		return s.most, s.most > last.setting
	}
	if s.furthered || s.most-s.of.Setting < 4*settingTolerance || s.stillRises() {
		return 0, false
	}
	s.furthered = true
	return math.Round((s.most + s.of.Setting) / 2), true
}

// stillRises says that at the highest setting the output is nearly in proportion to that at the candidate's own, so that no peak lies
// between them.
func (s *settingSearch) stillRises() bool {
	own, most := s.trials[0], s.trials[len(s.trials)-1]
	return most.setting == s.most && most.mean.Mean/own.mean.Mean > 1+0.8*(most.setting/own.setting-1)
}

// below goes down in proportion from a setting that makes the demand.
func (s *settingSearch) below() (float64, bool) {
	t := s.makes
	down := math.Ceil(t.setting*(t.needs+t.mean.HalfWidth())/t.mean.Mean) - 1
	if down >= t.setting {
		down = t.setting - settingTolerance
	}
	down = max(down, s.least)
	if down < 1 || s.tried(down) {
		return 0, false
	}
	return down, true
}

func (s *settingSearch) tried(setting float64) bool {
	for _, t := range s.trials {
		if t.setting == setting {
			return true
		}
	}
	return false
}

// result is the lowest setting that makes the demand, or else the one with the largest output.
func (s *settingSearch) result() *NeededSetting {
	n := &NeededSetting{Most: s.most, MostWhy: s.mostWhy}
	t := s.makes
	if t == nil {
		t = &s.trials[0]
		for i := range s.trials {
			if s.trials[i].mean.Mean > t.mean.Mean && s.trials[i].refused == "" {
				t = &s.trials[i]
			}
		}
		n.Open = t.open()
	}
	n.Found, n.Setting, n.Chance, n.file = s.makes != nil, t.setting, t.chance, t.file
	n.Year = scaled(t.mean, s.of.YearShifts*float64(s.of.Lines))
	n.At = stats.Interval{Mean: math.NaN(), Low: math.Inf(-1), High: math.Inf(1), N: t.mean.N, Confidence: t.mean.Confidence}
	if s.makes != nil {
		slope := s.slope()
		at := func(mean float64) float64 { return t.setting - float64((mean-t.needs)/slope) }
		n.At.Mean, n.At.Low, n.At.High = at(t.mean.Mean), at(t.mean.High), at(t.mean.Low)
	}
	return n
}

// slope is how many cartons a shift one carton/h brings at the setting found.
func (s *settingSearch) slope() float64 {
	if s.falls != nil && s.makes.mean.Mean > s.falls.mean.Mean {
		return (s.makes.mean.Mean - s.falls.mean.Mean) / (s.makes.setting - s.falls.setting)
	}
	return s.makes.mean.Mean / s.makes.setting
}
