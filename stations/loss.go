package stations

import (
	"math"
	"slices"
	"time"
)

// Ideal is the number of whole cartons that the setting would make in the time, if nothing were lost: setting x time.
// Without a setting the paced section's own mean cycle stands in for it.
func (s *Simulation) Ideal(length time.Duration) int64 {
	if s.Line.Setting > 0 {
		return int64(math.Floor(s.Line.Setting*length.Hours() + 1e-9))
	}
	return int64(length/s.pace) * int64(s.perCycle)
}

// Losses accounts for every carton between ideal and good, in whole cartons per reason: ideal = good + their sum. The
// places never offered for a carton are shared out by the time lost beyond the pace, those offered by what became of them.
func (s *Simulation) Losses(t *Tally, length time.Duration) []int64 {
	perCarton := float64(s.pace) / float64(s.perCycle)
	lost := make([]float64, len(t.Lost))
	for r, ns := range t.Lost {
		lost[r] = float64(ns) / perCarton
	}
	whole := apportion(lost)
	rest := s.Ideal(length) - t.Flow[Slots]
	for r := range whole {
		rest -= whole[r]
		whole[r] += t.Gone[r]
	}
	whole[s.reasons.of(LeftOnLine, -1, 0)] += t.Flow[LeftPast]
	if s.Line.Setting > 0 {
		whole[s.reasons.of(LeftOnLine, -1, 0)] += rest // the last cycle was cut short
	} else {
		whole[s.reasons.of(NominalPace, -1, 0)] += rest
	}
	return whole
}

// apportion rounds the values to whole numbers that sum to their rounded sum, by largest remainders; of equal remainders the
// first goes first.
func apportion(values []float64) []int64 {
	whole := make([]int64, len(values))
	order := make([]int, len(values))
	var sum float64
	var given int64
	for i, v := range values {
		whole[i] = int64(math.Floor(v))
		given += whole[i]
		sum += v
		order[i] = i
	}
	remainder := func(i int) float64 { return values[i] - float64(whole[i]) }
	slices.SortStableFunc(order, func(a, b int) int {
		switch ra, rb := remainder(a), remainder(b); {
		case ra > rb:
			return -1
		case ra < rb:
			return 1
		}
		return 0
	})
	for k := int64(0); k < int64(math.Round(sum))-given; k++ {
		whole[order[k]]++
	}
	return whole
}
