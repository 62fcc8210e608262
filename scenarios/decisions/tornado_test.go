package decisions_test

import (
	"math"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// A line that leaves nothing to chance: with a dwell of 1.40 s the sealer's cycle of 0.60 + 0.02 + 0.28 + 1.40 + 0.28 = 2.58 s
// outlasts the pace of 2.4 s, with 1.10 s it does not; the robot's 1.5 s never matters. The decision moves with the dwell only.
func TestTornadoUndisturbed(t *testing.T) {
	f := undisturbed(t, "sealer.dwell={low: 1.10 s, likely: 1.15 s, high: 1.40 s, source: guess}",
		"robot.cycle={low: 1.4 s, value: 1.5 s, high: 1.6 s, source: supplier}", "filler.after.pitches={value: 2, source: measured}", "target=11500 cartons")
	l := lab(scenarios.Options{Seed: 1, Confidence: 0.95})
	q, spec := decisions.LineQuestion(background, l, f, decisions.TornadoSpec{Replications: 2})
	tornado, err := decisions.RunTornado(background, q, 1, spec)
	if err != nil {
		t.Fatal(err)
	}
	if len(tornado.Swings) != 2 || len(tornado.Fixed) != 1 {
		t.Fatalf("%d swings and %d without a range, want 2 and 1", len(tornado.Swings), len(tornado.Fixed))
	}
	dwell, robot := tornado.Swings[0], tornado.Swings[1]
	if dwell.Path != "sealer.dwell" || dwell.Low.Shows || !dwell.High.Shows || dwell.Low.Moves || !dwell.High.Moves {
		t.Errorf("dwell: %+v", dwell)
	}
	want := 2.4/2.58 - 1
	if got := dwell.High.Change.Mean / tornado.Base.Figure.Mean; math.Abs(got-want) > 5e-4 { // up to 5 cartons of a shift are on the line
		t.Errorf("the long dwell changes the rate by %g, want %g", got, want)
	}
	if robot.Moves() || math.Abs(robot.Width()) > 0.25 { // a carton or two at the end of the shift
		t.Errorf("robot: %+v", robot)
	}
}

// A quantity that several lines have alike is one input; one that a candidate changes is its own.
func TestInputsAreGrouped(t *testing.T) {
	a := undisturbed(t, "sealer.dwell={low: 1.10 s, likely: 1.15 s, high: 1.40 s}", "sealer.lag={value: 0.02 s, source: measured}")
	b, err := a.With("sealer.dwell={low: 1 s, likely: 1.1 s, high: 1.2 s}")
	if err != nil {
		t.Fatal(err)
	}
	inputs := decisions.InputsOf([]string{"a", "b", "c"}, []*scenarios.File{a, b, a}, nil)
	var names []string
	for _, i := range inputs {
		names = append(names, i.Name())
	}
	want := map[string]bool{"sealer.lag": true, "sealer.dwell (a, c)": true, "sealer.dwell (b)": true}
	if len(names) != len(want) {
		t.Errorf("inputs %q", names)
	}
	for _, name := range names {
		if !want[name] {
			t.Errorf("unexpected input %q", name)
		}
	}
}
