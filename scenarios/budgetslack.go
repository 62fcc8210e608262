package scenarios

import (
	"math"
	"time"
)

// period is the time per carton of a section at mean times, ns.
func (s *SectionBudget) period() float64 { return float64(s.Cycle) / float64(s.Cartons) }

// findRate finds the slowest section, and what sets its pace.
func (b *Budget) findRate() {
	b.Rate, b.Limit = math.Inf(1), Limit{ByNothing, -1}
	slowest := b.slowestSection(-1)
	for _, s := range b.Sections {
		b.Rate = min(b.Rate, s.Rate)
	}
	if slowest >= 0 && b.Sections[slowest].Cycle > 0 {
		b.Limit = b.Sections[slowest].limit(b)
	}
}

// slowestSection is the section with the longest period other than the given one, the paced one first among equals; -1 if
// there is no other.
func (b *Budget) slowestSection(except int) int {
	at := -1
	for k := range b.Sections {
		s := &b.Sections[k]
		if k == except {
			continue
		}
		if at < 0 || s.period() > b.Sections[at].period() || s.period() == b.Sections[at].period() && s.Paced {
			at = k
		}
	}
	return at
}

// limit says what sets the cycle of the section; when several need the same, the setting comes first, then the master.
func (s *SectionBudget) limit(b *Budget) Limit {
	floor := s.floor(b.Pace, b.Line.Lanes)
	if s.level(s.slowest(-1)) > s.level(floor) {
		for _, st := range s.Stations {
			if st.Needs == s.slowest(-1) {
				return Limit{ByStation, st.Station}
			}
		}
	}
	switch {
	case s.Cycle > floor:
		return Limit{ByCamZero, -1}
	case s.Timed && floor == s.Revolution && !(s.Paced && s.pacePeriod(b.Pace, b.Line.Lanes) == floor):
		return Limit{ByMaster, -1}
	case floor > 0:
		return Limit{BySetting, -1}
	}
	return Limit{ByNothing, -1}
}

// findSlack gives every station the cycle that the line's rate leaves it, and its slack or relief.
func (b *Budget) findSlack() {
	slowest := b.slowestSection(-1)
	for k := range b.Sections {
		s := &b.Sections[k]
		cycle := s.within(time.Duration(b.Sections[slowest].period()*float64(s.Cartons) + 0.5))
		for i := range s.Stations {
			st := &s.Stations[i]
			st.Cycle = cycle
			st.Slack = max(cycle-st.Needs, 0)
			st.Critical = b.Limit == Limit{ByStation, st.Station}
			if st.Critical {
				st.Relief = st.Needs - b.others(k, st.Station)
			}
			b.findTurns(s, st)
		}
	}
}

// others is the cycle of section k without the demands of one station, as long as the other sections allow.
func (b *Budget) others(k, except int) time.Duration {
	s := &b.Sections[k]
	cycle := s.level(max(s.floor(b.Pace, b.Line.Lanes), s.slowest(except)))
	if next := b.slowestSection(k); next >= 0 {
		cycle = max(cycle, s.within(time.Duration(b.Sections[next].period()*float64(s.Cartons))))
	}
	return cycle
}

// findTurns finds the value of each part at which the critical station changes.
func (b *Budget) findTurns(s *SectionBudget, st *StationBudget) {
	spec := &b.Line.Stations[st.Station]
	for i := range st.Parts {
		part := &st.Parts[i]
		rest := st.Act - part.Mean
		if !st.Critical {
			part.Turns = s.longestAct(spec.Away, spec.Units, st.Cycle) - rest
			continue
		}
		part.Turns = max(s.longestAct(spec.Away, spec.Units, st.Needs-st.Relief)-rest, 0)
	}
}

// longestAct is the act that a cycle leaves time for.
func (s *SectionBudget) longestAct(away time.Duration, units int, cycle time.Duration) time.Duration {
	switch {
	case s.Conveyor < 0:
		return cycle
	case away > 0 && s.Index+away <= cycle:
		return max(cycle*time.Duration(max(units, 1)), away)
	}
	return cycle - s.Index
}

// findCeiling finds the lowest of the stations' ceilings, and of the masters'.
func (b *Budget) findCeiling() {
	b.Ceiling, b.Next = math.Inf(1), -1
	b.each(func(_ *SectionBudget, st *StationBudget) {
		if st.Ceiling < b.Ceiling {
			b.Ceiling, b.Next = st.Ceiling, st.Station
		}
	})
	for _, s := range b.Sections {
		if s.Timed {
			if r := perHour(s.Cartons, s.Revolution); r < b.Ceiling {
				b.Ceiling, b.Next = r, -1
			}
		}
	}
}
