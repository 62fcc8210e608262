package scenarios_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// TestLongRunsAddUp: of any long run, ideal = good + losses, the change of what is on the line among them; and a line that only acts is
// never better than its ideal.
func TestLongRunsAddUp(t *testing.T) {
	if testing.Short() {
		t.Skip("many lines, none of them side by side")
	}
	rapid.Check(t, func(t *rapid.T) {
		setting := rapid.SampledFrom([]string{"", "setting: 1234 cartons/h\n", "setting: 997 cartons/h\n"}).Draw(t, "setting")
		text := fmt.Sprintf("%srun: {length: %d h, batches: %d}\nstations:\n"+
			"  - {name: a, kind: machine, cycle: %s}\n  - {name: b, kind: machine, cycle: %s, after: {buffer: %s}, reject: 1 %%, ejects: yes}\n", setting,
			rapid.IntRange(20, 60).Draw(t, "hours"), rapid.IntRange(5, 30).Draw(t, "batches"),
			rapid.SampledFrom([]string{"2 s", "2.7 s", "{exponential: 2.5 s}"}).Draw(t, "a"),
			rapid.SampledFrom([]string{"2.1 s", "3.3 s", "{exponential: 3 s}"}).Draw(t, "b"),
			rapid.SampledFrom([]string{"3 cartons", "40 cartons", "unlimited"}).Draw(t, "buffer"))
		f, err := scenarios.Read("long", strings.NewReader(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		out, err := scenarios.Run(context.Background(), f, scenarios.Options{Seed: rapid.Uint64().Draw(t, "seed")})
		if err != nil {
			t.Fatal(err)
		}
		sum := out.GoodPerShift.Mean
		for _, l := range out.Losses {
			sum += l.Cartons.Mean
			if l.Kind != stations.ContentChange && l.Kind != stations.NominalPace && l.Kind != stations.SlowAct && l.Cartons.Mean < 0 {
				t.Errorf("%s %s gains %g cartons", l.Where, l.Cause, -l.Cartons.Mean)
			}
		}
		if math.Abs(sum-out.IdealPerShift) > 1e-6 {
			t.Errorf("ideal %g, good and losses %g", out.IdealPerShift, sum)
		}
	})
}
