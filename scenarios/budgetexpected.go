package scenarios

import (
	"time"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// sampledCycles is how many cycles are drawn for the mean of a cycle with drawn times; its standard error is then the
// standard deviation of a cycle over 200.
const sampledCycles = 40_000

// expect finds the mean cycle, the longest of the stations' acts, setting and master, by drawing cycles with a fixed seed; and
// where the release waits for the cam zero, each station's ceiling, which mean times would not give.
func (s *SectionBudget) expect(line *stations.Line, pace time.Duration) {
	streams := s.streams(line)
	floor, sum, alone := s.floor(pace, line.Lanes), 0.0, make([]float64, len(s.Stations))
	for range sampledCycles {
		cycle := floor
		for i, st := range s.Stations {
			spec := &line.Stations[st.Station]
			need := s.needs(spec, drawAct(spec, streams[i]))
			alone[i] += float64(s.level(need))
			cycle = max(cycle, need)
		}
		sum += float64(s.level(cycle))
	}
	s.Expected = time.Duration(sum/sampledCycles + 0.5)
	for i := range s.Stations {
		if s.level(1) > 1 {
			s.Stations[i].Ceiling = perHour(s.Cartons, time.Duration(alone[i]/sampledCycles+0.5))
		}
	}
}

// streams gives every part of every station its own luck.
func (s *SectionBudget) streams(line *stations.Line) [][]random.Stream {
	streams := make([][]random.Stream, len(s.Stations))
	for i, st := range s.Stations {
		spec := &line.Stations[st.Station]
		streams[i] = make([]random.Stream, len(spec.Parts))
		for k, part := range spec.Parts {
			streams[i][k].Seed(random.Key(spec.Name, part.Name), 1, 0)
		}
	}
	return streams
}

func drawAct(spec *stations.Station, streams []random.Stream) time.Duration {
	var act time.Duration
	for k, part := range spec.Parts {
		act += part.Time.Draw(&streams[k])
	}
	return act
}
