package scenarios_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"dwellcast/scenarios"
)

// TestWorkersDoNotMatter: the same figures, to the last bit, for any number of workers.
func TestWorkersDoNotMatter(t *testing.T) {
	for _, name := range scenarios.Examples() {
		if testing.Short() && name != "bench-line" {
			continue
		}
		f, err := scenarios.Open("example:"+name, nil)
		if err != nil {
			t.Fatal(err)
		}
		var first *scenarios.Forecast
		for _, workers := range []int{1, 2, 5} {
			out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 11, Seed: 9, Workers: workers})
			if err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = out
			}
			if diff := cmp.Diff(first, out, cmpopts.EquateNaNs()); diff != "" {
				t.Errorf("%s with %d workers: %s", name, workers, diff)
			}
		}
	}
}

// TestPrecisionAddsShifts: shifts are added until the half-width is met, and no more than needed by far.
func TestPrecisionAddsShifts(t *testing.T) {
	f, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := scenarios.Run(context.Background(), f, scenarios.Options{Precision: 0.002})
	if err != nil {
		t.Fatal(err)
	}
	if half := out.GoodRate.HalfWidth() / out.GoodRate.Mean; half > 0.002 || half < 0.001 {
		t.Errorf("half-width %.4f %% of the mean after %d shifts, wanted 0.2 %%", 100*half, out.Replications)
	}
}

// TestNoChanceNoSpread: a line in which nothing is left to chance gives the same shift every time.
func TestNoChanceNoSpread(t *testing.T) {
	f, err := scenarios.Read("fixed", strings.NewReader(`
setting: 1450 cartons/h
shift: {length: 2 h, breaks: [{after: 1 h, length: 10 min}]}
conveyor: {index: 0.6 s, revolution: 2 s}
stations:
  - {name: erector, kind: erect, bottom_seal: 0.85 s}
  - {name: filler, kind: fill, after: {pitches: 2}}
  - {name: sealer, kind: seal, after: {pitches: 2}, close: 0.28 s, dwell: 0.95 s, open: 0.28 s}
  - {name: robot, kind: offload, after: {buffer: 24 cartons, transit: 4 s}, cycle: 2.1 s}
`), nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 50})
	if err != nil {
		t.Fatal(err)
	}
	if out.GoodPerShift.SD != 0 || out.GoodPerShift.HalfWidth() != 0 || out.GoodPerShift.Mean == 0 {
		t.Errorf("good per shift %v, sd %g", out.GoodPerShift.Interval, out.GoodPerShift.SD)
	}
}

// TestInterruptedRunSaysSo: what is known when the run is ended comes back, marked.
func TestInterruptedRunSaysSo(t *testing.T) {
	f, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	o := scenarios.Options{Replications: 100_000, Progress: func(done, _ int) {
		if done >= 100 {
			cancel()
		}
	}}
	out, err := scenarios.Run(ctx, f, o)
	if err != nil {
		t.Fatal(err)
	}
	if !out.Interrupted || out.Replications < 100 || out.Replications > 1000 {
		t.Errorf("interrupted %v after %d shifts", out.Interrupted, out.Replications)
	}
}

// BenchmarkWorkers shows what a second worker brings: shifts of the bench line, stepped through cycle by cycle as a line with
// drawn times would be.
func BenchmarkWorkers(b *testing.B) {
	f, err := scenarios.Open("example:bench-line", []string{"robot.cycle={uniform: {from: 1.4 s, to: 1.6 s}}"})
	if err != nil {
		b.Fatal(err)
	}
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprintf("workers=%d", workers), func(b *testing.B) {
			o := scenarios.Options{Replications: max(2, b.N), Workers: workers}
			if _, err := scenarios.Run(context.Background(), f, o); err != nil {
				b.Fatal(err)
			}
		})
	}
}
