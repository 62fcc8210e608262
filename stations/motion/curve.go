package motion

import (
	"math"
	"sort"
)

// curve is a distance over the master's angle made of cams: offset + sum of gain x position. Between two of its
// breaks it is smooth, and its curvature is bounded; that is what proofs about it rest on.
type curve struct {
	offset float64
	terms  []curveTerm
}

type curveTerm struct {
	gain float64
	cam  *Cam
}

func (q curve) at(a float64) float64 {
	y := q.offset
	for _, t := range q.terms {
		y += t.gain * t.cam.Position(Degrees(a))
	}
	return y
}

// minus is the curve lowered by a constant.
func (q curve) minus(c float64) curve {
	q.offset -= c
	return q
}

// negated is the curve upside down.
func (q curve) negated() curve {
	n := curve{offset: -q.offset}
	for _, t := range q.terms {
		n.terms = append(n.terms, curveTerm{-t.gain, t.cam})
	}
	return n
}

// breaks are lo, hi and all angles between them where a move of one of the cams begins.
func (q curve) breaks(lo, hi float64) []float64 {
	marks := []float64{lo, hi}
	for _, t := range q.terms {
		for _, m := range t.cam.moves {
			first := t.cam.start + m.from
			first += fullTurn * math.Ceil((lo-first)/fullTurn)
			for a := first; a < hi; a += fullTurn {
				marks = append(marks, a)
			}
		}
	}
	sort.Float64s(marks)
	distinct := marks[:1]
	for _, a := range marks[1:] {
		if a-distinct[len(distinct)-1] > angleRounding {
			distinct = append(distinct, a)
		}
	}
	if n := len(distinct); n > 1 && hi-distinct[n-1] <= angleRounding {
		distinct[n-1] = hi
	}
	return distinct
}

// bend bounds the second derivative by the angle between two neighbouring breaks: each cam adds its peak acceleration
// there.
func (q curve) bend(lo, hi float64) float64 {
	sum := 0.0
	for _, t := range q.terms {
		m, _, _ := t.cam.find(Degrees(lo + (hi-lo)/2))
		if m.travel != 0 {
			sum += math.Abs(t.gain*m.travel) * m.law.Coefficients().Ca * m.perSpan * m.perSpan
		}
	}
	return sum * (1 + 1e-9)
}
