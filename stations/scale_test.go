package stations_test

import (
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// slower returns the line with every time twice as long, and the setting half.
func slower(line *stations.Line) *stations.Line {
	twice := *line
	twice.Setting /= 2
	twice.Shift.Length *= 2
	twice.Shift.Planned = slices.Clone(line.Shift.Planned)
	for i := range twice.Shift.Planned {
		twice.Shift.Planned[i].From *= 2
		twice.Shift.Planned[i].To *= 2
	}
	twice.Crew.Reaction = line.Crew.Reaction.Scale(2)
	twice.Conveyors = slices.Clone(line.Conveyors)
	for i := range twice.Conveyors {
		twice.Conveyors[i].Index *= 2
		twice.Conveyors[i].Revolution *= 2
	}
	twice.Stations = slices.Clone(line.Stations)
	for i := range twice.Stations {
		slowDown(&twice.Stations[i])
	}
	return &twice
}

func slowDown(st *stations.Station) {
	st.Away *= 2
	st.StandLimit *= 2
	if st.Glue != nil {
		glue := *st.Glue
		glue.Open *= 2
		st.Glue = &glue
	}
	if b := st.Feed.Buffer; b != nil {
		st.Feed.Buffer = &stations.Buffer{Capacity: b.Capacity, Transit: 2 * b.Transit}
	}
	st.Parts = slices.Clone(st.Parts)
	for i := range st.Parts {
		st.Parts[i].Time = st.Parts[i].Time.Scale(2)
	}
	st.Stops = slices.Clone(st.Stops)
	for i := range st.Stops {
		slowDownStop(&st.Stops[i])
	}
	if st.Miss.Stop != nil {
		stop := *st.Miss.Stop
		slowDownStop(&stop)
		st.Miss.Stop = &stop
	}
	st.Materials = slices.Clone(st.Materials)
	for i := range st.Materials {
		st.Materials[i].Takes = st.Materials[i].Takes.Scale(2)
	}
}

func slowDownStop(s *stations.Stop) {
	s.Every, s.Clear = s.Every.Scale(2), s.Clear.Scale(2)
}

// Where every time is twice as long, the counts are the same and every account of time doubles. Only times that are not
// rounded are drawn, so that this holds to the nanosecond.
func TestScalingAllTimesScalesTheAccount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := randomLine(t, true)
		want := shift(t, newSimulation(t, line), 3, 1)
		s := newSimulation(t, slower(line))
		got := s.NewTally()
		got.Copy(shift(t, s, 3, 1))
		times := [][]int64{got.States, got.Lost, got.Awaited, got.Cleared, got.Starved, got.Blocked, got.Sole, got.Shifting, got.CrewBusy}
		for k := range line.Sections() {
			area := *got.Buffer(k, stations.ContentSeconds)*int64(time.Second) + *got.Buffer(k, stations.ContentNanos)
			*got.Buffer(k, stations.ContentSeconds), *got.Buffer(k, stations.ContentNanos) = area/2/int64(time.Second), area/2%int64(time.Second)
			for _, account := range []stations.BufferCount{stations.Empty, stations.Full} {
				times = append(times, []int64{})
				*got.Buffer(k, account) /= 2
			}
		}
		for _, view := range times {
			for i, ns := range view {
				if ns%2 != 0 {
					t.Fatalf("an account of time is odd: %v", time.Duration(ns))
				}
				view[i] /= 2
			}
		}
		if diff := cmp.Diff(got, want, cmpopts.IgnoreUnexported(stations.Tally{})); diff != "" {
			t.Fatalf("half of the slower line's account (-got +want):\n%s", diff)
		}
	})
}

// certain takes all chance out of a line.
func certain(line *stations.Line) {
	sure := func(s random.Sampler) random.Sampler { return random.Fixed(s.Mean()) }
	line.Crew.Reaction = sure(line.Crew.Reaction)
	for i := range line.Stations {
		st := &line.Stations[i]
		st.Miss.Chance, st.Reject = 0, 0
		for k := range st.Parts {
			st.Parts[k].Time = sure(st.Parts[k].Time)
		}
		for k := range st.Materials {
			st.Materials[k].Takes = sure(st.Materials[k].Takes)
		}
		for k := range st.Stops {
			stop := &st.Stops[k]
			stop.Every, stop.Clear = sure(stop.Every), sure(stop.Clear)
			if stop.Trigger == stations.ByCartons {
				stop.Chance, stop.Acts = 0, must(random.Constant(float64(7+13*k)))
			}
		}
	}
}

func TestNoChanceNoVariance(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		certain(line)
		s := newSimulation(t, line)
		want := s.NewTally()
		want.Copy(shift(t, s, 1, 0))
		sameTally(t, "another replication", shift(t, s, 1, 1), want)
		sameTally(t, "another seed", shift(t, s, 99, 4), want)
	})
}
