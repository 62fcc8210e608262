package decisions

import (
	"math"
	"time"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// isWhole says that a parameter is counted in whole numbers: one that takes no others, and any count of things that is a whole
// number today, such as a stop every 900 cartons.
func isWhole(f *scenarios.File, path string, v Value) bool {
	if !v.Is(quantity.Count) {
		return false
	}
	if !v.plain && v.Number() == math.Trunc(v.Number()) {
		return true
	}
	broken, err := valueOf(math.Floor(v.Number())+0.5, v)
	if err != nil {
		return true
	}
	_, err = with(f, path, broken)
	return err != nil
}

// between is a value half-way between two, and whether there is one: times are told apart to the nanosecond, what is
// whole stays whole, and other numbers have 12 digits.
func between(low, high Value, whole bool) (Value, bool, error) {
	a, b := low.Number(), high.Number()
	switch {
	case low.Is(quantity.Time):
		from, _ := low.Duration()
		to, _ := high.Duration()
		if to-from < 2 && from-to < 2 {
			return low, false, nil
		}
		v, err := timeValue(from+(to-from)/2, low)
		return v, true, err
	case whole:
		if math.Abs(b-a) < 1.5 {
			return low, false, nil
		}
		v, err := valueOf(math.Floor((a+b)/2), low)
		return v, true, err
	}
	if math.Abs(b-a) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) {
		return low, false, nil
	}
	v, err := valueOf((a+b)/2, low)
	return v, true, err
}

// timeValue is a length of time, to the nanosecond, in the unit of another.
func timeValue(d time.Duration, like Value) (Value, error) {
	q, err := quantity.Of(float64(d), "ns")
	if err != nil {
		return Value{}, err
	}
	zero, err := quantity.Of(0, like.Unit())
	if err != nil {
		return Value{}, err
	}
	spaced, err := quantity.Spaced(zero, q, 2)
	if err != nil {
		return Value{}, err
	}
	if same, err := spaced[1].Duration(); err == nil && same == d {
		return Value{spaced[1], false}, nil
	}
	return Value{q, false}, nil
}
