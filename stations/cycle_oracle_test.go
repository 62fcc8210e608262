package stations_test

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// jammedLine draws one indexing conveyor whose stations jam by cartons, with one attendant, and an erector that misses.
func jammedLine(t *rapid.T) *stations.Line {
	g := &lines{t: t, lanes: 1}
	line := &stations.Line{Title: "jammed", Lanes: 1, Shift: stations.Shift{Length: time.Duration(g.count("minutes", 1, 30)) * time.Minute}}
	line.Crew = stations.Crew{Attendants: 1, Reaction: g.time("reaction", 0, 300)}
	line.Conveyors = []stations.Conveyor{{Index: g.span("index", 1, 12), Revolution: g.span("revolution", 0, 30),
		Release: stations.WhenClear, RunOut: g.count("run-out", 0, 2)}}
	if line.Conveyors[0].Revolution > 0 {
		line.Conveyors[0].Release = stations.Release(g.count("release", 0, 1))
	}
	for i := range g.count("stations", 1, 4) {
		st := stations.Station{Name: g.name(), Kind: stations.Seal, Units: 1,
			Parts: []stations.Part{{Name: "act", Time: g.time("act", 1, 15)}}}
		if i > 0 {
			st.Feed.Pitches = g.count("pitches", 1, 3)
		} else if g.chance("erects", 2) {
			st.Kind, st.Miss.Chance = stations.Erect, g.probability("miss")
		}
		if g.chance("jams", 2) {
			st.Stops = []stations.Stop{{Cause: "jam", Chance: rapid.SampledFrom([]float64{0.01, 0.1, 0.5}).Draw(t, "jam"),
				Clear: g.time("clear", 0, 900)}}
		}
		if g.chance("glue", 2) {
			st.Glue = g.glue(0, i, 1)
			st.Glue.Scraps = false
		}
		line.Stations = append(line.Stations, st)
	}
	if g.chance("set", 2) {
		line.Setting = 3600e9 / float64(g.span("pace", 2, 40))
	}
	t.Log(describe(line))
	return line
}

// jamming is a station as the recursion sees it.
type jamming struct {
	at           int // pitches from the head
	act          random.Source
	reaction     random.Source
	clear        random.Source
	jams, misses random.Trials

	glue  *stations.Glue // nil: it closes none
	laid  int            // how many pitches before
	index time.Duration

	clearAt time.Duration
	jam     bool
}

func jammings(line *stations.Line) []*jamming {
	var list []*jamming
	at := 0
	for _, st := range line.Stations {
		at += st.Feed.Pitches
		j := &jamming{at: at, glue: st.Glue, index: line.Conveyors[0].Index,
			act:      random.NewSource(st.Parts[0].Time, random.Key(st.Name, st.Parts[0].Name)),
			reaction: random.NewSource(line.Crew.Reaction, random.Key(st.Name, "reaction")),
			misses:   random.NewTrials(must(random.PerAct(st.Miss.Chance)), random.Key(st.Name, "miss")),
		}
		for _, stop := range st.Stops {
			j.jams = random.NewTrials(must(random.PerAct(stop.Chance)), random.Key(st.Name, "stop "+stop.Cause))
			j.clear = random.NewSource(stop.Clear, random.Key(st.Name, "clear "+stop.Cause))
			j.jams.Reset(1, 0)
			j.clear.Reset(1, 0)
		}
		j.act.Reset(1, 0)
		j.reaction.Reset(1, 0)
		j.misses.Reset(1, 0)
		list = append(list, j)
		if st.Glue != nil {
			j.laid = at - list[st.Glue.From].at
		}
	}
	return list
}

// cycles computes such a line without any clock: each cycle begins when the pace has run out, the master is back and the last
// station was clear; the attendant goes from jam to jam in the order in which they happen, in flow order at one instant.
// It returns when each cycle begins and how many cartons leave by the end.
func cycles(line *stations.Line) (begins []time.Duration, good int64) {
	list := jammings(line)
	belt := line.Conveyors[0]
	loaded := make([]bool, list[len(list)-1].at+1)
	spoiled := make([]bool, len(loaded))
	end := line.Shift.Length
	for begin := time.Duration(0); begin < end; {
		begins = append(begins, begin)
		copy(loaded[1:], loaded)
		copy(spoiled[1:], spoiled)
		spoiled[0] = false
		loaded[0] = true
		stands := begin + belt.Index
		var calls []*jamming
		for _, j := range list {
			j.clearAt, j.jam = stands, false
			if !loaded[j.at] {
				continue
			}
			j.jam = j.jams.Hit()
			loaded[j.at] = !j.misses.Hit()
			j.clearAt += j.act.Next()
			spoiled[j.at] = spoiled[j.at] || j.tooLate(begins)
			if j.jam {
				calls = append(calls, j)
			}
		}
		attend(calls)
		next := max(begin+belt.Revolution, begin+line.Pace())
		if belt.Release == stations.AtCamZero {
			next = begin + line.Pace()
		}
		for _, j := range list {
			next = max(next, j.clearAt)
		}
		if last := list[len(list)-1]; loaded[last.at] && !spoiled[last.at] && last.clearAt <= end {
			good++
		}
		if belt.Release == stations.AtCamZero {
			next = (next + belt.Revolution - 1) / belt.Revolution * belt.Revolution
		}
		begin = next
	}
	return begins, good
}

// tooLate says that the glue which the station closes in the last of the cycles was laid too long before; j.clearAt is the end of its act.
func (j *jamming) tooLate(begins []time.Duration) bool {
	if j.glue == nil || len(begins) <= j.laid {
		return false
	}
	now, laid := begins[len(begins)-1], begins[len(begins)-1-j.laid]
	if j.glue.Closes == 0 {
		return now-laid > j.glue.Open
	}
	return j.clearAt-j.index-laid > j.glue.Open
}

// attend lets the attendant clear the jams of one cycle.
func attend(calls []*jamming) {
	slices.SortStableFunc(calls, func(a, b *jamming) int { return int(a.clearAt - b.clearAt) })
	free := time.Duration(0)
	for _, j := range calls {
		free = max(free, j.clearAt) + j.reaction.Next() + j.clear.Next()
		j.clearAt = free
	}
}

// followsRecursion holds cycles and good cartons of a line, with repeats and without, against the recursion, and returns a simulation without
// repeats and the instants at which cycles begin.
func followsRecursion(t *rapid.T, line *stations.Line) (*stations.Simulation, []time.Duration) {
	begins, good := cycles(line)
	s := newSimulation(t, line)
	for range 2 { // with repeats and without
		tally := shift(t, s, 1, 0)
		if got, want := tally.Flow[stations.Slots], int64(len(begins)); got != want {
			t.Errorf("%d cycles simulated, %d computed", got, want)
		}
		if got := tally.Flow[stations.Good]; got != good {
			t.Errorf("%d good cartons simulated, %d computed", got, good)
		}
		s.NoRepeats = true
	}
	return s, begins
}

func TestConveyorFollowsTheRecursion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := jammedLine(t)
		s, begins := followsRecursion(t, line)
		works := map[time.Duration]bool{}
		first := unitOf{line.Stations[0].Name, 0}
		for _, x := range traced(t, s, 1, 0)[first] {
			works[x.From] = works[x.From] || x.State == stations.Working
		}
		for k, begin := range begins { // a cycle begins with work on the first pitch
			if !works[begin] {
				t.Fatalf("no cycle begins at %v, where cycle %d should", begin, k+1)
			}
		}
	})
}
