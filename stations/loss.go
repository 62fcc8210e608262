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
	perCarton := s.perCarton()
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
	fillUp(whole, int(s.reasons.of(LeftOnLine, -1, 0)))
	return whole
}

// Batch accounts for the cartons of a stretch of a long run, from one moment to another: ideal = good + their sum, exactly. The ideal is
// the difference of what the setting would have made by either moment, so that rounding does not add up over batches. What was on the
// line at the end more than at the beginning is a row of its own, below 0 where it was less. What rounding and the cycles that either
// moment cuts leave over stands there too; without a setting, it is what act times did about their mean.
func (s *Simulation) Batch(t *Tally, from, to time.Duration) (ideal int64, losses []int64) {
	ideal = s.Ideal(to) - s.Ideal(from)
	perCarton := s.perCarton()
	lost := make([]float64, len(t.Lost))
	for r, ns := range t.Lost {
		lost[r] = float64(ns) / perCarton
	}
	losses = apportion(lost)
	rest := ideal - t.Flow[Good]
	for r := range losses {
		losses[r] += t.Gone[r]
		rest -= losses[r]
	}
	if s.Line.Setting == 0 {
		more := t.Flow[Entered] - t.Flow[Good] - t.Flow[Bad] - t.Flow[Scrapped]
		losses[s.reasons.of(NominalPace, -1, 0)] += rest - more
		rest = more
	}
	losses[s.reasons.of(ContentChange, -1, 0)] = rest
	return ideal, losses
}

// perCarton is the time at the pace that one place for a carton takes, ns.
func (s *Simulation) perCarton() float64 {
	perCarton := float64(s.pace) / float64(s.perCycle)
	if m, ok := s.sections[s.pacedAt].(*machine); ok { // each unit loses time of its own
		perCarton *= float64(len(m.units))
	}
	return perCarton
}

// fillUp takes from the largest rows what a row is short of 0. That happens to the cartons left on the line, as the last
// cycle offers places that the ideal has no time for. A row still negative says that more was made than the ideal.
func fillUp(rows []int64, short int) {
	for rows[short] < 0 {
		largest := 0
		for r := range rows {
			if rows[r] > rows[largest] {
				largest = r
			}
		}
		if rows[largest] <= 0 {
			return
		}
		rows[largest]--
		rows[short]++
	}
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
