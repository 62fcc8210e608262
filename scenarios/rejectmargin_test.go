package scenarios_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/stations"
)

// TestRejectsAreThoseOfEachDwell: a table of rejects by margin that steps from everything to nothing at no margin rejects as many cartons as have
// a dwell too short for the glue, told from the law, and as many come out of the simulation; with a dwell that does not vary, all or none.
func TestRejectsAreThoseOfEachDwell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from, width := rapid.IntRange(500, 1400).Draw(t, "from"), rapid.IntRange(100, 600).Draw(t, "width")
		const needed = 1000
		hours := 20
		if long() {
			hours = 100
		}
		f := readLine(t, fmt.Sprintf(`
shift: {length: %d h}
stations:
  - {name: sealer, kind: seal, close: 0.2 s, dwell: {uniform: {from: %d ms, to: %d ms}}, open: 0.2 s, glue: {open: 6 s, set: %d ms},
     reject_by_margin: [{margin: 0 s, reject: 100 %%}, {margin: 0.001 ms, reject: 0 %%}]}
`, hours, from, from+width, needed))
		want := min(1, max(0, float64(needed-from)/float64(width)))
		if got := f.Line.Stations[0].Reject; math.Abs(got-want) > 1.0/2000 {
			t.Errorf("dwells from %d ms to %d ms: %v rejected, %v are too short", from, from+width, got, want)
		}
		s, err := stations.New(f.Line)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Shift(1, 0); err != nil {
			t.Fatal(err)
		}
		bad, all := float64(s.Tally.Flow[stations.Bad]), float64(s.Tally.Flow[stations.Good]+s.Tally.Flow[stations.Bad])
		if got := bad / all; math.Abs(got-want) > 0.001+5*math.Sqrt(want*(1-want)/all) {
			t.Errorf("dwells from %d ms to %d ms: %v of the cartons rejected, %v are too short", from, from+width, got, want)
		}
	})
}
