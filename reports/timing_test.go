package reports_test

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"testing"

	"dwellcast/reports"
	"dwellcast/scenarios"
)

func exampleTiming(t testing.TB, overrides ...string) *scenarios.Timing {
	t.Helper()
	f, err := scenarios.Open("example:oat-drink", overrides)
	if err != nil {
		t.Fatal(err)
	}
	timing, err := scenarios.TimingOf(f)
	if err != nil {
		t.Fatal(err)
	}
	return timing
}

func TestTimingScreens(t *testing.T) {
	for name, style := range map[string]reports.Style{"timing-80.txt": {Width: 80}, "timing-120.txt": {Width: 120}} {
		text := written(t, func(w io.Writer) error { return reports.Timing(w, exampleTiming(t), reports.Table, style) })
		golden(t, name, text)
		fits(t, name, text, style.Width)
	}
}

func TestTimingMarkdown(t *testing.T) {
	golden(t, "timing.md", written(t, func(w io.Writer) error {
		return reports.Timing(w, exampleTiming(t), reports.Markdown, reports.Style{})
	}))
}

// A line that breaks its limits says so first, and its chart can still be drawn.
func TestTimingBroken(t *testing.T) {
	for _, overrides := range [][]string{
		{"setting=2400 cartons/h"},
		{"filler.cams.nozzle.moves.down.from=85 deg"},
		{"sealer.dwell=3 s"},
		{"conveyor.release=at cam zero", "conveyor.revolution=1 s"},
		{"conveyor.index.from=20 deg", "erector.cams.arm.moves.1.from=20 deg"},
	} {
		timing := exampleTiming(t, overrides...)
		text := written(t, func(w io.Writer) error { return reports.Timing(w, timing, reports.Table, reports.Style{Width: 80}) })
		fits(t, overrides[0], text, 80)
		if bytes.Contains(text, []byte("can't be drawn")) {
			t.Errorf("%s: no chart in\n%s", overrides, text)
		}
		if _, err := reports.TimingChart(timing, 0, true).Draw(); err != nil {
			t.Errorf("%s: %v", overrides, err)
		}
	}
	text := written(t, func(w io.Writer) error {
		return reports.Timing(w, exampleTiming(t, "filler.cams.nozzle.moves.down.from=85 deg"), reports.Table, reports.Style{Width: 80})
	})
	for _, words := range []string{"No setting is allowed: filler, nozzle out of the carton", "VIOLATED", "no setting"} {
		if !bytes.Contains(text, []byte(words)) {
			t.Errorf("%q is not said", words)
		}
	}
}

// The figures of the JSON are those of the timing.
func TestTimingJSON(t *testing.T) {
	timing := exampleTiming(t)
	var got struct {
		Schema  int
		Ceiling float64 `json:"ceiling_per_hour"`
		Binding struct{ Where, Limit string }
		Limits  []struct {
			Highest *float64 `json:"highest_per_hour"`
		}
		Conveyors []struct {
			Axes []struct {
				Name              string
				Degrees, Position []float64
				Speed             float64 `json:"peak_speed"`
			}
		}
	}
	if err := json.Unmarshal(written(t, func(w io.Writer) error { return reports.Timing(w, timing, reports.JSON, reports.Style{}) }), &got); err != nil {
		t.Fatal(err)
	}
	if got.Schema != 1 || math.Abs(got.Ceiling-float64(timing.Ceiling.Setting)) > 1e-6 || got.Binding.Where != "sealer" || len(got.Limits) != len(timing.Ceiling.Limits) {
		t.Errorf("schema %d, ceiling %g bound by %s, %d limits", got.Schema, got.Ceiling, got.Binding.Where, len(got.Limits))
	}
	for i, a := range got.Conveyors[0].Axes {
		axis := timing.Conveyors[0].Axes[i]
		if a.Name != axis.Name || math.Abs(a.Speed-axis.Peaks.Velocity.Value) > 1e-9 || len(a.Degrees) != 361 || len(a.Position) != 361 || a.Degrees[360] != 720 {
			t.Errorf("axis %d: %s, %d points", i, a.Name, len(a.Degrees))
		}
	}
}

func BenchmarkTimingReport(b *testing.B) {
	f, err := scenarios.Open("example:oat-drink", nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			b.Fatal(err)
		}
		if err := reports.Timing(io.Discard, timing, reports.Table, reports.Style{Width: 80}); err != nil {
			b.Fatal(err)
		}
	}
}
