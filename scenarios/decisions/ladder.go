package decisions

import (
	"math"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// ladder is the values at which a parameter is tried: whole multiples of a step, so that each can be printed to its last digit, and
// what is printed is what was run.
type ladder struct {
	today Value
	// digits is how many decimals a rung has in the unit of today's value; the step is 10 to the power of -digits.
	digits int
	whole  bool
}

// rungDigits is how many digits of today's value, or of what stands in for it where that is 0, the rungs tell apart.
const rungDigits = 7

// ladderOf is the ladder of a parameter: whole numbers for what is counted; no finer than a nanosecond for a time, or a hundredth of
// a carton for a rate, where three decimals could be read as thousands.
func ladderOf(f *scenarios.File, path string, today Value) ladder {
	l := ladder{today: today, whole: isWhole(f, path, today)}
	if l.whole {
		return l
	}
	size := math.Abs(today.Number())
	if size == 0 {
		size = l.smallest()
	}
	l.digits = max(rungDigits-1-int(math.Floor(math.Log10(size))), 0)
	if today.Is(quantity.Rate) || today.Is(quantity.Count) && !today.plain {
		l.digits = min(l.digits, 2)
	}
	for today.Is(quantity.Time) && l.digits > 0 && nanoseconds(l.step(), today) < 1 {
		l.digits--
	}
	return l
}

// nanoseconds is a number in the unit of a time.
func nanoseconds(x float64, like Value) float64 {
	v, err := valueOf(x, like)
	if err != nil {
		return 0
	}
	ns, err := v.In("ns")
	if err != nil {
		return 0
	}
	return ns
}

func (l ladder) step() float64 { return math.Pow10(-l.digits) }

// rung is the number of the rung nearest to a value.
func (l ladder) rung(x float64) int64 { return int64(math.Round(x * math.Pow10(l.digits))) }

// number is the value of a rung in the unit of today's.
func (l ladder) number(rung int64) float64 { return float64(rung) / math.Pow10(l.digits) }

// value is the value of a rung.
func (l ladder) value(rung int64) (Value, error) { return valueOf(l.number(rung), l.today) }

// smallest is a first step away from 0 in the parameter's unit: a tenth of a percent of a share, one of what is counted, a hundredth
// of anything else.
func (l ladder) smallest() float64 {
	switch {
	case l.whole:
		return 1
	case l.today.Is(quantity.Ratio):
		q, err := quantity.Of(0.1, "%")
		if x, bad := q.In(l.today.Quantity.Unit()); err == nil && bad == nil {
			return x
		}
	}
	return 0.01
}

// factors are how far a search goes, as multiples of today's value and of its inverse: what lies beyond a tenth or ten times is
// another machine.
var factors = []float64{1.02, 1.05, 1.1, 1.2, 1.35, 1.6, 2, 3, 5, 10}

// outwards lists the rungs to try in one direction, the nearest first.
func (l ladder) outwards(up bool) []int64 {
	var rungs []int64
	add := func(x float64) {
		rung := l.rung(x)
		last := l.rung(l.today.Number())
		if len(rungs) > 0 {
			last = rungs[len(rungs)-1]
		}
		if up && rung > last || !up && rung < last {
			rungs = append(rungs, rung)
		}
	}
	x := l.today.Number()
	if x == 0 {
		for step := l.smallest(); up && len(rungs) < 14; step *= 2 {
			add(step)
		}
		return rungs
	}
	for _, factor := range factors {
		if l.whole { // a small number moves by one at least
			next := l.number(l.rung(x)) + float64(len(rungs)+1)*sign(up)
			add(next)
		}
		if up {
			add(x * factor)
		} else {
			add(x / factor)
		}
	}
	return rungs
}

func sign(up bool) float64 {
	if up {
		return 1
	}
	return -1
}
