package decisions_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// row finds what an explanation says of a thing.
func row(t *rapid.T, x *decisions.Explanation, name string) decisions.Sides {
	for _, r := range x.Elasticities {
		if r.Name == name {
			return r.Sides
		}
	}
	t.Fatalf("no row %q in %+v", name, x.Elasticities)
	return decisions.Sides{}
}

// Machines along a conveyor, without chance, make a carton every index and act of the slowest of them, or every pace period of the
// setting. So what one percent faster brings, and slower costs, is known for each, kinks and all: many of these lines have several
// that are slowest at once. Counted are whole cartons.
func TestSidesOfMachinesAlongAConveyor(outer *testing.T) {
	names := []string{"pace of the setting", "conveyor (index)", "a", "b", "c"}
	cycle := func(times []float64) float64 { return max(times[0], times[1]+max(times[2], times[3], times[4])) }
	rapid.Check(outer, func(t *rapid.T) {
		index := rapid.SampledFrom([]float64{0.4, 0.6, 1.1}).Draw(t, "index")
		act := math.Round(rapid.Float64Range(1, 3).Draw(t, "act")*1e3) / 1e3
		share := rapid.SampledFrom([]float64{1, 1, 0.997, 0.99, 0.8})
		times := []float64{(index + act) * share.Draw(t, "pace"), index, act * share.Draw(t, "a"), act * share.Draw(t, "b"), act * share.Draw(t, "c")}
		text := fmt.Sprintf("setting: %.9f cartons/h\nshift: {length: 8 h}\nconveyor: {index: %g s}\nstations:\n  - {name: a, kind: machine, cycle: %.9f s}\n"+
			"  - {name: b, kind: machine, cycle: %.9f s, after: {pitches: 1}}\n  - {name: c, kind: machine, cycle: %.9f s, after: {pitches: 1}}\n",
			3600/times[0], index, times[2], times[3], times[4])
		x, err := decisions.Explain(background, lab(scenarios.Options{Seed: 1, Workers: 1}), read(outer, text), 1, decisions.ExplainSpec{Replications: 2})
		if err != nil {
			t.Fatal(err)
		}
		span := math.Log(1.01)
		tolerance := 2 / (8 * 3600 / cycle(times) * span)
		var faster, slower float64
		for i, name := range names {
			brings := math.Log(cycle(times)/cycle(with(times, i, 1/1.01))) / span
			costs := math.Log(cycle(with(times, i, 1.01))/cycle(times)) / span
			faster, slower = faster+brings, slower+costs
			got := row(t, x, name)
			if math.Abs(got.Faster.Mean-brings) > tolerance || math.Abs(got.Slower.Mean-costs) > tolerance {
				t.Fatalf("%v: %s faster brings %v, want %.4f; slower costs %v, want %.4f", times, name, got.Faster, brings, got.Slower, costs)
			}
			if clear := math.Abs(brings-costs) - 0.1; math.Abs(clear) > 2*tolerance && got.Kink != (clear > 0) {
				t.Fatalf("%v: %s: kink %v, but the sides are %.4f and %.4f", times, name, got.Kink, brings, costs)
			}
		}
		if most := max(math.Abs(1-faster), math.Abs(1-slower)) - 0.1; math.Abs(most) > 6*tolerance && x.Apart != (most > 0) {
			t.Fatalf("%v: apart %v, but the rows sum to %.3f and %.3f", times, x.Apart, faster, slower)
		}
		if x.BySpeed != nil && x.BySpeed.Faster.Mean <= 0 {
			t.Fatalf("%v: %s is named, whose speed brings nothing", times, x.BySpeed.Name)
		}
	})
}

// with is the times with one of them k times as long.
func with(times []float64, i int, k float64) []float64 {
	changed := append([]float64{}, times...)
	changed[i] *= k
	return changed
}

// A setting at the limit of the sealer, which is where pace puts it: 0.60 s index and 1.80 s seal fill the pace period of 2.4 s.
// Neither brings a carton by being faster alone, and each costs its whole share when slower.
func TestSettingAtTheLimit(t *testing.T) {
	x := explained(t, undisturbed(t, "sealer.dwell=1.22 s"), decisions.ExplainSpec{Replications: 2})
	want := map[string][2]float64{"pace of the setting": {0, 1}, "sealer": {0, 1.80 / 2.4}, "conveyor (index and revolution)": {0, 0.60 / 2.4}}
	for _, r := range x.Elasticities {
		w := want[r.Name]
		if math.Abs(r.Faster.Mean-w[0]) > 0.02 || math.Abs(r.Slower.Mean-w[1]) > 0.02 || r.Kink != (w[1] > 0) {
			t.Errorf("%s: faster %v, slower %v, kink %v; want %v", r.Name, r.Faster, r.Slower, r.Kink, w)
		}
	}
	if !x.Apart || x.BySpeed != nil {
		t.Errorf("apart %v, by speed %v", x.Apart, x.BySpeed)
	}
}
