package decisions

import (
	"math"

	"dwellcast/scenarios/quantity"
	"dwellcast/sim/stats"
)

// trial is the output at one value of a parameter.
type trial struct {
	output
	value Value
	above stats.Interval // the threshold
}

// search looks for the threshold along one parameter.
type search struct {
	*probe
	path  string
	today Value
	whole bool
	met   bool
	tried map[string]*trial
}

// factors are how far a search goes, as multiples of today's value and of its inverse: what lies beyond a tenth or ten times is
// another machine.
var factors = []float64{1.02, 1.05, 1.15, 1.5, 3, 10}

// margin finds how far one parameter may go, in whichever direction the threshold is nearer.
func (p *probe) margin(path string, met bool) (*Margin, error) {
	today, err := valueAt(p.file, path)
	if err != nil {
		return nil, err
	}
	s := &search{probe: p, path: path, today: today, met: met, whole: isWhole(p.file, path, today), tried: map[string]*trial{}}
	up, err := s.side(s.upwards())
	if err != nil {
		return nil, err
	}
	down, err := s.side(s.downwards())
	if err != nil {
		return nil, err
	}
	switch {
	case up.Found && (!down.Found || up.Slack() <= down.Slack()):
		return up, nil
	case down.Found:
		return down, nil
	case met == (up.Best.Mean <= down.Best.Mean):
		return up, nil
	}
	return down, nil
}

func (s *search) upwards() []float64 {
	x := s.today.Number()
	var places []float64
	if x == 0 {
		for step := s.smallest(); len(places) < 14; step *= 2 {
			places = append(places, step)
		}
		return places
	}
	for _, factor := range factors {
		places = append(places, x*factor)
	}
	return places
}

func (s *search) downwards() []float64 {
	var places []float64
	for _, factor := range factors {
		places = append(places, s.today.Number()/factor)
	}
	if s.today.Number() == 0 {
		return nil
	}
	return places
}

// smallest is a first step away from 0 in the parameter's unit: a thousandth of a share, a hundredth of anything else.
func (s *search) smallest() float64 {
	switch {
	case s.whole:
		return 1
	case s.today.Is(quantity.Ratio):
		q, err := quantity.Of(0.1, "%")
		if x, bad := q.In(s.today.Quantity.Unit()); err == nil && bad == nil {
			return x
		}
	}
	return 0.01
}

