package motion

import (
	"math"
	"math/cmplx"
)

// Response is the largest wave at either wall, m.
type Response struct {
	Peak     float64 // over all the time looked at
	PeakAt   Seconds // after the start of the first index looked at
	Moving   float64 // while the conveyor moved
	Standing float64 // while it stood, between indexes and after the last
	After    float64 // after the last index
}

// Indexes is the response to a number of indexes (1 or more) from rest, and for a time after the last of them.
func (s *Slosh) Indexes(n int, after Seconds) Response {
	return s.respond(make([]complex128, len(s.modes)), n, float64(after))
}

// Steady is the response in one cycle of endlessly repeated indexes: each mode starts with the state that the cycle
// reproduces. An undamped mode in step with the cycle has none, and the waves are infinite.
func (s *Slosh) Steady() Response {
	states := make([]complex128, len(s.modes))
	for i, m := range s.modes {
		loss := 1 - cmplx.Exp(m.lambda*complex(float64(s.move.Cycle), 0))
		if cmplx.Abs(loss) < 1e-12 {
			inf := math.Inf(1)
			return Response{Peak: inf, Moving: inf, Standing: inf, After: inf}
		}
		states[i] = s.afterCycle(i, 0) / loss
	}
	return s.respond(states, 1, float64(s.move.Cycle-s.move.Time))
}

// WorstPhase is a height, m, that no timing of endlessly repeated indexes of this kind and at least this cycle
// exceeds: the peak of one index from rest, plus all residuals of earlier ones in step. Infinite without damping.
func (s *Slosh) WorstPhase() float64 {
	height := s.Indexes(1, s.move.Cycle-s.move.Time).Peak
	for i, m := range s.modes {
		left := math.Exp(real(m.lambda) * float64(s.move.Cycle-s.move.Time)) // of a residual when the next index begins
		kept := math.Exp(real(m.lambda) * float64(s.move.Cycle))
		if kept == 1 {
			return math.Inf(1)
		}
		height += s.Residual(i) * left / (1 - kept)
	}
	return height
}

// respond follows the states, which it uses up, through n cycles, the last of which ends with a stand of the given
// length.
func (s *Slosh) respond(states []complex128, n int, after float64) Response {
	f := newWaveFinder(s.modes)
	var r Response
	for c := range n {
		t := float64(c) * float64(s.move.Cycle)
		for k := range s.stretches {
			r.note(f.driven(&s.stretches[k], states), t, &r.Moving)
			t += s.stretches[k].width
		}
		if c == n-1 {
			last := f.undriven(after, states)
			r.note(last, t, &r.Standing)
			r.After = last.height
			continue
		}
		r.note(f.undriven(float64(s.move.Cycle-s.move.Time), states), t, &r.Standing)
	}
	return r
}

// note takes a wave into the response.
func (r *Response) note(w crest, start float64, kind *float64) {
	*kind = max(*kind, w.height)
	if w.height > r.Peak {
		r.Peak, r.PeakAt = w.height, Seconds(start+w.at)
	}
}
