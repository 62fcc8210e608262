package decisions

import (
	"math"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// trial is the output at one rung of a parameter's ladder.
type trial struct {
	output
	rung  int64
	value Value
	above stats.Interval // the threshold
}

// search looks for the threshold along one parameter.
type search struct {
	*probe
	ladder
	path  string
	met   bool
	tried map[int64]*trial
}

// margin finds how far one parameter may go, in whichever direction the threshold is nearer.
func (p *probe) margin(path string, met bool) (*Margin, error) {
	today, err := valueAt(p.file, path)
	if err != nil {
		return nil, err
	}
	s := &search{probe: p, ladder: ladderOf(p.file, path, today), path: path, met: met, tried: map[int64]*trial{}}
	up, err := s.side(true)
	if err != nil {
		return nil, err
	}
	down, err := s.side(false)
	if err != nil {
		return nil, err
	}
	m := down
	switch {
	case up.Found && (!down.Found || up.Slack() <= down.Slack()), !up.Found && !down.Found && met == (up.Best.Mean <= down.Best.Mean):
		m = up
	}
	return m, s.span(m)
}

// span notes what was tried.
func (s *search) span(m *Margin) error {
	low, high := s.rung(s.today.Number()), s.rung(s.today.Number())
	for rung := range s.tried {
		low, high = min(low, rung), max(high, rung)
	}
	var err error
	if m.Lowest, err = s.ladder.value(low); err != nil {
		return err
	}
	m.Highest, err = s.ladder.value(high)
	m.Tried = len(s.tried)
	return err
}

// side goes outward in one direction until the threshold is crossed or the parameter can go no further.
func (s *search) side(up bool) (*Margin, error) {
	m := &Margin{Path: s.path, Today: s.today, Reach: s.today, Step: s.step()}
	start, err := s.try(s.rung(s.today.Number()))
	if err != nil {
		return nil, err
	}
	here := start
	s.best(m, here)
	rungs := s.outwards(up)
	for i := 0; i < len(rungs) && m.Edge == OpenEdge; i++ {
		if m.Edge, m.Refused = s.refuses(rungs[i]); m.Edge != OpenEdge {
			rungs = append(rungs[:i:i], s.edge(here.rung, rungs[i]))
		}
		next, err := s.try(rungs[i])
		if err != nil {
			return nil, err
		}
		if s.met != (next.above.Mean >= 0) {
			m.Edge, m.Refused = OpenEdge, ""
			return m, s.root(m, start, here, next, rungs[i:])
		}
		if s.met == (average(next.good) <= m.Best.Mean) {
			s.best(m, next)
		}
		here = next
	}
	return m, nil
}

func (s *search) best(m *Margin, t *trial) {
	m.Reach, m.Best, m.BestMade = t.value, stats.MeanInterval(t.good, s.spec.Confidence), s.made(t.output)
	m.Surely = t.above.Low >= 0 || t.above.High < 0
}

// refuses says whether the line can't be run at a rung, and which limit it breaks there that it keeps today.
func (s *search) refuses(rung int64) (Edge, string) {
	f, err := s.fileAt(rung)
	if err != nil {
		return FileEdge, ""
	}
	if why := scenarios.Refusal(f); why != "" && scenarios.Refusal(s.file) == "" {
		return LimitEdge, why
	}
	return OpenEdge, ""
}

// runs says that the line can be run at a rung.
func (s *search) runs(rung int64) bool {
	edge, _ := s.refuses(rung)
	return edge == OpenEdge
}

// edge is the last rung on the way from one that is not refused to one that is, or one of fewer digits shortly before it.
func (s *search) edge(from, to int64) int64 {
	begun := from
	for to-from > 1 || from-to > 1 {
		if middle := from + (to-from)/2; s.runs(middle) {
			from = middle
		} else {
			to = middle
		}
	}
	if short := cutToDigits(from, begun); s.runs(short) {
		return short
	}
	return from
}

// edgeDigits is to how many digits the edge of what a limit allows is told.
const edgeDigits = 4

// cutToDigits is a rung cut to edgeDigits, towards another one and no further than that.
func cutToDigits(rung, towards int64) int64 {
	unit := int64(1)
	for size := max(rung, -rung); size >= unit*int64(math.Pow10(edgeDigits)); {
		unit *= 10
	}
	short := rung / unit * unit // towards 0
	if short < rung && towards > rung {
		short += unit
	} else if short > rung && towards < rung {
		short -= unit
	}
	if (short-towards > 0) != (rung-towards > 0) {
		return rung
	}
	return short
}

// fileAt is the line at a rung.
func (s *search) fileAt(rung int64) (*scenarios.File, error) {
	if rung == s.rung(s.today.Number()) {
		return s.file, nil
	}
	v, err := s.ladder.value(rung)
	if err != nil {
		return nil, err
	}
	return with(s.file, s.path, v)
}

// try runs the line at a rung. Today's value stands on the rung nearest to it.
func (s *search) try(rung int64) (*trial, error) {
	if known, ok := s.tried[rung]; ok {
		return known, nil
	}
	f, err := s.fileAt(rung)
	if err != nil {
		return nil, err
	}
	out, err := s.run(f)
	if err != nil {
		return nil, err
	}
	v, err := s.ladder.value(rung)
	t := &trial{output: out, rung: rung, value: v, above: s.above(out)}
	s.tried[rung] = t
	return t, err
}
