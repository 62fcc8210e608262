package scenarios_test

import (
	"context"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// TestIntervalsCover: of 1000 runs with seeds of their own, the 95 % interval of the mean must hold the known answer between
// 926 and 971 times (two-sided 99.9 % of the binomial; rows cover-1000-0.95 of testdata/theory.csv). The line is the start-up of
// three exponential stations with buffers of two, whose expected output by 100 s is exact (row trans-3-b2-t100).
func TestIntervalsCover(t *testing.T) {
	needsLong(t)
	const line = `
shift: {length: 100 s}
stations:
  - {name: a, kind: machine, cycle: {exponential: 1 s}}
  - {name: b, kind: machine, cycle: {exponential: 1 s}, after: {buffer: 2 cartons}}
  - {name: c, kind: machine, cycle: {exponential: 1 s}, after: {buffer: 2 cartons}}
`
	const known = 70.97610949
	f, err := scenarios.Read("start-up", strings.NewReader(line), nil)
	if err != nil {
		t.Fatal(err)
	}
	covered := 0
	for seed := range uint64(1000) {
		out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 40, Seed: 5000 + seed})
		if err != nil {
			t.Fatal(err)
		}
		if out.GoodPerShift.Contains(known) {
			covered++
		}
	}
	low, high := stats.CoverageBand(1000, 0.95, 0.999)
	if covered < low || covered > high {
		t.Errorf("%d of 1000 intervals cover, want %d to %d", covered, low, high)
	}
}
