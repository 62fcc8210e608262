package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// hinge is two straight lines that meet at a break: y = level + before (x - at) left of it, and after (x - at) right of it.
type hinge struct {
	at, level, before, after float64
	sse                      float64 // sum of squared distances
}

func (h hinge) value(x float64) float64 {
	if x <= h.at {
		return h.level + float64(h.before*(x-h.at))
	}
	return h.level + float64(h.after*(x-h.at))
}

// leastPoints is how many points a hinge needs: two lines with two points each, and one to spare.
const leastPoints = 5

// fitHinge finds the hinge of least squares through points of rising x, at least leastPoints of them, with two or more on
// either side of the break (Hudson 1966): for every place of the break among the points two lines are fitted apart, and where
// they do not meet between these points, the break lies on one of them.
func fitHinge(x, y []float64) hinge {
	best := hinge{sse: math.Inf(1)}
	try := func(h hinge) {
		if h.sse < best.sse {
			best = h
		}
	}
	for i := 1; i+2 < len(x); i++ {
		left, right := lineThrough(x[:i+1], y[:i+1]), lineThrough(x[i+1:], y[i+1:])
		if at := (left.zero - right.zero) / (right.slope - left.slope); at >= x[i] && at <= x[i+1] {
			try(hinge{at, left.zero + float64(left.slope*at), left.slope, right.slope, left.sse + right.sse})
		}
		try(fitHingeAt(x, y, x[i]))
		if i+1 < len(x)-1 {
			try(fitHingeAt(x, y, x[i+1]))
		}
	}
	return best
}

// straight is a line y = zero + slope x.
type straight struct{ zero, slope, sse float64 }

// lineThrough is the line of least squares.
func lineThrough(x, y []float64) straight {
	mx, my := average(x), average(y)
	var sxx, sxy, sse float64
	for i := range x {
		sxx += float64((x[i] - mx) * (x[i] - mx))
		sxy += float64((x[i] - mx) * (y[i] - my))
	}
	l := straight{slope: sxy / sxx}
	l.zero = my - float64(l.slope*mx)
	for i := range x {
		d := y[i] - my - float64(l.slope*(x[i]-mx))
		sse += float64(d * d)
	}
	l.sse = sse
	return l
}

// fitHingeAt is the hinge of least squares with its break at a given place.
func fitHingeAt(x, y []float64, at float64) hinge {
	var m [3][4]float64 // normal equations
	for i := range x {
		row := [4]float64{1, min(x[i]-at, 0), max(x[i]-at, 0), y[i]}
		for r := range 3 {
			for c := range 4 {
				m[r][c] += float64(row[r] * row[c])
			}
		}
	}
	b := solve3(m)
	h := hinge{at: at, level: b[0], before: b[1], after: b[2]}
	for i := range x {
		d := y[i] - h.value(x[i])
		h.sse += float64(d * d)
	}
	return h
}

// solve3 solves three linear equations by elimination; without a solution it returns not-a-numbers.
func solve3(m [3][4]float64) [3]float64 {
	for i := range 3 {
		for r := i + 1; r < 3; r++ {
			if math.Abs(m[r][i]) > math.Abs(m[i][i]) {
				m[i], m[r] = m[r], m[i]
			}
		}
		for r := range 3 {
			if factor := m[r][i] / m[i][i]; r != i {
				for c := range 4 {
					m[r][c] -= float64(factor * m[i][c])
				}
			}
		}
	}
	return [3]float64{m[0][3] / m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]}
}

func average(x []float64) float64 {
	var sum stats.Moments
	for _, v := range x {
		sum.Add(v)
	}
	return sum.Mean()
}
