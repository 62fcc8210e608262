package stations_test

import (
	"testing"
	"time"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

func fixed(seconds float64) random.Sampler {
	return random.Fixed(time.Duration(seconds*1e9 + 0.5))
}

func drawn(t testing.TB) func(random.Distribution, error) random.Sampler {
	return func(law random.Distribution, err error) random.Sampler {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return random.Drawn(law)
	}
}

// benchLine is the bench line: one indexing conveyor with an erector, a filler, a sealer and a robot.
func benchLine(t testing.TB, setting, dwell float64) *stations.Line {
	jam := func(acts, clear float64) []stations.Stop {
		return []stations.Stop{{Cause: "jam", Chance: 1 / acts, Clear: drawn(t)(random.Lognormal(clear, 0.9469))}}
	}
	on := func(pitches int) stations.Feed { return stations.Feed{Conveyor: 0, Pitches: pitches} }
	return &stations.Line{
		Title: "bench line", Setting: setting, Lanes: 1,
		Shift:     stations.Shift{Length: 8 * time.Hour},
		Crew:      stations.Crew{Attendants: 1, Reaction: drawn(t)(random.Exponential(20))},
		Conveyors: []stations.Conveyor{{Index: 600 * time.Millisecond, Revolution: 1900 * time.Millisecond}},
		Stations: []stations.Station{
			{Name: "erector", Kind: stations.Erect, Feed: on(0), Units: 1, Parts: []stations.Part{{Name: "erect", Time: fixed(0.9)}},
				Miss: stations.Miss{Chance: 0.004}, Stops: jam(900, 60)},
			{Name: "filler", Kind: stations.Fill, Feed: on(2), Units: 1, ActsEmpty: true,
				Parts: []stations.Part{{Name: "fill", Time: fixed(1.3)}}, Stops: jam(2500, 90)},
			{Name: "sealer", Kind: stations.Seal, Feed: on(2), Units: 1, Reject: 0.002, Stops: jam(1500, 120),
				Parts: []stations.Part{{Name: "lag", Time: fixed(0.02)}, {Name: "close", Time: fixed(0.28)},
					{Name: "dwell", Time: fixed(dwell)}, {Name: "open", Time: fixed(0.28)}}},
			{Name: "robot", Kind: stations.Offload, Feed: on(2), Units: 1,
				Parts: []stations.Part{{Name: "cycle", Time: fixed(1.5)}}, Stops: jam(3000, 75)},
		},
	}
}

// tandem is a serial line of free-running stations with exponential times and equal buffers.
func tandem(t testing.TB, n, buffer int, length time.Duration) *stations.Line {
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: length}, Crew: stations.Crew{Reaction: fixed(0)}}
	for i := range n {
		st := stations.Station{Name: string(rune('A' + i)), Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1},
			Parts: []stations.Part{{Name: "cycle", Time: drawn(t)(random.Exponential(1))}}}
		if i > 0 {
			st.Feed.Buffer = &stations.Buffer{Capacity: buffer}
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}
