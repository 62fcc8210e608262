package scenarios

import (
	"math"
	"time"

	"dwellcast/stations"
)

func sectionOf(line *stations.Line, group stations.Group, paced bool, pace time.Duration) SectionBudget {
	s := SectionBudget{Conveyor: group.Conveyor, Paced: paced}
	if group.Conveyor >= 0 {
		conveyor := line.Conveyors[group.Conveyor]
		s.Index, s.Revolution, s.Release = conveyor.Index, conveyor.Revolution, conveyor.Release
		s.Cartons = max(line.Lanes, 1)
		s.Timed = s.Revolution > 0 && s.Release == stations.AtCamZero || line.MasterLimits(group)
	} else {
		s.Cartons = max(line.Stations[group.First].Units, 1)
	}
	for i := group.First; i <= group.Last; i++ {
		s.Stations = append(s.Stations, stationOf(line, i, &s))
	}
	s.Cycle = s.level(max(s.floor(pace, line.Lanes), s.slowest(-1)))
	s.Expected = s.Cycle
	if s.sampled(pace, line.Lanes) {
		s.expect(line, pace)
	}
	s.Rate = perHour(s.Cartons, s.Expected)
	return s
}

func stationOf(line *stations.Line, i int, s *SectionBudget) StationBudget {
	spec := &line.Stations[i]
	st := StationBudget{Station: i}
	for _, part := range spec.Parts {
		st.Parts = append(st.Parts, PartBudget{
			Name: part.Name, Mean: part.Time.Mean(), Low: part.Time.Min(), High: part.Time.Max(), Drawn: !part.Time.Fixed(),
		})
		st.Act += part.Time.Mean()
	}
	st.Needs = s.needs(spec, st.Act)
	st.Ceiling = perHour(s.Cartons, s.level(st.Needs))
	return st
}

// needs is the shortest cycle that an act of that length allows: with the index before it on a conveyor, where a gripper
// that is away holds up the next pick only if no other one is back.
func (s *SectionBudget) needs(spec *stations.Station, act time.Duration) time.Duration {
	switch {
	case s.Conveyor < 0:
		return act
	case spec.Away > 0 && spec.Away < act:
		return max(s.Index+spec.Away, act/time.Duration(max(spec.Units, 1)))
	}
	return s.Index + act
}

// level is the cycle that comes of a need: the need itself, or whole revolutions when the release waits for the cam zero.
func (s *SectionBudget) level(need time.Duration) time.Duration {
	if s.Conveyor < 0 || s.Release != stations.AtCamZero || s.Revolution <= 0 {
		return need
	}
	turns := (need + s.Revolution - 1) / s.Revolution
	return max(turns, 1) * s.Revolution
}

// within is the longest cycle up to the given length: that length, or whole revolutions when the release waits for the cam zero.
func (s *SectionBudget) within(cycle time.Duration) time.Duration {
	if turn := s.level(1); turn > 1 {
		return cycle / turn * turn
	}
	return cycle
}

// floor is the shortest cycle that setting and master allow. A pace period brings lanes cartons.
func (s *SectionBudget) floor(pace time.Duration, lanes int) time.Duration {
	var least time.Duration
	if s.Timed {
		least = s.Revolution
	}
	if s.Paced {
		least = max(least, s.pacePeriod(pace, lanes))
	}
	return least
}

// pacePeriod is the time that the setting gives a cycle of the section.
func (s *SectionBudget) pacePeriod(pace time.Duration, lanes int) time.Duration {
	return pace * time.Duration(s.Cartons) / time.Duration(max(lanes, 1))
}

// slowest is the greatest need of a station other than the given one.
func (s *SectionBudget) slowest(except int) time.Duration {
	var most time.Duration
	for _, st := range s.Stations {
		if st.Station != except {
			most = max(most, st.Needs)
		}
	}
	return most
}

// sampled says that the mean cycle does not follow from the mean times: times are drawn, and the cycle is the longest of several,
// or a whole number of revolutions.
func (s *SectionBudget) sampled(pace time.Duration, lanes int) bool {
	several := len(s.Stations) > 1 || s.floor(pace, lanes) > 0 || s.level(1) > 1
	return s.Drawn() && several
}

// Drawn says that the length of some act on the section differs from cycle to cycle.
func (s *SectionBudget) Drawn() bool {
	for _, st := range s.Stations {
		for _, part := range st.Parts {
			if part.Drawn {
				return true
			}
		}
	}
	return false
}

// perHour is the rate of cartons per cycle, cartons/h.
func perHour(cartons int, cycle time.Duration) float64 {
	if cycle <= 0 {
		return math.Inf(1)
	}
	return float64(cartons) * 3600e9 / float64(cycle)
}
