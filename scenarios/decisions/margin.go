package decisions

import (
	"cmp"
	"context"
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// MarginSpec says what must hold, and which parameters may move.
type MarginSpec struct {
	// Paths of the parameters; each is moved alone.
	Paths []string
	// Keep is the share of today's good output that must be kept, such as 0.98; 0 where Target is given.
	Keep float64
	// Target is the wanted number of good cartons per shift, made on average, or with the probability Chance where that is set.
	Target, Chance float64
	// Replications is the number of shifts of each line; 0 takes 100.
	Replications int
	// Confidence of the intervals; 0 takes 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many parameters are done.
	Progress func(done, total int)
}

// Margins says how far parameters may go before the output falls below what must be kept.
type Margins struct {
	Title        string
	Seed         uint64
	Replications int
	Confidence   float64
	// Keep, Target and Chance are as asked for.
	Keep, Target, Chance float64
	// Today is the good output per shift of the line as it is, and Made its chance of the target, where one was given.
	Today, Made stats.Interval
	// Met says that the line as it is keeps the threshold.
	Met bool
	// Fixed says that nothing in the line is left to chance.
	Fixed bool
	// List is the tightest first, those that never limit last.
	List     []Margin
	Warnings []scenarios.Warning
}

// Margin is how far one parameter may go.
type Margin struct {
	Path  string
	Today Value
	// Found says that the threshold is crossed at Limit. Without it, Best is what the output comes to at Reach, the best place
	// found if the threshold is not met today, the worst if it is.
	Found bool
	Limit Value
	// At is Limit as a number in the unit of Today, with the interval that the shifts leave open. A bound is infinite where
	// the threshold was not surely crossed as far as the parameter can go.
	At stats.Interval
	// Change is At against today, as a share of today's value; not a number where that is 0.
	Change float64
	Grows  bool // in the direction of the limit
	// Edge says that Reach is as far as the line file can be read.
	Edge  bool
	Reach Value
	Best  stats.Interval // in good cartons per shift
	// BestMade is the chance of the target there.
	BestMade stats.Interval
}

// Slack is how far the parameter may go, as a share of its value today; infinite where it never limits.
func (m *Margin) Slack() float64 {
	if !m.Found {
		return math.Inf(1)
	}
	return math.Abs(m.Change)
}

// FindMargins finds the threshold of every parameter by bisection on common random numbers: the same shifts at every value, so
// that what is found is a root of a curve and not of noise. Its interval holds all values at which the threshold lies within the
// interval of the output.
func FindMargins(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, seed uint64, spec MarginSpec) (*Margins, error) {
	spec = spec.withDefaults()
	if err := spec.check(f); err != nil {
		return nil, err
	}
	p := &probe{ctx: ctx, lab: lab, file: f, spec: spec}
	today, err := p.run(f)
	if err != nil {
		return nil, err
	}
	p.today = today.good
	answer := &Margins{
		Title: f.Line.Title, Seed: seed, Replications: spec.Replications, Confidence: spec.Confidence, Keep: spec.Keep, Target: spec.Target,
		Chance: spec.Chance, Today: stats.MeanInterval(today.good, spec.Confidence), Made: p.made(today),
		Met: p.above(today).Mean >= 0, Fixed: today.fixed, Warnings: f.Warnings,
	}
	for i, path := range spec.Paths {
		m, err := p.margin(path, answer.Met)
		if err != nil {
			return nil, err
		}
		answer.List = append(answer.List, *m)
		if spec.Progress != nil {
			spec.Progress(i+1, len(spec.Paths))
		}
	}
	slices.SortStableFunc(answer.List, func(a, b Margin) int { return cmp.Compare(a.Slack(), b.Slack()) })
	return answer, nil
}

func (s MarginSpec) withDefaults() MarginSpec {
	if s.Replications <= 0 {
		s.Replications = 100
	}
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

func (s MarginSpec) check(f *scenarios.File) error {
	if err := needShifts(f); err != nil {
		return err
	}
	if len(s.Paths) == 0 {
		return mistake("give one, such as --vary sealer.dwell", "no parameter to vary")
	}
	seen := map[string]bool{}
	for _, path := range s.Paths {
		if seen[path] {
			return mistake("give each once", "%s is varied twice", path)
		}
		seen[path] = true
		if _, err := valueAt(f, path); err != nil {
			return err
		}
	}
	return nil
}

// probe runs the shifts of lines with one parameter changed, and compares them with what must hold.
type probe struct {
	ctx   context.Context
	lab   *scenarios.Lab
	file  *scenarios.File
	spec  MarginSpec
	today []float64
}

// output is the good cartons of each shift, and whether chance has any part in them.
type output struct {
	good  []float64
	fixed bool
}

// run is the output of a line. Where nothing is left to chance, one shift stands for all.
func (p *probe) run(f *scenarios.File) (output, error) {
	out := output{fixed: isFixed(f.Line)}
	n := p.spec.Replications
	if out.fixed {
		n = 1
	}
	shifts, err := extend(p.ctx, p.lab, f, n)
	if err != nil {
		return out, err
	}
	out.good = slices.Repeat(shifts.Good()[:n], p.spec.Replications/n)
	return out, p.lab.Release(f)
}

// made is the chance of the target; the zero interval where there is none.
func (p *probe) made(out output) stats.Interval {
	if p.spec.Target == 0 {
		return stats.Interval{}
	}
	made := 0
	for _, g := range out.good {
		made += int(madeIt(g, p.spec.Target))
	}
	if out.fixed {
		share := float64(made) / float64(len(out.good))
		return stats.Interval{Mean: share, Low: share, High: share, N: len(out.good), Confidence: p.spec.Confidence}
	}
	return stats.Wilson(made, len(out.good), p.spec.Confidence)
}

// above is how far the output lies above the threshold.
func (p *probe) above(out output) stats.Interval {
	switch {
	case p.spec.Chance > 0:
		iv := p.made(out)
		iv.Mean, iv.Low, iv.High = iv.Mean-p.spec.Chance, iv.Low-p.spec.Chance, iv.High-p.spec.Chance
		return iv
	case p.spec.Target > 0:
		return p.difference(out.good, func(int) float64 { return p.spec.Target })
	}
	return p.difference(out.good, func(i int) float64 { return p.spec.Keep * p.today[i] })
}

// difference is the interval of the output less a threshold that goes with each shift.
func (p *probe) difference(good []float64, threshold func(shift int) float64) stats.Interval {
	over := make([]float64, len(good))
	for i, g := range good {
		over[i] = g - threshold(i)
	}
	return stats.MeanInterval(over, p.spec.Confidence)
}