// side goes outward in one direction until the threshold is crossed or the parameter can go no further.
func (s *search) side(places []float64) (*Margin, error) {
	m := &Margin{Path: s.path, Today: s.today, Reach: s.today}
	here, err := s.try(s.today)
	if err != nil {
		return nil, err
	}
	start := here
	s.best(m, here)
	for i, x := range places {
		next, err := s.tryNumber(x)
		if err != nil {
			return nil, err
		}
		if next == nil {
			m.Edge = true
			break
		}
		if s.met != (next.above.Mean >= 0) {
			return m, s.root(m, start, here, next, places[i:])
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
}

// root closes in on the threshold between two trials, and on the bounds of its interval: towards today the value beyond which
// the output may already be below, and away from today the value at which it surely is.
func (s *search) root(m *Margin, start, inside, outside *trial, beyond []float64) error {
	mean := func(t *trial) float64 { return t.above.Mean }
	surely := func(t *trial) float64 { return t.above.Low }
	perhaps := func(t *trial) float64 { return t.above.High }
	near, far := surely, perhaps
	if !s.met {
		near, far = perhaps, surely
	}
	limit, err := s.close(inside, outside, mean)
	if err != nil {
		return err
	}
	m.Found, m.Limit, m.Grows = true, limit.value, outside.value.Number() > s.today.Number()
	at := stats.MeanInterval([]float64{limit.value.Number(), limit.value.Number()}, s.spec.Confidence)
	m.Change = at.Mean/s.today.Number() - 1
	if !limit.fixed {
		if at, err = s.bounds(at, start, outside, near, far, beyond); err != nil {
			return err
		}
	}
	at.N, m.At = s.spec.Replications, at
	return nil
}

// bounds are the ends of the interval of a threshold.
func (s *search) bounds(at stats.Interval, start, outside *trial, near, far func(*trial) float64, beyond []float64) (stats.Interval, error) {
	first, last := start.value.Number(), math.Inf(1)
	if near(start) >= 0 != (near(outside) >= 0) {
		t, err := s.close(start, outside, near)
		if err != nil {
			return at, err
		}
		first = t.value.Number()
	}
	t, err := s.beyond(start, beyond, far)
	if err != nil {
		return at, err
	}
	switch {
	case t != nil:
		last = t.value.Number()
	case outside.value.Number() < s.today.Number():
		last = math.Inf(-1)
	}
	at.Low, at.High = min(first, last), max(first, last)
	return at, nil
}

// beyond is the last value, going outward, at which a curve is still on today's side of 0; nil where it never crosses.
func (s *search) beyond(start *trial, places []float64, curve func(*trial) float64) (*trial, error) {
	for _, x := range places {
		t, err := s.tryNumber(x)
		if err != nil || t == nil {
			return nil, err
		}
		if curve(t) >= 0 != (curve(start) >= 0) {
			return s.close(start, t, curve)
		}
	}
	return nil, nil
}

// close narrows the way between two trials on either side of the root of a curve until they are neighbours. It returns the one
// on the side of the first; where the threshold is not met today, the first that meets it.
func (s *search) close(from, to *trial, curve func(*trial) float64) (*trial, error) {
	today := curve(from) >= 0
	for turn := 0; !s.near(from, to); turn++ {
		middle, ok, err := s.middle(from, to, curve, turn)
		if err != nil {
			return nil, err
		}
		if !ok {
			break
		}
		t, err := s.try(middle)
		if err != nil {
			return nil, err
		}
		if curve(t) >= 0 == today {
			from = t
		} else {
			to = t
		}
	}
	if !s.met {
		return to, nil
	}
	return from, nil
}

// middle is the next value to try: half-way, and where chance plays a part by turns on the straight line through both trials, a
// tenth of the way off either at least.
func (s *search) middle(from, to *trial, curve func(*trial) float64, turn int) (Value, bool, error) {
	if from.fixed && to.fixed || s.whole || turn%3 == 2 {
		return between(from.value, to.value, s.whole)
	}
	share := curve(from) / (curve(from) - curve(to))
	share = min(max(share, 0.1), 0.9)
	a, b := from.value.Number(), to.value.Number()
	v, err := valueOf(tidy(a+float64((b-a)*share), 9), s.today)
	return v, true, err
}

// near says that two values need not be told apart: where chance plays a part, at a ten-thousandth of today's value.
func (s *search) near(a, b *trial) bool {
	if a.fixed && b.fixed {
		return false // between tells
	}
	x, y := a.value.Number(), b.value.Number()
	return math.Abs(x-y) <= 1e-4*math.Max(math.Abs(x), math.Abs(y))
}

// tryNumber is try for a number in the unit of today's value; nil where the line file can't take it.
func (s *search) tryNumber(x float64) (*trial, error) {
	if s.whole {
		x = math.Round(x)
	}
	v, err := valueOf(tidy(x, 9), s.today)
	if err != nil {
		return nil, nil
	}
	if _, err := with(s.file, s.path, v); err != nil {
		return nil, nil
	}
	return s.try(v)
}

// try runs the line with the parameter at a value.
func (s *search) try(v Value) (*trial, error) {
	if known, ok := s.tried[v.String()]; ok {
		return known, nil
	}
	f := s.file
	if !v.Equal(s.today.Quantity) {
		var err error
		if f, err = with(f, s.path, v); err != nil {
			return nil, err
		}
	}
	out, err := s.run(f)
	if err != nil {
		return nil, err
	}
	t := &trial{output: out, value: v, above: s.above(out)}
	s.tried[v.String()] = t
	return t, nil
}
