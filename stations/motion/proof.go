package motion

import (
	"math"
	"slices"
)

// The proofs below hold for every angle and not only for sampled ones. On a stretch of width w where the second
// derivative of f is nowhere more than bend, f departs from its chord by at most bend w2/8 (the error of linear
// interpolation); a stretch is halved until that settles the question.

// nearestAngle is the width in degrees below which a stretch is not halved any more.
const nearestAngle = 1e-10

// lowest is the smallest value of the curve in lo..hi, to within tolerance, and where it falls.
func (q curve) lowest(lo, hi, tolerance float64) (value, at float64) {
	value, at = q.at(lo), lo
	marks := q.breaks(lo, hi)
	for i := 1; i < len(marks); i++ {
		a, b := marks[i-1], marks[i]
		fb := q.at(b)
		if fb < value {
			value, at = fb, b
		}
		q.lowestBetween(a, b, q.at(a), fb, q.bend(a, b), tolerance, &value, &at)
	}
	return value, at
}

// lowestBetween lowers value where the curve between a and b goes below it by more than tolerance.
func (q curve) lowestBetween(a, b, fa, fb, bend, tolerance float64, value, at *float64) {
	w := b - a
	if min(fa, fb)-bend*w*w/8 >= *value-tolerance || w < nearestAngle {
		return
	}
	c := a + w/2
	fc := q.at(c)
	if fc < *value {
		*value, *at = fc, c
	}
	q.lowestBetween(a, c, fa, fc, bend, tolerance, value, at)
	q.lowestBetween(c, b, fc, fb, bend, tolerance, value, at)
}

// below are the stretches of lo..hi in which the curve is negative, ascending, their ends exact to rounding. Those no
// deeper than slack are a touch of zero and do not count.
func (q curve) below(lo, hi, slack float64) []Window {
	var found []Window
	add := func(from, to float64) {
		if n := len(found); n > 0 && from-float64(found[n-1].To) <= nearestAngle {
			found[n-1].To = Degrees(to)
			return
		}
		found = append(found, Window{Degrees(from), Degrees(to)})
	}
	marks := q.breaks(lo, hi)
	for i := 1; i < len(marks); i++ {
		a, b := marks[i-1], marks[i]
		q.belowBetween(a, b, q.at(a), q.at(b), q.bend(a, b), slack/10, add)
	}
	return slices.DeleteFunc(found, func(w Window) bool {
		depth, _ := q.lowest(float64(w.From), float64(w.To), slack/10)
		return depth >= -slack
	})
}

// belowBetween reports to add the negative stretches between a and b, in order. A curve that runs along zero, nowhere deeper than
// touch, is left alone: halving would never settle it.
func (q curve) belowBetween(a, b, fa, fb, bend, touch float64, add func(from, to float64)) {
	w := b - a
	sag := bend * w * w / 8
	switch {
	case min(fa, fb)-sag >= -touch:
		return
	case max(fa, fb)+sag < 0:
		add(a, b)
		return
	case (fa < 0) != (fb < 0) && math.Abs(fb-fa) > bend*w*w: // the chord is steeper than the curve can bend: one crossing
		q.addCrossing(a, b, fa, add)
		return
	case w < nearestAngle:
		if fa < 0 || fb < 0 {
			add(a, b)
		}
		return
	}
	c := a + w/2
	fc := q.at(c)
	q.belowBetween(a, c, fa, fc, bend, touch, add)
	q.belowBetween(c, b, fc, fb, bend, touch, add)
}

// addCrossing reports the negative side of the only crossing between a and b.
func (q curve) addCrossing(a, b, fa float64, add func(from, to float64)) {
	x := root(q.at, a, b, 0)
	if fa < 0 {
		add(a, x)
	} else {
		add(x, b)
	}
}
