package decisions_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/stats"
)

// compared compares cases, written as for --case, with a base.
func compared(t testing.TB, base *scenarios.File, o scenarios.Options, spec decisions.CompareSpec, texts ...string) *decisions.Comparison {
	t.Helper()
	var cases []scenarios.Case
	for _, text := range texts {
		c, err := scenarios.ParseCase(base, text)
		if err != nil {
			t.Fatal(err)
		}
		cases = append(cases, c)
	}
	answer, err := decisions.Compare(background, lab(o), base, cases, o.Seed, spec)
	if err != nil {
		t.Fatal(err)
	}
	return answer
}

// own leaves out what depends on how many cases there are, and what is not shown.
var own = []cmp.Option{
	cmpopts.IgnoreFields(decisions.CaseResult{}, "Difference", "AdjustedP", "Shows", "Needed"),
	cmpopts.IgnoreUnexported(decisions.CaseResult{}), cmpopts.EquateNaNs(),
}

// Adding a case, or a worker, changes no number of the other cases, even where each case takes as many shifts as it needs.
func TestOtherCasesChangeNothing(t *testing.T) {
	base := example(t, "oat-drink")
	texts := []string{"dwell: sealer.dwell=1.35 s", "crew: crew.attendants=2", "buffer: robot.after.buffer=60 cartons"}
	spec := decisions.CompareSpec{Replications: 8, Precision: 0.0004, Ceiling: 200}
	two := compared(t, base, scenarios.Options{Seed: 5, Workers: 1}, spec, texts[:2]...)
	three := compared(t, base, scenarios.Options{Seed: 5, Workers: 3}, spec, texts...)
	for i, r := range two.Cases {
		if diff := cmp.Diff(r, three.Cases[i], own...); diff != "" {
			t.Errorf("%s: another case changes\n%s", r.Name, diff)
		}
	}
	if two.Cases[0].Replications == two.Cases[1].Replications {
		t.Error("both cases took as many shifts: the precision tells nothing apart")
	}
	if diff := cmp.Diff(two.Base, three.Base, own...); diff != "" {
		t.Errorf("another case changes the base\n%s", diff)
	}
}

// What moved sums to the difference, whatever is changed: in whole cartons over all shifts.
func TestMovesSumToTheDifference(t *testing.T) {
	answer := compared(t, example(t, "oat-drink"), scenarios.Options{Seed: 2}, decisions.CompareSpec{Replications: 6},
		"dwell: sealer.dwell=1.4 s", "setting: setting=1500cartons/h", "no jams: drop erector.stops.blank jam", "two robots: robot.units=2",
		"no rejects: sealer.reject=0 %", "short: shift.length=7 h", "unpaced: drop setting; drop sealer.reject.by_setting; conveyor.revolution=2 s")
	for _, r := range answer.Cases {
		sum := r.Ideal
		for _, m := range r.Moves {
			sum += m.Cartons
		}
		if math.Abs(sum-r.Alone.Mean) > 1e-6 {
			t.Errorf("%s: the moves sum to %.9f, the difference is %.9f", r.Name, sum, r.Alone.Mean)
		}
	}
}

// Without chance the difference is exact: the pace period of 2.4 s allows a dwell of 1.22 s; at 1.6 s a cycle takes 2.78 s. Either
// line has 6 pitches and a cycle to fill before the first carton is off, so that the cartons are those of whole cycles.
func TestDifferenceWithoutChance(t *testing.T) {
	answer := compared(t, undisturbed(t), scenarios.Options{Seed: 1}, decisions.CompareSpec{Replications: 3},
		"same: sealer.dwell=1.2 s", "longer: sealer.dwell=1.6 s")
	same, longer := answer.Cases[0], answer.Cases[1]
	if same.Difference.Mean != 0 || same.Difference.HalfWidth() != 0 || same.Shows || same.Equal != 1 || same.Odds != 0.5 {
		t.Errorf("same: %v, shows %v, equal %v, odds %v", same.Difference, same.Shows, same.Equal, same.Odds)
	}
	cycles := func(period float64) float64 { return math.Floor(8 * 3600 / period) }
	want := cycles(2.78) - cycles(2.4)
	if d := longer.Difference; math.Abs(d.Mean-want) > 2 || d.HalfWidth() != 0 || !longer.Shows || longer.To.Name != "sealer" || longer.Odds != 0 {
		t.Errorf("longer: %v, want about %v; shows %v, bottleneck %s, odds %v", d, want, longer.Shows, longer.To, longer.Odds)
	}
}

