package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// findKnee looks for the knee of a sweep over one parameter.
func (s *sweeping) findKnee() error {
	if len(s.spec.Vary) != 1 || len(s.answer.Points) < leastPoints {
		return nil
	}
	x, y := s.curve()
	series := s.series
	if s.answer.Fixed {
		series = nil
	}
	k := findKnee(x, y, series, s.spec.Confidence)
	if isFlat(y) {
		return nil
	}
	k.From, k.To = s.answer.holdersAround(k.At.Mean, x)
	if s.answer.Fixed {
		if err := s.exactKnee(k, x); err != nil {
			return err
		}
	}
	s.answer.Knee = k
	return nil
}

// curve is the sweep as numbers.
func (s *sweeping) curve() (x, y []float64) {
	for _, p := range s.answer.Points {
		x = append(x, p.Values[0].Number())
		y = append(y, p.Figure.Mean)
	}
	return x, y
}

// isFlat says that a curve does not change at all.
func isFlat(y []float64) bool {
	for _, v := range y {
		if v != y[0] {
			return false
		}
	}
	return true
}

// holdersAround is who holds the bottleneck at the first point and at the last, where the knee is a change from one to the
// other; otherwise who holds it at the points next to the knee.
func (s *Sweep) holdersAround(at float64, x []float64) (from, to string) {
	i := 0
	for i+1 < len(x) && x[i+1] <= at {
		i++
	}
	before, after := s.Points[max(i-1, 0)], s.Points[min(i+2, len(x)-1)]
	return before.Holder, after.Holder
}

// exactKnee finds, for a line that leaves nothing to chance, the very value at which the bottleneck changes hands: to the
// nanosecond for a time, to 12 digits for anything else. Of several changes it takes the one nearest to the fitted knee.
func (s *sweeping) exactKnee(k *Knee, x []float64) error {
	nearest, fitted := math.Inf(1), k.At.Mean
	for i := range len(x) - 1 {
		a, b := s.answer.Points[i], s.answer.Points[i+1]
		if a.Holder == b.Holder {
			continue
		}
		at, err := s.handover(a, b)
		if err != nil {
			return err
		}
		if d := math.Abs(at.Values[0].Number() - fitted); d < nearest {
			nearest = d
			*k = kneeAt(a, *at, b, s.spec.Confidence)
			k.From, k.To = a.Holder, b.Holder
			k.Shows = k.Change.Mean != 0 && k.matters(x)
		}
	}
	return nil
}

// handover is the last point between two at which the holder is still that of the first.
func (s *sweeping) handover(a, b Point) (*Point, error) {
	low, high := a.Values[0], b.Values[0]
	whole := isWhole(s.file, s.spec.Vary[0].Path, low)
	for {
		middle, ok, err := between(low, high, whole)
		if err != nil || !ok {
			return &a, err
		}
		p, err := s.pointAt([]Value{middle})
		if err != nil {
			return nil, err
		}
		if p.Holder == a.Holder {
			low, a = middle, *p
		} else {
			high = middle
		}
	}
}

// kneeAt is the knee at a known point between two others.
func kneeAt(before, at, after Point, conf float64) Knee {
	exactly := func(v float64) stats.Interval { return stats.MeanInterval([]float64{v, v}, conf) }
	x := func(p Point) float64 { return p.Values[0].Number() }
	rise := (at.Figure.Mean - before.Figure.Mean) / (x(at) - x(before))
	if x(at) == x(before) {
		rise = 0
	}
	fall := (after.Figure.Mean - at.Figure.Mean) / (x(after) - x(at))
	return Knee{At: exactly(x(at)), Before: exactly(rise), After: exactly(fall), Change: exactly(fall - rise), Level: at.Figure.Mean}
}
