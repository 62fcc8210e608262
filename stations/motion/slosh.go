package motion

import (
	"fmt"
	"math"
	"math/cmplx"
)

// IndexMove is the conveyor's move under the carton, and how often it comes.
type IndexMove struct {
	Law    Law
	Travel float64 // m, more than 0
	Time   Seconds // of the move, more than 0
	Cycle  Seconds // from one index to the next, Time or more
}

// Slosh is the liquid's answer to an index, solved in closed form for every mode.
type Slosh struct {
	tank      Tank
	move      IndexMove
	modes     []liquidMode
	stretches []stretch
}

// NewSlosh solves the modes of a tank for a move.
func NewSlosh(tank Tank, move IndexMove) (*Slosh, []Problem) {
	if problems := append(tank.Problems(), move.problems()...); len(problems) > 0 {
		return nil, problems
	}
	s := &Slosh{tank: tank, move: move}
	for i := range tank.modeCount() {
		s.modes = append(s.modes, newLiquidMode(tank.Mode(2*i+1), tank.Damping))
	}
	for i := range move.Law.pieces {
		s.stretches = append(s.stretches, newStretch(&move.Law.pieces[i], move.Travel, float64(move.Time), s.modes))
	}
	return s, nil
}

func (m IndexMove) problems() []Problem {
	var found []Problem
	add := func(path, message, hint string) {
		found = append(found, Problem{Axis: "index", Path: path, Message: message, Hint: hint})
	}
	if m.Law.IsZero() {
		add("law", "has no motion law", "for example modified sine")
	} else if m.Law.Coefficients().VelocitySteps {
		add("law", fmt.Sprintf("%s has no finite acceleration, so the liquid's answer is not defined", m.Law.Name()), "use any other law")
	}
	if !(m.Travel > 0) || math.IsInf(m.Travel, 1) {
		add("travel", fmt.Sprintf("index of %g m", m.Travel), "more than 0")
	}
	if !(m.Time > 0) || !(m.Cycle >= m.Time) || math.IsInf(float64(m.Cycle), 1) {
		add("time", fmt.Sprintf("index of %g s in a cycle of %g s", float64(m.Time), float64(m.Cycle)), "more than 0, and within the cycle")
	}
	return found
}

// QuasiStatic is the rise at the wall if the liquid followed the peak acceleration at once, m.
func (s *Slosh) QuasiStatic() float64 {
	a := s.move.Law.Coefficients().Ca * s.move.Travel / square(float64(s.move.Time))
	return s.tank.StaticRise(a)
}

// Residual is the amplitude at the wall, m, that one index from rest leaves in the i-th odd mode (0: the first).
func (s *Slosh) Residual(i int) float64 {
	return cmplx.Abs(s.afterIndex(i, 0)) / s.modes[i].omegaD
}

// BuildUp is by how much the residual of the i-th odd mode (0: the first) grows when the index repeats for ever: 1/|1
// - exp(lambda cycle)|. Infinite for an undamped mode in step with the cycle.
func (s *Slosh) BuildUp(i int) float64 {
	return 1 / cmplx.Abs(1-cmplx.Exp(s.modes[i].lambda*complex(float64(s.move.Cycle), 0)))
}

// afterIndex is the state of a mode at the end of an index that it entered with the state start.
func (s *Slosh) afterIndex(i int, start complex128) complex128 {
	for k := range s.stretches {
		start = s.stretches[k].advance(i, s.modes[i], start, s.stretches[k].width)
	}
	return start
}

// afterCycle is the state at the end of a cycle.
func (s *Slosh) afterCycle(i int, start complex128) complex128 {
	stand := float64(s.move.Cycle - s.move.Time)
	return s.afterIndex(i, start) * cmplx.Exp(s.modes[i].lambda*complex(stand, 0))
}

// WaveAt is the height of the liquid above the still level at the rear wall (m; the same below it at the front wall),
// a time after the first of endless indexes from rest.
func (s *Slosh) WaveAt(at Seconds) float64 {
	cycles := math.Floor(float64(at / s.move.Cycle))
	left := float64(at) - cycles*float64(s.move.Cycle)
	wave := 0.0
	for i, m := range s.modes {
		y := complex128(0)
		for range int(cycles) {
			y = s.afterCycle(i, y)
		}
		wave += imag(s.within(i, y, left)) / m.omegaD
	}
	return wave
}

// within is the state of a mode at a time of a cycle that it entered with the state y.
func (s *Slosh) within(i int, y complex128, t float64) complex128 {
	for k := range s.stretches {
		st := &s.stretches[k]
		if t <= st.width {
			return st.advance(i, s.modes[i], y, t)
		}
		y = st.advance(i, s.modes[i], y, st.width)
		t -= st.width
	}
	return y * cmplx.Exp(s.modes[i].lambda*complex(t, 0))
}
