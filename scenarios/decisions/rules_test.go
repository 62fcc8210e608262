package decisions_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/sim/bottleneck"
	"dwellcast/stations"
)

// The turning point and the arrow rule on simulated shares name the stations that they name on exact ones (rows bn-rules of the
// reference table). Shares that differ by less than their error, three half-widths at 95 %, count as equal.
func TestBottleneckRulesOfTheory(t *testing.T) {
	for k, row := range theoryRows(t, "bn-rules") {
		if !long() && k%2 == 1 {
			continue
		}
		means, buffers := numbersOf(t, parameter(t, row, "means"), ","), numbersOf(t, parameter(t, row, "b"), ",")
		run, err := scenarios.Run(context.Background(), tandem(t, means, buffers, 50), scenarios.Options{Replications: 12, Seed: 2})
		if err != nil {
			t.Fatal(err)
		}
		var blocked, starved []float64
		noise := 0.0
		for _, st := range run.Stations {
			blocked = append(blocked, st.Shares[stations.Blocked].Mean)
			starved = append(starved, st.Shares[stations.Starved].Mean)
			noise = max(noise, 3*st.Shares[stations.Blocked].HalfWidth(), 3*st.Shares[stations.Starved].HalfWidth())
		}
		arrows := bottleneck.ArrowRule(blocked, starved, noise)
		got := fmt.Sprintf("%s|%s|%d", fromOne(bottleneck.TurningPoint(blocked, starved, noise)), fromOne(arrows.Stations), arrows.Primary+1)
		if got != row["expected"] {
			t.Errorf("%s: %s, want %s (blocked %.4f, starved %.4f, noise %.4f)", row["id"], got, row["expected"], blocked, starved, noise)
		}
	}
}

// fromOne prints stations numbered from 1, as the table does.
func fromOne(list []int) string {
	var words []string
	for _, i := range list {
		words = append(words, fmt.Sprint(i+1))
	}
	return "[" + strings.Join(words, ", ") + "]"
}
