package decisions_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// follows is what the undisturbed bench line can follow with a dwell, cartons/h: its sealer's cycle is 1.18 s and the dwell, its robot's 2.1 s.
func follows(dwell float64) float64 { return 3600 / max(1.18+dwell, 2.1) }

func ranged(low, likely, high float64) string {
	return fmt.Sprintf("{low: %.3f s, likely: %.3f s, high: %.3f s}", low, likely, high)
}

// TestPaceSaysWhatOverturnsIt: on a line that leaves nothing to chance the recommendation is what the sealer can follow, less half a percent at the
// most. A shorter dwell overturns it exactly where the line then follows a setting faster by more than the zone, a longer one exactly where the
// target is no longer made; the lag, which hardly moves, never does.
func TestPaceSaysWhatOverturnsIt(t *testing.T) {
	if testing.Short() {
		t.Skip("many recommendations")
	}
	seen := map[decisions.Upset]int{}
	outer := t
	rapid.Check(t, func(t *rapid.T) {
		likely := rapid.Float64Range(1.0, 1.4).Draw(t, "likely")
		low, high := likely-rapid.Float64Range(0.001, 0.2).Draw(t, "below"), likely+rapid.Float64Range(0.001, 0.2).Draw(t, "above")
		f := undisturbed(outer, "setting=1400 cartons/h", "shift={length: 4 h}", "sealer.dwell="+ranged(low, likely, high), "sealer.lag={low: 0.0199 s, likely: 0.02 s, high: 0.0201 s}")
		a := pace(outer, f, 1, decisions.PaceSpec{Replications: 2, From: 1000, Settings: 9, Target: math.Floor(4*follows(likely)) * rapid.Float64Range(0.9, 0.99).Draw(t, "share")})
		if a.Ranges.Inputs != 2 {
			t.Fatalf("%d inputs with a range", a.Ranges.Inputs)
		}
		at := a.Rows[a.Recommended].Setting
		got := map[string]decisions.Overturn{}
		for _, o := range a.Overturns {
			got[o.Path+"="+o.At] = o
			seen[o.How]++
		}
		made := min(at, follows(likely))
		gain := min(follows(low), max(at, math.Floor(follows(low))))/made - 1
		check(t, "a shorter dwell", got, fmt.Sprintf("sealer.dwell=%.3f s", low), decisions.Outdone, gain, 0.005)
		if a.Target > 0 && a.Rows[a.Recommended].Good.Low >= a.Target {
			check(t, "a longer dwell", got, fmt.Sprintf("sealer.dwell=%.3f s", high), decisions.Fails, a.Target/(4*min(at, follows(high)))-1, 0)
		}
		if len(got) > 0 {
			t.Errorf("overturned by %v too", got)
		}
	})
	if seen[decisions.Outdone] == 0 || seen[decisions.Fails] == 0 {
		t.Errorf("seen only %v", seen)
	}
}

// check takes the end of an input out of those that overturn, which is to be there exactly where a figure is above a limit; some cartons on
// the line leave what is near it open.
func check(t *rapid.T, what string, got map[string]decisions.Overturn, end string, how decisions.Upset, figure, limit float64) {
	const onTheLine = 0.003
	o, found := got[end]
	delete(got, end)
	switch {
	case math.Abs(figure-limit) < onTheLine:
	case found != (figure > limit):
		t.Errorf("%s, %s: overturned is %v, with a figure of %.4f against %.4f", what, end, found, figure, limit)
	case found && o.How != how:
		t.Errorf("%s, %s: %v, want %v", what, end, o.How, how)
	}
}

// TestPaceIsForbiddenAtAnEnd: where a range reaches past a limit of the mechanics, the recommendation says so.
func TestPaceIsForbiddenAtAnEnd(t *testing.T) {
	a := pace(t, example(t, "oat-drink", "shift={length: 2 h}"), 1, decisions.PaceSpec{Replications: 10, Settings: 5})
	for _, o := range a.Overturns {
		if o.Path == "sealer.dwell" && o.At == "1.40 s" && o.How == decisions.Forbidden && strings.Contains(o.Why, "seal cycle within the stand") {
			return
		}
	}
	t.Errorf("overturned by %+v", a.Overturns)
}

// TestSizingSaysWhatOverturnsIt: of two lines that leave nothing to chance the cheaper one with a guessed dwell is taken while it makes the demand.
// Its long dwell overturns that exactly where it no longer does, and the other one is taken then.
func TestSizingSaysWhatOverturnsIt(t *testing.T) {
	if testing.Short() {
		t.Skip("many sizings")
	}
	seen := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		likely := rapid.Float64Range(1.23, 1.4).Draw(t, "likely") // slower than the pace of 2.4 s
		high := likely + rapid.Float64Range(0.001, 0.2).Draw(t, "above")
		wanted := rapid.Float64Range(0.9, 0.985).Draw(t, "share") * 4 * follows(likely) * 500
		study := fmt.Sprintf(`
line: example:bench-line
size:
  demand: %.0f cartons/year
  calendar: {days: 250, shifts: 2}
  candidates:
    - {name: cheap, changes: {shift: {length: 4 h}, sealer.dwell: %s, %s}, price: 10000 money, life: 10 years}
    - {name: dear, changes: {shift: {length: 4 h}, sealer.dwell: 1 s, %[3]s}, price: 90000 money, life: 10 years}
`, wanted, ranged(likely-0.001, likely, high), undisturbedChanges)
		var spec decisions.SizeSpec
		in, err := scenarios.LoadText("study.yaml", strings.NewReader(study))
		if err != nil {
			t.Fatal(err)
		}
		s, err := in.Study(nil, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&spec)})
		if err != nil {
			t.Fatal(err)
		}
		spec.Replications = 2
		z, err := decisions.SizeStudy(background, lab(scenarios.Options{Seed: 1, Confidence: 0.95}), s, 1, spec)
		if err != nil {
			t.Fatal(err)
		}
		if z.Best != 0 {
			t.Fatalf("took candidate %d", z.Best)
		}
		short := wanted/(4*follows(high)*500) - 1
		if math.Abs(short) < 0.003 {
			t.Skip("cartons on the line leave it open")
		}
		overturned := len(z.Overturns) == 1 && z.Overturns[0].How == decisions.Fails && z.Overturns[0].Candidate == "dear"
		if overturned != (short > 0) || len(z.Overturns) > 1 {
			t.Errorf("a demand of %.0f, of which %.4f too much with a dwell of %.3f s: %+v", wanted, short, high, z.Overturns)
		}
		seen[overturned]++
	})
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("overturned: %v", seen)
	}
}

// undisturbedChanges take all that is left to chance off the bench line, as undisturbed does.
const undisturbedChanges = "erector.miss: 0 %, sealer.reject: 0 %, crew: {attendants: 1}, erector.stops: [], filler.stops: [], sealer.stops: [], robot.stops: []"
