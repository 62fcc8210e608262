package decisions_test

import (
	"math"
	"testing"
	"time"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

func margins(t testing.TB, f *scenarios.File, spec decisions.MarginSpec) *decisions.Margins {
	t.Helper()
	m, err := decisions.FindMargins(background, lab(scenarios.Options{Seed: 1}), f, 1, spec)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// goodAt is the output of one shift of an undisturbed line at a dwell.
func goodAt(t *testing.T, dwell time.Duration) float64 {
	t.Helper()
	shifts, err := scenarios.NewShifts(undisturbed(t, "sealer.dwell="+dwell.String()), scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := shifts.Extend(background, 1); err != nil {
		t.Fatal(err)
	}
	return shifts.Good()[0]
}

// The margin of an undisturbed line is exact: the output is kept at the limit, and not a printed step beyond. It agrees with the
// closed form: 98 % of the output needs a cycle of 2.4 s / 0.98, within the time of one carton in a shift.
func TestMarginOfUndisturbedLine(t *testing.T) {
	m := margins(t, undisturbed(t), decisions.MarginSpec{Paths: []string{"sealer.dwell"}, Keep: 0.98}).List[0]
	if !m.Found || !m.Grows || m.At.HalfWidth() != 0 {
		t.Fatalf("margin %+v, want an exact one", m)
	}
	limit, err := m.Limit.Duration()
	if err != nil {
		t.Fatal(err)
	}
	step := time.Duration(math.Round(m.Step * 1e9))
	need := 0.98 * goodAt(t, 1150*time.Millisecond)
	if at, beyond := goodAt(t, limit), goodAt(t, limit+step); at < need || beyond >= need {
		t.Errorf("%v gives %g and %v more %g; %g is to be kept", limit, at, step, beyond, need)
	}
	closed := 2.4/0.98 - 0.60 - 0.02 - 0.28 - 0.28
	if carton := 2.4 / 0.98 / (0.98 * 12000); math.Abs(m.At.Mean-closed) > 2*carton {
		t.Errorf("limit %g s, want %g s within two cartons a shift", m.At.Mean, closed)
	}
}

// With stops the limit lies where the paired output crosses the threshold, inside its interval, and the list is in order.
func TestMarginsOfDisturbedLine(t *testing.T) {
	f := example(t, "bench-line")
	m := margins(t, f, decisions.MarginSpec{Paths: []string{"robot.cycle", "sealer.dwell", "setting", "sealer.open"}, Keep: 0.98, Replications: 60})
	for i, one := range m.List {
		if !one.Found || !one.At.Contains(one.At.Mean) || one.At.HalfWidth() == 0 {
			t.Errorf("%s: limit %v", one.Path, one.At)
		}
		if i > 0 && m.List[i-1].Slack() > one.Slack() {
			t.Errorf("%s stands before %s, which is tighter", m.List[i-1].Path, one.Path)
		}
	}
	if first := m.List[0]; first.Path != "setting" || first.Grows {
		t.Errorf("the tightest is %s, growing %v; want the setting, shrinking", first.Path, first.Grows)
	}
}

// What can't bring the line below the threshold is said to, and so is what can't bring it up to a target.
func TestMarginOutOfReach(t *testing.T) {
	f := example(t, "bench-line")
	m := margins(t, f, decisions.MarginSpec{Paths: []string{"sealer.lag"}, Target: 1, Replications: 20})
	if one := m.List[0]; !m.Met || one.Found || one.Best.Mean < 1 {
		t.Errorf("%+v, want one that never limits", one)
	}
	m = margins(t, f, decisions.MarginSpec{Paths: []string{"sealer.dwell", "setting"}, Target: 10_650, Chance: 0.9, Replications: 60})
	if m.Met {
		t.Error("10,650 cartons are made")
	}
	for _, one := range m.List {
		if one.Found == (one.Path == "sealer.dwell") {
			t.Errorf("%s: found %v, best %v", one.Path, one.Found, one.BestMade)
		}
	}
}
