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
	// Found says that the threshold is crossed: it is kept at Limit, and no longer somewhat further, as the interval says. Where it is not met today, Limit is the first value that keeps it. Without Found, Best is what the output comes to
	// at Reach, the best place found if the threshold is not met today, the worst if it is.
	Found bool
	Limit Value
	// Exact says that nothing is left to chance about the limit: a Step further the threshold is no longer kept.
	Exact bool
	// Step is the last digit of Limit, in the unit of Today: 1 for what is counted in whole numbers.
	Step float64
	// At is Limit as a number in the unit of Today, with the interval that the shifts leave open. A bound is infinite where
	// the threshold was not surely crossed as far as the parameter can go.
	At stats.Interval
	// Change is At against today, as a share of today's value; not a number where that is 0.
	Change float64
	Grows  bool // in the direction of the limit
	// Lowest and Highest are the ends of what was tried, and Tried how many values.
	Lowest, Highest Value
	Tried           int
	// Edge says that Reach is as far as it can go, and why. Refused is the limit of the line that is broken beyond.
	Edge    Edge
	Refused string
	Reach   Value
	Best    stats.Interval // in good cartons per shift
	// Surely says that what was tried lies on that side of the threshold by more than chance explains.
	Surely bool
	// BestMade is the chance of the target there.
	BestMade stats.Interval
}

// Edge says what ends a search.
type Edge int

// What ends a search that does not cross the threshold.
const (
	OpenEdge  Edge = iota // nothing: what lies further was not tried
	FileEdge              // the file can't be read beyond
	LimitEdge             // beyond, the line breaks a limit that it keeps today
)

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
	p.base = today.good
	answer := &Margins{
		Title: f.Line.Title, Seed: seed, Replications: spec.Replications, Confidence: spec.Confidence, Keep: spec.Keep, Target: spec.Target,
		Chance: spec.Chance, Today: stats.MeanInterval(today.good, spec.Confidence), Made: p.made(today),
		Met: p.above(today).Mean >= 0, Fixed: today.fixed, Warnings: append(scenarios.RefusalWarning(f), f.Cautions()...),
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
