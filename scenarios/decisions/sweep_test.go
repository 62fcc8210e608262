package decisions_test

import (
	"errors"
	"math"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// sweep runs a sweep over one range.
func sweep(t testing.TB, f *scenarios.File, figure string, replications int, ranges ...string) *decisions.Sweep {
	t.Helper()
	return sweepSeed(t, 1, f, figure, replications, ranges...)
}

func sweepSeed(t testing.TB, seed uint64, f *scenarios.File, figure string, replications int, ranges ...string) *decisions.Sweep {
	t.Helper()
	spec := decisions.SweepSpec{Replications: replications}
	var err error
	if spec.Figure, err = decisions.ParseFigure(figure, f); err != nil {
		t.Fatal(err)
	}
	for _, text := range ranges {
		v, err := decisions.ParseVary(text)
		if err != nil {
			t.Fatal(err)
		}
		spec.Vary = append(spec.Vary, v)
	}
	answer, err := decisions.RunSweep(background, lab(scenarios.Options{Seed: seed}), f, seed, spec)
	if err != nil {
		t.Fatal(err)
	}
	return answer
}

// A grid holds the same figures as a sweep over either of its parameters.
func TestGridAgreesWithItsEdges(t *testing.T) {
	f := example(t, "bench-line")
	grid := sweep(t, f, "robot.starved", 20, "sealer.dwell=1.1s..1.5s/3", "robot.cycle=1.5s..1.9s/2")
	edge := sweep(t, f, "robot.starved", 20, "sealer.dwell=1.1s..1.5s/3")
	for i, p := range edge.Points {
		if got := grid.Points[2*i].Figure; got != p.Figure {
			t.Errorf("at %s: %v in the grid, %v alone", p.Values[0], got, p.Figure)
		}
	}
}

// Every figure that is offered can be taken out of a forecast.
func TestFigures(t *testing.T) {
	f := example(t, "oat-drink")
	for _, name := range []string{"good_rate", "good_per_shift", "target_chance", "stops_per_hour", "crew_load", "setting_share", "master_share",
		"sealer.starved", "sealer.stopped", "robot.bottleneck_share", "sealer.rejects", "sealer.rejected", "sealer.jaw fault", "sealer.jaw fault.stops"} {
		s := sweep(t, f, name, 3, "sealer.dwell=1.2s,1.3s")
		if got := s.Points[0].Figure.Mean; math.IsNaN(got) || got < 0 {
			t.Errorf("%s is %v", name, got)
		}
	}
	if _, err := decisions.ParseFigure("god_rate", f); hintOf(err) != "did you mean good_rate?" {
		t.Errorf("hint %q", hintOf(err))
	}
}

func hintOf(err error) string {
	if m, ok := errors.AsType[*decisions.Mistake](err); ok {
		return m.Hint
	}
	return ""
}

func TestRangesRefused(t *testing.T) {
	for _, text := range []string{"", "sealer.dwell", "sealer.dwell=", "sealer.dwell=1s..2s/1", "sealer.dwell=2s..1s/5", "sealer.dwell=1s..1s/3",
		"sealer.dwell=1s..2mm/3", "sealer.dwell=1..2s/3", "sealer.dwell=1s", "sealer.dwell=1s..2s/100000", "sealer.dwell=1s..2 parsecs/3"} {
		if _, err := decisions.ParseVary(text); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

// A 40 x 40 sweep of the bench line with 100 shifts a point should take less than a minute on two processors.
func BenchmarkSweep40x40(b *testing.B) {
	f := example(b, "bench-line")
	for b.Loop() {
		sweep(b, f, "good_rate", 100, "sealer.dwell=0.6s..1.6s/40", "robot.cycle=1s..2s/40")
	}
}