// An interval leaves out 0 exactly where Holm's procedure finds a difference, and no more than one study in twenty finds one where
// there is none: a station by another name has other luck, but no other output.
func TestFalseAlarms(t *testing.T) {
	base := example(t, "bench-line")
	studies := 100
	if long() {
		studies = 300
	}
	alarms := 0
	for seed := range uint64(studies) {
		answer := compared(t, base, scenarios.Options{Seed: 1000 + seed, Workers: 1}, decisions.CompareSpec{Replications: 15},
			"a: erector.name=a", "b: sealer.name=b", "c: filler.name=c; robot.name=r")
		any := false
		for _, r := range answer.Cases {
			any = any || r.Shows
			if r.Shows == r.Difference.Contains(0) {
				t.Errorf("seed %d, %s: shows is %v, interval %v, p %v", seed, r.Name, r.Shows, r.Difference, r.AdjustedP)
			}
		}
		if any {
			alarms++
		}
	}
	if _, most := stats.CoverageBand(studies, 0.05, 0.999); alarms > most {
		t.Errorf("%d false alarms in %d studies, more than %d", alarms, studies, most)
	}
}

// The odds and the share of shifts won follow the difference, and the number of shifts named would show the smallest difference:
// its paired test has the stated power, and with fewer has not.
func TestOddsAndNeeded(t *testing.T) {
	r := compared(t, example(t, "bench-line"), scenarios.Options{Seed: 4}, decisions.CompareSpec{Replications: 40, Smallest: 0.005},
		"other luck: sealer.name=other").Cases[0]
	if r.Shows || r.Needed <= 40 || r.Better.Mean < 0.2 || r.Better.Mean > 0.8 {
		t.Errorf("%+v", r)
	}
	effect := r.SmallestCartons / r.SD
	if got := stats.PairedPower(r.Needed, effect, 0.95); got < decisions.Power {
		t.Errorf("%d shifts find it with power %v", r.Needed, got)
	}
	if got := stats.PairedPower(r.Needed-1, effect, 0.95); got >= decisions.Power {
		t.Errorf("%d shifts do already, with power %v", r.Needed-1, got)
	}
	if want := stats.PairedPower(2, 0, 0.95); math.Abs(want-0.05) > 1e-4 {
		t.Errorf("power without effect is %v", want)
	}
}

// Shifts are added until the precision is met, or the ceiling is.
func TestPrecisionAndCeiling(t *testing.T) {
	base := example(t, "bench-line", "setting=1800 cartons/h")
	for _, precision := range []float64{0.002, 0.00001} {
		r := compared(t, base, scenarios.Options{Seed: 1}, decisions.CompareSpec{Replications: 10, Precision: precision, Ceiling: 300}, "d: sealer.dwell=1.3 s; sealer.name=s").Cases[0]
		met := r.Alone.HalfWidth() <= precision*r.Base.GoodPerShift.Mean
		if r.Met != met || !met && r.Replications != 300 || met && r.Replications >= 300 || r.Case.Replications != r.Replications || r.Base.Replications != r.Replications {
			t.Errorf("precision %v: met %v after %d shifts, half-width %v", precision, r.Met, r.Replications, r.Alone.HalfWidth())
		}
	}
}
