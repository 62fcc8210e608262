package decisions

import (
	"context"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// probe runs the shifts of lines with one parameter changed, and compares them with what must hold.
type probe struct {
	ctx  context.Context
	lab  *scenarios.Lab
	file *scenarios.File
	spec MarginSpec
	base []float64 // good cartons of each shift of the line as it is
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
	return p.difference(out.good, func(i int) float64 { return p.spec.Keep * p.base[i] })
}

// difference is the interval of the output less a threshold that goes with each shift.
func (p *probe) difference(good []float64, threshold func(shift int) float64) stats.Interval {
	over := make([]float64, len(good))
	for i, g := range good {
		over[i] = g - threshold(i)
	}
	return stats.MeanInterval(over, p.spec.Confidence)
}
