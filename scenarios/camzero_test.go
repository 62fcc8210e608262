package scenarios_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/stations"
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

// TestTurnsAreThoseOfTheSimulation: a line of a master that never stops makes a carton in as many turns as its timing says, at its setting and on
// both sides of each setting at which it says that they change.
func TestTurnsAreThoseOfTheSimulation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.IntRange(300, 3000).Draw(t, "revolution")
		text := fmt.Sprintf("setting: %d cartons/h\nshift: {length: 2 h}\nconveyor: {revolution: %d ms, index: {from: 0 deg, to: 110 deg}, release: at cam zero}\n"+
			"stations:\n  - {name: erector, kind: erect, bottom_seal: %d ms}\n  - {name: sealer, kind: seal, after: {pitches: 2}, close: 0.28 s, dwell: %d ms, open: 0.28 s}\n",
			rapid.IntRange(200, 4000).Draw(t, "setting"), turn, rapid.IntRange(100, 4000).Draw(t, "seal"), rapid.IntRange(100, 4000).Draw(t, "dwell"))
		f := readLine(t, text)
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		c := &timing.Conveyors[0]
		cyclesLast(t, f, c.Turns, turn)
		for k, from := range c.TurnsFrom {
			cyclesLast(t, atSetting(t, f, float64(from.Setting)+0.01), from.Turns, turn)
			if k > 0 {
				cyclesLast(t, atSetting(t, f, float64(from.Setting)-0.01), c.TurnsFrom[k-1].Turns, turn)
			}
		}
	})
}

func atSetting(t *rapid.T, f *scenarios.File, setting float64) *scenarios.File {
	there, err := f.With(fmt.Sprintf("setting=%.6f cartons/h", setting))
	if err != nil {
		t.Fatal(err)
	}
	return there
}

// cyclesLast holds the cycles of a shift to a number of turns, in ms; the last may be cut, and the first ones, before every station acts, be short.
func cyclesLast(t *rapid.T, f *scenarios.File, turns, turn int) {
	s, err := stations.New(f.Line)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Shift(1, 0); err != nil {
		t.Fatal(err)
	}
	got, want := s.Tally.Flow[stations.Slots], f.Line.Shift.Length.Milliseconds()/int64(turns*turn)
	if got < want || got > want+6 {
		t.Errorf("at %.2f cartons/h %d cycles in %v, %d of %d turns of %d ms", f.Line.Setting, got, f.Line.Shift.Length, want, turns, turn)
	}
}
