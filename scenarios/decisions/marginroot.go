package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// root closes in on the threshold between two trials, and on the bounds of its interval: towards today the value beyond which
// the output may already be below, and away from today the value at which it surely is.
func (s *search) root(m *Margin, start, inside, outside *trial, beyond []int64) error {
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
	m.Found, m.Grows, m.Exact = true, outside.rung > start.rung, inside.fixed && outside.fixed
	at := stats.MeanInterval([]float64{s.number(limit.rung), s.number(limit.rung)}, s.spec.Confidence)
	if !m.Exact {
		if at, err = s.bounds(at, start, outside, near, far, beyond); err != nil {
			return err
		}
		if limit, err = s.printable(m, limit, at); err != nil {
			return err
		}
		at.Mean = s.number(limit.rung)
		at.Low, at.High = min(at.Low, at.Mean), max(at.High, at.Mean)
	}
	at.N = s.spec.Replications
	m.Limit, m.At, m.Change = limit.value, at, s.number(limit.rung)/s.today.Number()-1
	return nil
}

// bounds are the ends of the interval of a threshold.
func (s *search) bounds(at stats.Interval, start, outside *trial, near, far func(*trial) float64, beyond []int64) (stats.Interval, error) {
	first, last := s.number(start.rung), math.Inf(1)
	if near(start) >= 0 != (near(outside) >= 0) {
		t, err := s.close(start, outside, near)
		if err != nil {
			return at, err
		}
		first = s.number(t.rung)
	}
	t, err := s.beyond(start, beyond, far)
	if err != nil {
		return at, err
	}
	switch {
	case t != nil:
		last = s.number(t.rung)
	case outside.rung < start.rung:
		last = math.Inf(-1)
	}
	at.Low, at.High = min(first, last), max(first, last)
	return at, nil
}

// beyond is the last value, going outward, at which a curve is still on today's side of 0; nil where it never crosses.
func (s *search) beyond(start *trial, rungs []int64, curve func(*trial) float64) (*trial, error) {
	for _, rung := range rungs {
		if !s.runs(rung) {
			return nil, nil
		}
		t, err := s.try(rung)
		if err != nil {
			return nil, err
		}
		if curve(t) >= 0 != (curve(start) >= 0) {
			return s.close(start, t, curve)
		}
	}
	return nil, nil
}

// close narrows the way between two trials on either side of the root of a curve until they are neighbours. It returns the one
// that keeps the threshold: the last, or, where it is not met today, the first.
func (s *search) close(from, to *trial, curve func(*trial) float64) (*trial, error) {
	today := curve(from) >= 0
	for turn := 0; !s.near(from, to); turn++ {
		t, err := s.try(s.middle(from, to, curve, turn))
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

// middle is the next rung to try: half-way, and where chance plays a part by turns on the straight line through both trials, a
// tenth of the way off either at least.
func (s *search) middle(from, to *trial, curve func(*trial) float64, turn int) int64 {
	way := to.rung - from.rung
	if from.fixed && to.fixed || s.whole || turn%3 == 2 {
		return from.rung + way/2
	}
	share := curve(from) / (curve(from) - curve(to))
	if !(share >= 0.1) {
		share = 0.1
	}
	step := int64(math.Round(float64(way) * min(share, 0.9)))
	if step == 0 || step == way {
		step = way / 2
	}
	return from.rung + step
}

// near says that two trials need not be told apart: neighbours, or, where chance plays a part, at a ten-thousandth of each other.
func (s *search) near(a, b *trial) bool {
	apart := math.Abs(float64(a.rung - b.rung))
	if apart <= 1 || a.fixed && b.fixed {
		return apart <= 1
	}
	return apart <= 1e-4*math.Max(math.Abs(float64(a.rung)), math.Abs(float64(b.rung)))
}

// printable is the limit rounded to the digits that its interval supports, towards the side that keeps the threshold, on these
// shifts.
func (s *search) printable(m *Margin, limit *trial, at stats.Interval) (*trial, error) {
	half := at.HalfWidth()
	if math.IsInf(half, 0) {
		half = math.Max(at.Mean-at.Low, at.High-at.Mean)
		if one := math.Min(at.Mean-at.Low, at.High-at.Mean); !math.IsInf(one, 0) {
			half = one
		}
	}
	if s.whole || half == 0 || math.IsInf(half, 0) {
		return limit, nil
	}
	digits := min(int(-math.Floor(math.Log10(half/2))), s.digits)
	coarse := int64(math.Pow10(s.digits - digits))
	towards := int64(1) // the side that keeps the threshold
	if m.Grows == s.met {
		towards = -1
	}
	m.Step = math.Pow10(-digits)
	rung := limit.rung / coarse * coarse
	if rung != limit.rung && (rung > limit.rung) != (towards > 0) {
		rung += towards * coarse
	}
	for range 5 {
		if !s.runs(rung) {
			break
		}
		t, err := s.try(rung)
		if err != nil || t.above.Mean >= 0 {
			return t, err
		}
		rung += towards * coarse
	}
	return limit, nil
}
