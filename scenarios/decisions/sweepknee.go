package decisions

import (
	"math"

	"dwellcast/scenarios/quantity"
	"dwellcast/sim/stats"
)

// findKnee looks for the knee of a sweep over one parameter.
func (s *sweeping) findKnee() error {
	places := s.places
	switch {
	case !s.seeksKnee():
		s.answer.Bend = NotSought
		return nil
	case len(places) < leastPoints:
		s.answer.Bend = TooFew
		return nil
	case isLevel(places):
		s.answer.Bend = Level
		return nil
	}
	b := &bending{at: s.between, conf: s.spec.Confidence, carton: s.spec.Figure.Shift(1) - s.spec.Figure.Shift(0)}
	levels, coarse, err := b.zoom(places)
	if err != nil {
		return err
	}
	bend, knee := bendOf(levels, coarse)
	if s.answer.Bend = bend; bend == Kneed {
		return s.kneed(b, levels, knee)
	}
	return nil
}

// seeksKnee says that a knee is looked for: in one parameter, and in a figure that each shift says for itself. A chance is none: it
// says of a shift only on which side of a target it lies.
func (s *sweeping) seeksKnee() bool {
	return len(s.spec.Vary) == 1 && s.spec.Figure.Shift != nil && !s.spec.Figure.Share()
}

// kneed takes the knee of a level into the answer, unless the slope changes too little to speak of. A join without an interval is
// no knee.
func (s *sweeping) kneed(b *bending, levels []zoomed, i int) error {
	k := b.kneeAt(levels, i)
	first, last := s.places[0].x, s.places[len(s.places)-1].x
	if !k.At.Assessed() || math.Abs(levels[i].change.Mean)*(last-first) < leastBend*math.Abs(k.Level) {
		s.answer.Bend = Straight
		return nil
	}
	s.answer.Knee = k
	if s.answer.Fixed {
		return s.exact(k, levels[i])
	}
	return nil
}

// isLevel says that a curve does not change at all.
func isLevel(places []place) bool {
	for _, p := range places {
		if p.y != places[0].y {
			return false
		}
	}
	return true
}

// between runs the line at a value between two others; nil where the parameter takes none there.
func (s *sweeping) between(x, low, high float64) (*place, error) {
	like := s.spec.Vary[0].Values[0]
	if s.isWhole() {
		x = math.Round(x)
	}
	v, err := valueOf(tidy(x, 9), like)
	if err != nil {
		return nil, err
	}
	if at := v.Number(); at <= low || at >= high || like.Is(quantity.Time) && nanoseconds(high-low, like) < 4 {
		return nil, nil
	}
	p, err := s.pointAt([]Value{v})
	if err != nil {
		return nil, err
	}
	return s.placeOf(p), nil
}

// exact replaces the knee of a line that leaves nothing to chance by the very value at which the bottleneck changes hands, if that
// is where the curve bends: to the nanosecond for a time, to 12 digits for anything else. On a line of one conveyor the bottleneck
// is who ends every cycle, so that the bend is nowhere else. Elsewhere it changes hands when buffers have filled.
func (s *sweeping) exact(k *Knee, z zoomed) error {
	if k.From == k.To || !isOneConveyor(s.file) {
		return nil
	}
	low, err := s.valueAt(z.places[0].x)
	if err != nil {
		return err
	}
	high, err := s.valueAt(z.places[len(z.places)-1].x)
	if err != nil {
		return err
	}
	at, err := s.handover(low, high, k.From)
	if err != nil || !k.At.Contains(at) {
		return err
	}
	k.At = stats.MeanInterval([]float64{at, at}, s.spec.Confidence)
	k.Exact = true
	return nil
}

func (s *sweeping) valueAt(x float64) (Value, error) { return valueOf(x, s.spec.Vary[0].Values[0]) }

// handover is the last value between two at which the holder is still that of the first.
func (s *sweeping) handover(low, high Value, first Holder) (float64, error) {
	for {
		middle, ok, err := between(low, high, s.isWhole())
		if err != nil || !ok {
			x, bad := low.In(s.spec.Vary[0].Values[0].Quantity.Unit())
			return x, firstOf(err, bad)
		}
		p, err := s.pointAt([]Value{middle})
		if err != nil {
			return 0, err
		}
		if p.Holder == first {
			low = middle
		} else {
			high = middle
		}
	}
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func (s *sweeping) isWhole() bool {
	return isWhole(s.file, s.spec.Vary[0].Path, s.spec.Vary[0].Values[0])
}
