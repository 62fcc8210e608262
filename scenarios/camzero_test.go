package scenarios_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
)

// TestOneLawOfCamZero: of a master that never stops, timing and check name the same highest setting, and a line set there makes it: a
// cycle is whole turns.
func TestOneLawOfCamZero(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		revolution := rapid.IntRange(800, 3000).Draw(t, "revolution")
		read := func(setting float64) *scenarios.File {
			text := fmt.Sprintf("setting: %.4f cartons/h\nconveyor: {revolution: %d ms, index: {from: 0 deg, to: 110 deg, law: modified sine}, pitch: 100 mm, release: at cam zero}\n"+
				"stations:\n  - {name: erector, kind: erect, bottom_seal: %d ms}\n  - {name: sealer, kind: seal, after: {pitches: 2}, close: 0.28 s, dwell: %d ms, open: 0.28 s}\n",
				setting, revolution, rapid.IntRange(100, 4000).Draw(t, "seal"), rapid.IntRange(100, 4000).Draw(t, "dwell"))
			f, err := scenarios.Read("zero", strings.NewReader(text), nil)
			if err != nil {
				t.Fatal(err)
			}
			return f
		}
		f := read(500)
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		budget := scenarios.BudgetOf(f.Line).Ceiling
		if got := float64(timing.Ceiling.Setting); math.Abs(got-budget) > 0.05 {
			t.Errorf("timing allows %.3f cartons/h, check %.3f", got, budget)
		}
	})
}
