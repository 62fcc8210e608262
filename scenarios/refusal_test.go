package scenarios_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
)

// drinkWith is the oat-drink example with changes.
func drinkWith(t testing.TB, changes ...string) (*scenarios.File, error) {
	t.Helper()
	return scenarios.Open("example:oat-drink", changes)
}

// TestOneVerdict: whatever the setting, the dwell, the jaws and the liquid, timing calls every limit kept exactly where no margin is
// below 0, and exactly there a run is not refused.
func TestOneVerdict(t *testing.T) {
	if testing.Short() {
		t.Skip("many lines, none of them side by side")
	}
	rapid.Check(t, func(t *rapid.T) {
		changes := []string{
			fmt.Sprintf("setting=%d cartons/h", rapid.IntRange(900, 2600).Draw(t, "setting")),
			fmt.Sprintf("sealer.dwell=%d ms", rapid.IntRange(300, 1500).Draw(t, "dwell")),
			fmt.Sprintf("sealer.heat.jaws=%d degC", rapid.IntRange(150, 280).Draw(t, "jaws")),
			fmt.Sprintf("carton.height=%d mm", rapid.IntRange(230, 260).Draw(t, "height")),
		}
		f, err := scenarios.Open("example:oat-drink", changes)
		if err != nil {
			t.Skip(err)
		}
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		kept := true
		for _, l := range timing.Ceiling.Limits {
			kept = kept && l.Now >= 0
		}
		if timing.Ceiling.Kept() != kept {
			t.Errorf("%v: every limit kept is %v, the margins say %v", changes, timing.Ceiling.Kept(), kept)
		}
		if refused := scenarios.Refusal(f); (refused == "") != kept {
			t.Errorf("%v: a run is refused with %q, but every limit kept is %v", changes, refused, kept)
		}
	})
}

// TestShortDwellIsRefused: a dwell below what the seal needs breaks a limit at every setting; one above does not.
func TestShortDwellIsRefused(t *testing.T) {
	f, err := drinkWith(t)
	if err != nil {
		t.Fatal(err)
	}
	timing, err := scenarios.TimingOf(f)
	if err != nil {
		t.Fatal(err)
	}
	least := 0.0
	for _, s := range timing.Stations {
		if s.Sealing != nil {
			least = float64(s.Sealing.Least)
		}
	}
	for _, setting := range []int{400, 1000, 1300} {
		for _, c := range []struct {
			dwell   float64
			refused bool
		}{{least - 0.002, true}, {least + 0.002, false}} {
			f, err := drinkWith(t, fmt.Sprintf("setting=%d cartons/h", setting), fmt.Sprintf("sealer.dwell=%.4f s", c.dwell))
			if err != nil {
				t.Fatal(err)
			}
			if why := scenarios.Refusal(f); strings.Contains(why, "dwell that the seal needs") != c.refused {
				t.Errorf("dwell %.4f s at %d cartons/h: refused with %q", c.dwell, setting, why)
			}
		}
	}
}

// TestVaryingDwellIsJudgedByItsShort: half of the acts of a dwell whose mean is just enough are too short.
func TestVaryingDwellIsJudgedByItsShort(t *testing.T) {
	f, err := drinkWith(t, "sealer.dwell={normal: {mean: 1.05 s, sd: 0.1 s}}", "setting=900 cartons/h")
	if err != nil {
		t.Fatal(err)
	}
	if scenarios.Refusal(f) == "" {
		t.Error("a dwell that is often too short is accepted")
	}
}

// TestSloshCeilingIsItsOwn: the highest setting that a limit allows does not depend on the present one.
func TestSloshCeilingIsItsOwn(t *testing.T) {
	var first string
	for _, setting := range []int{700, 1100, 1450, 1900} {
		f, err := drinkWith(t, fmt.Sprintf("setting=%d cartons/h", setting), "conveyor.revolution=1.98 s", "carton.height=225 mm")
		if err != nil {
			t.Fatal(err)
		}
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		words := ""
		for _, l := range timing.Ceiling.Limits {
			words += fmt.Sprintf("%s %s %.1f %v\n", l.Where, l.Name, float64(l.Highest.Setting), l.Highest.Binds)
		}
		if first == "" {
			first = words
		}
		if words != first {
			t.Errorf("at %d cartons/h the limits allow\n%s, elsewhere\n%s", setting, words, first)
		}
	}
}

// TestUnknownWaveIsNotKept: a liquid on a conveyor whose index has no finite acceleration leaves the verdict open.
func TestUnknownWaveIsNotKept(t *testing.T) {
	f, err := drinkWith(t, "conveyor.index.law=straight line")
	if err != nil {
		t.Fatal(err)
	}
	timing, err := scenarios.TimingOf(f)
	if err != nil {
		t.Fatal(err)
	}
	if len(timing.Ceiling.Unassessed) != 1 || timing.Ceiling.Kept() {
		t.Errorf("not assessed: %v, kept: %v", timing.Ceiling.Unassessed, timing.Ceiling.Kept())
	}
}
