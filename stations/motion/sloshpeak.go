package motion

import (
	"cmp"
	"math/cmplx"
	"slices"
)

// unseen is a rise of the wave, m, that is not looked for.
const unseen = 1e-7

// cycleStart is the state of all modes at the start of a cycle, the height that they reach if nothing drives them, and the highest
// wave of the cycle once it was looked at.
type cycleStart struct {
	states          []complex128
	amplitude, peak float64
}

// highest is the highest wave over a number of indexes (1 or more) from rest and the stands behind them, as Indexes(n, stand).Peak,
// to a ten-thousandth of a millimetre, but without looking at every cycle. A cycle that begins with a wave brings at most that wave
// on top of what a cycle from rest brings, and on top of what another brings at most the difference.
func (s *Slosh) highest(n int) float64 {
	cycles := s.starts(n)
	fromRest := s.cyclePeak(cycles[0].states)
	best := fromRest
	slices.SortFunc(cycles, func(a, b cycleStart) int { return cmp.Compare(b.amplitude, a.amplitude) })
	var seen []cycleStart
	for _, c := range cycles {
		if fromRest+c.amplitude <= best+unseen {
			break
		}
		if slices.ContainsFunc(seen, func(other cycleStart) bool { return other.peak+s.apart(c.states, other.states) <= best+unseen }) {
			continue
		}
		c.peak = s.cyclePeak(c.states)
		seen, best = append(seen, c), max(best, c.peak)
	}
	return best
}

// starts are the states at the start of each of n cycles from rest. A cycle takes a state y to exp(lambda cycle) y + what it leaves
// from rest.
func (s *Slosh) starts(n int) []cycleStart {
	modes := len(s.modes)
	zero, all := make([]complex128, modes), make([]complex128, n*modes)
	list := make([]cycleStart, n)
	for i, m := range s.modes {
		left, kept := s.afterCycle(i, 0), decay(m, float64(s.move.Cycle))
		for c := 1; c < n; c++ {
			all[c*modes+i] = kept*all[(c-1)*modes+i] + left
		}
	}
	for c := range list {
		list[c].states = all[c*modes : (c+1)*modes]
		list[c].amplitude = s.apart(list[c].states, zero)
	}
	return list
}

// cyclePeak is the highest wave in a cycle that begins with the given states.
func (s *Slosh) cyclePeak(start []complex128) float64 {
	f, states, peak := newWaveFinder(s.modes), slices.Clone(start), 0.0
	for k := range s.stretches {
		peak = max(peak, f.driven(&s.stretches[k], states).height)
	}
	return max(peak, f.undriven(float64(s.move.Cycle-s.move.Time), states).height)
}

// apart is by how much two waves that nothing drives can differ at the most.
func (s *Slosh) apart(a, b []complex128) float64 {
	sum := 0.0
	for i, m := range s.modes {
		sum += cmplx.Abs(a[i]-b[i]) / m.omegaD
	}
	return sum
}
