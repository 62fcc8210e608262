package decisions_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios/decisions"
)

// bent is a line without chance along a conveyor, and a sweep over the act of its second machine, whose knee is known: the act from
// which on that machine is slower than the pace and the others.
type bent struct {
	text, vary string
	low, high  float64
	knee       float64
	rate       func(act float64) float64 // cartons/h, but for whole cartons and a line that fills
}

var bends = rapid.Custom(func(t *rapid.T) bent {
	index := math.Round(rapid.Float64Range(0.3, 1.2).Draw(t, "index")*1e3) / 1e3
	others := math.Round(rapid.Float64Range(1, 2.5).Draw(t, "others")*1e3) / 1e3
	pace := math.Round(rapid.Float64Range(1.5, 4).Draw(t, "pace")*1e3) / 1e3
	b := bent{knee: max(others, pace-index)}
	b.low = math.Round(b.knee*rapid.Float64Range(0.5, 1.1).Draw(t, "low")*1e3) / 1e3
	b.high = math.Round(max(b.low+0.1, b.knee*rapid.Float64Range(0.9, 2).Draw(t, "high"))*1e3) / 1e3
	b.vary = fmt.Sprintf("b.cycle=%gs..%gs/%d", b.low, b.high, rapid.IntRange(5, 24).Draw(t, "points"))
	b.text = fmt.Sprintf("setting: %.9f cartons/h\nshift: {length: 8 h}\nconveyor: {index: %g s}\nstations:\n  - {name: a, kind: machine, cycle: %g s}\n"+
		"  - {name: b, kind: machine, cycle: 1 s, after: {pitches: 1}}\n", 3600/pace, index, others)
	b.rate = func(act float64) float64 { return 3600 / max(pace, index+max(act, others)) }
	return b
})

// What sweep says of a knee is so, on lines without chance. A knee lies in its interval, and an exact one where it is printed; one
// well within the sweep is found, and one outside it is not; the slopes are those of the curve; who takes over is who is the slower.
func TestKneesHold(t *testing.T) {
	rows := 40
	if long() {
		rows = 400
	}
	found := 0
	for seed := range rows {
		b := bends.Example(seed)
		s := sweep(t, read(t, b.text), "good_rate", 2, b.vary)
		margin := 0.03 * (b.high - b.low)
		inside, outside := b.high-b.low > 0.2 && b.low+margin < b.knee && b.knee < b.high-margin, b.knee < b.low || b.high < b.knee
		k := s.Knee
		if (k != nil) != (s.Bend == decisions.Kneed) || inside && k == nil || outside && k != nil {
			t.Errorf("%s: bend %v, knee %+v, true knee %g\n%s", b.vary, s.Bend, k, b.knee, b.text)
		}
		if k == nil {
			continue
		}
		found++
		if !k.At.Contains(b.knee) && !(k.Exact && math.Abs(k.At.Mean-b.knee) < 2e-9) || k.At.HalfWidth() > 0.01*b.knee {
			t.Errorf("%s: knee %+v, true knee %.9g", b.vary, k, b.knee)
		}
		fall := (b.rate(b.knee*1.001) - b.rate(b.knee)) / (0.001 * b.knee)
		if math.Abs(k.Before.Mean) > 0.1*math.Abs(fall) || math.Abs(k.After.Mean/fall-1) > 0.25 {
			t.Errorf("%s: slopes %v and %v, want 0 and %g", b.vary, k.Before, k.After, fall)
		}
		if k.From != k.To && k.To.Name != "b" {
			t.Errorf("%s: from %s to %s", b.vary, k.From, k.To)
		}
	}
	t.Logf("%d knees", found)
}
