package scenarios_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// whileFilling bounds the cartons that are closed sooner than later ones, before every station of a line acts.
const whileFilling = 3 * (4 + 3 + 4)

// gluedFile is a random line in which nothing varies or stops: glue is laid at one station and closed at another of one conveyor.
func gluedFile(t *rapid.T) *scenarios.File {
	n := func(label string, low, high int) int { return rapid.IntRange(low, high).Draw(t, label) }
	set := n("set", 0, 4) > 0
	conveyor := fmt.Sprintf("{index: %d ms}", n("index", 100, 900))
	switch n("master", 0, map[bool]int{false: 2, true: 3}[set]) {
	case 1:
		conveyor = fmt.Sprintf("{revolution: %d ms, index: {from: 0 deg, to: %d deg}}", n("turn", 300, 4000), n("to", 30, 200))
	case 2:
		conveyor = fmt.Sprintf("{revolution: %d ms, index: {from: 0 deg, to: %d deg}, release: at cam zero}", n("turn", 300, 4000), n("to", 30, 200))
	case 3:
		conveyor = fmt.Sprintf("{revolution: %d %% of pace, index: {from: 0 deg, to: %d deg}}", n("share", 40, 100), n("to", 30, 200))
	}
	text := fmt.Sprintf("lanes: %d\nshift: {length: 2 h}\nconveyor: %s\nstations:\n", n("lanes", 1, 3), conveyor)
	if set {
		text = fmt.Sprintf("setting: %d cartons/h\n", n("setting", 200, 5000)) + text
	}
	text += fmt.Sprintf("- {name: former, kind: erect, bottom_seal: %d ms, turns: %d}\n", n("bottom seal", 100, 3000), n("turns", 0, 4))
	text += fmt.Sprintf("- {name: gun, kind: machine, after: {pitches: %d}, cycle: %d ms}\n", n("to the gun", 1, 3), n("lay", 100, 3000))
	text += fmt.Sprintf("- {name: closer, kind: seal, after: {pitches: %d}, lag: %d ms, close: %d ms, dwell: %d ms, open: %d ms, glue: {open: %d ms, set: 0.1 s, applied: {at: %s, then: %s}}}\n",
		n("to the closer", 1, 4), n("lag", 0, 90), n("close", 50, 900), n("dwell", 100, 2000), n("open", 50, 900), n("open time", 100, 4000)*n("as long as", 1, 40),
		rapid.SampledFrom([]string{"former", "gun", "closer"}).Draw(t, "at"), rapid.SampledFrom([]string{"reject", "scrap"}).Draw(t, "then"))
	t.Log(text)
	return readLine(t, text)
}

// TestOpenTimeIsThatOfTheSimulation: where the limit of the open time is kept, no carton of an undisturbed line is closed too late, and
// where it is broken all are; exactly there a run is refused for it.
func TestOpenTimeIsThatOfTheSimulation(t *testing.T) {
	kept, broken := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		f := gluedFile(t)
		s, err := stations.New(f.Line)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Shift(1, 0); err != nil {
			t.Fatal(err)
		}
		flow := s.Tally.Flow
		late := flow[stations.Bad] + flow[stations.Scrapped]
		var margin float64
		refused := false
		for _, l := range scenarios.BeyondCeiling(f) {
			if l.Kind == "open" {
				refused, margin = true, l.Now
			}
		}
		if refused && margin > -1e-6 {
			t.Skip("a matter of rounding to the nanosecond")
		}
		switch {
		case refused && flow[stations.Good] > whileFilling:
			t.Errorf("%d good cartons where the glue lies open for too long", flow[stations.Good])
		case !refused && late > 0:
			t.Errorf("%d cartons closed too late where the open time is kept", late)
		case !refused && flow[stations.Good] > 0:
			kept++
		case refused && late > 0:
			broken++
		}
		if f.Line.Setting == 0 {
			return
		}
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		if timing.Ceiling.Kept() != (len(scenarios.BeyondCeiling(f)) == 0) {
			t.Error("timing and run differ about the verdict")
		}
		checkLowest(t, f, &timing.Ceiling)
	})
	if kept == 0 || broken == 0 {
		t.Errorf("%d lines keep the open time and %d break it", kept, broken)
	}
}

// checkLowest holds a lowest setting to the verdict at settings on both sides of it.
func checkLowest(t *rapid.T, f *scenarios.File, c *scenarios.SpeedCeiling) {
	least := c.Least()
	if least == nil || least.Lowest > 100_000 {
		return
	}
	for _, step := range []struct {
		to     float64
		broken bool
	}{{math.Ceil(10*float64(least.Lowest)) / 10, false}, {float64(least.Lowest) - 0.1, true}} {
		if step.to <= 0 {
			continue
		}
		there, err := f.With(fmt.Sprintf("setting=%.9g cartons/h", step.to))
		if err != nil {
			t.Skip(err)
		}
		broken := false
		for _, l := range scenarios.BeyondCeiling(there) {
			broken = broken || l.Kind == "open"
		}
		if broken != step.broken {
			t.Errorf("the lowest setting is %v, but at %.9g cartons/h the limit is broken: %v", least.Lowest, step.to, broken)
		}
	}
}
