package reports_test

import (
	"time"

	"dwellcast/scenarios"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

func fixed(name string, d time.Duration) stations.Part {
	return stations.Part{Name: name, Time: random.Fixed(d)}
}

func drawn(law random.Distribution, err error) random.Sampler {
	if err != nil {
		panic(err)
	}
	return random.Drawn(law)
}

// inventedLine is an oat-drink line with a few oddities.
func inventedLine() *stations.Line {
	ms := time.Millisecond
	return &stations.Line{
		Title: "Oat drink, 64 fl oz cartons, one lane", Setting: 1450, Lanes: 1,
		Shift: stations.Shift{Length: 8 * time.Hour, Planned: []stations.Window{
			{Name: "start-up", From: 0, To: 15 * time.Minute}, {Name: "break", From: 4 * time.Hour, To: 4*time.Hour + 20*time.Minute}}},
		Crew:      stations.Crew{Attendants: 1, Reaction: drawn(random.Lognormal(20, 0.7))},
		Conveyors: []stations.Conveyor{{Index: 600 * ms, Revolution: 2000 * ms}},
		Stations: []stations.Station{
			{Name: "erector", Kind: stations.Erect, Units: 1, Turns: 3, Feed: stations.Feed{Conveyor: 0},
				Parts:     []stations.Part{fixed("bottom seal", 850*ms)},
				Miss:      stations.Miss{Chance: 0.004},
				Materials: []stations.Material{{Name: "blanks", Holds: 500, Low: 80, Reload: 400, Takes: random.Fixed(35 * time.Second)}},
				Stops: []stations.Stop{{Cause: "blank jam", Chance: 1.0 / 900, Clear: drawn(random.Lognormal(55, 0.9)), Scrap: 1},
					{Cause: "gearbox", Trigger: stations.ByRunning, Every: drawn(random.Exponential(9e6)), Clear: random.Fixed(time.Hour)}}},
			{Name: "filler", Kind: stations.Fill, Units: 1, Feed: stations.Feed{Conveyor: 0, Pitches: 2}, ActsEmpty: true,
				Parts: []stations.Part{fixed("nozzle and piston", 1400*ms)}},
			{Name: "sealer", Kind: stations.Seal, Units: 1, Feed: stations.Feed{Conveyor: 0, Pitches: 2}, Reject: 0.002,
				Parts: []stations.Part{fixed("close", 280*ms), {Name: "dwell", Time: drawn(random.Triangular(0.9, 0.95, 1.3))}, fixed("open", 280*ms)},
				Stops: []stations.Stop{{Cause: "jaw jam", Chance: 1.0 / 1500, Clear: drawn(random.Lognormal(120, 0.9))}}},
			{Name: "robot", Kind: stations.Offload, Units: 1, Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 24, Transit: 4 * time.Second}},
				Parts:     []stations.Part{fixed("cycle", 2100*ms)},
				Materials: []stations.Material{{Name: "pallet places", Holds: 120, Reload: 120, Takes: random.Fixed(25 * time.Second)}}},
		},
	}
}

func inventedBudget(change func(*stations.Line)) *scenarios.Budget {
	line := inventedLine()
	if change != nil {
		change(line)
	}
	return scenarios.BudgetOf(line)
}
