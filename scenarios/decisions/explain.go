package decisions

import (
	"context"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// ExplainSpec says how an explanation is made.
type ExplainSpec struct {
	// Replications is how many shifts of each line are run, at least 2; 0 takes up to 50, fewer of a slow line.
	Replications int
	// Step is how much faster, and slower, something is made to find its elasticity; 0 takes 1 %.
	Step float64
	// Confidence of the intervals; 0 means 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// Explanation says what limits a line, by what would change if something were otherwise: the same shifts, in pairs.
type Explanation struct {
	Title        string
	Seed         uint64
	Replications int
	Confidence   float64
	Step         float64
	// Base is the forecast that all else is held against.
	Base *scenarios.Forecast
	// Worths are the loss causes, by what their absence would bring, the largest first and planned stops last.
	Worths []Worth
	// Together is what the absence of all of them would bring, and Interaction what of it no single cause brings.
	Together, Interaction stats.Interval
	// Elasticities are in the order of the line, the setting first.
	Elasticities []Elasticity
	// Sum of the elasticities, and Shift: that of output to the length of the shift and all that is planned in it. When all goes
	// one percent faster, that is as if the shift were one percent longer, so the two agree where the line is at no kink; in a long
	// run both are 1.
	Sum, Shift Sides
	// Apart says that they do not agree: limits meet, and must be made faster together.
	Apart bool
	// ByPeriods and BySpeed are which of the elasticities limits the line by the active-period share, and which brings most by being
	// faster; nil where none shows.
	ByPeriods, BySpeed *Elasticity
	// Agreement compares them.
	Agreement Agreement
	// Ahead is what BySpeed brings by being faster less what ByPeriods does, where they differ.
	Ahead    stats.Interval
	Warnings []scenarios.Warning
}

// Agreement says whether two ways to name the bottleneck agree.
type Agreement int

// The ways in which they may agree.
const (
	Agree     Agreement = iota
	Undecided           // they differ, but what the two bring is not told apart
	Disagree            // they differ, and what they bring too
)

// explaining is an explanation under way.
type explaining struct {
	ctx         context.Context
	lab         *scenarios.Lab
	file        *scenarios.File
	spec        ExplainSpec
	base        []float64
	done, total int
}

// Explain makes the same shifts of the line without each cause of loss in turn, and with each thing that takes time a little
// faster and a little slower.
func Explain(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, seed uint64, spec ExplainSpec) (*Explanation, error) {
	f = f.Shiftwise()
	spec = spec.withDefaults(f)
	e := &explaining{ctx: ctx, lab: lab, file: f, spec: spec}
	speeds := speedsOf(f.Line)
	e.total = 4 + 2*len(speeds)
	unchanged := func(*stations.Line) {}
	var err error
	if e.base, err = e.good("unchanged", unchanged); err != nil {
		return nil, err
	}
	shifts, err := lab.Variant(f, "unchanged", unchanged)
	if err != nil {
		return nil, err
	}
	base := shifts.Forecast()
	out := &Explanation{Title: f.Line.Title, Seed: seed, Replications: spec.Replications, Confidence: spec.Confidence, Step: spec.Step,
		Base: base, Warnings: f.Cautions()}
	if err := e.worths(out, removalsOf(f.Line, base)); err != nil {
		return nil, err
	}
	return out, e.elasticities(out, speeds)
}

func (s ExplainSpec) withDefaults(f *scenarios.File) ExplainSpec {
	if s.Replications <= 0 {
		s.Replications = min(scenarios.DefaultReplications(f.Line), 50)
	}
	s.Replications = max(s.Replications, 2)
	if s.Step == 0 {
		s.Step = 0.01
	}
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

// good runs the line with a change, and returns the good cartons of each shift.
func (e *explaining) good(tag string, change func(*stations.Line)) ([]float64, error) {
	shifts, err := e.lab.Variant(e.file, tag, change)
	if err != nil {
		return nil, err
	}
	interrupted, err := shifts.Extend(e.ctx, e.spec.Replications)
	switch {
	case err != nil:
		return nil, err
	case interrupted:
		return nil, ErrInterrupted
	}
	e.done++
	if e.spec.Progress != nil {
		e.spec.Progress(e.done*e.spec.Replications, max(e.done, e.total)*e.spec.Replications)
	}
	return shifts.Good(), nil
}

// average is the mean of a series that is not empty.
func average(x []float64) float64 {
	var m stats.Moments
	for _, v := range x {
		m.Add(v)
	}
	return m.Mean()
}

// aroundResiduals is the interval of an estimate whose error is the mean of residuals about 0 (the delta method).
func aroundResiduals(estimate float64, residuals []float64, conf float64) stats.Interval {
	iv := stats.MeanInterval(residuals, conf)
	half := iv.HalfWidth()
	return stats.Interval{Mean: estimate, Low: estimate - half, High: estimate + half, N: len(residuals), Confidence: conf}
}
