package random

import (
	"fmt"
	"math"
)

// Countdown is the law of the number of acts up to and including the next
// event: a miss with a chance at every act, or a jam every so many cartons.
// The zero Countdown never ends.
type Countdown struct {
	chance float64      // per act, when there is no law
	rate   float64      // -log(1-chance)
	law    Distribution // of counts
}

// Never is the count of an event that does not come.
const Never int64 = math.MaxInt64

// PerAct returns the countdown to an event with the same chance p at every act,
// 0 <= p <= 1: 0 never comes, 1 comes every time.
func PerAct(p float64) (Countdown, error) {
	if !(p >= 0 && p <= 1) {
		return Countdown{}, fmt.Errorf("chance is %g; give a probability from 0 to 1", p)
	}
	return Countdown{chance: p, rate: stepRate(p)}, nil
}

// PerCount returns the countdown drawn from a law of counts, rounded up to a
// whole number of at least 1. Rounding up adds about half a count to the mean
// of a continuous law and nothing to a constant whole number.
func PerCount(law Distribution) Countdown { return Countdown{law: law} }

// Draw returns one count, 1 to Never, by one uniform.
func (c *Countdown) Draw(stream *Stream) int64 {
	u := stream.Uniform()
	switch {
	case c.law != nil:
		return wholeCount(math.Ceil(c.law.Quantile(u)))
	case c.rate > 0:
		return wholeCount(geometricSteps(u, c.rate))
	}
	return Never
}

// Mean returns the expected count, +Inf for never. For a law of counts it is
// the law's mean (at least 1), before rounding up.
func (c Countdown) Mean() float64 {
	if c.law != nil {
		return max(1, c.law.Mean())
	}
	return 1 / c.chance
}

func wholeCount(n float64) int64 {
	switch {
	case n >= float64(Never):
		return Never
	case n > 1:
		return int64(n)
	}
	return 1
}
