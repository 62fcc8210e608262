package reports_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// steadyLine is a line without chance: some of its quantities in hours or minutes, some counted.
func steadyLine(t *rapid.T) string {
	ms := func(name string, low, high int) string {
		return fmt.Sprintf("%d ms", rapid.IntRange(low, high).Draw(t, name))
	}
	return fmt.Sprintf(`setting: %d cartons/h
shift: {length: 20 min}
conveyor: {index: %s}
stations:
  - {name: erector, kind: erect, bottom_seal: %s}
  - name: sealer
    kind: seal
    after: {pitches: 2}
    close: 0.2 s
    dwell: %s
    open: 0.2 s
    stops: [{cause: jam, every: {constant: %d cartons}, clear: %.4f h, attendant: false}]
  - name: robot
    kind: offload
    after: {buffer: %d cartons}
    cycle: %s
    pallet: {every: %d cartons, takes: %.3f min}
`, rapid.IntRange(1000, 2000).Draw(t, "setting"), ms("index", 300, 900), ms("bottom", 500, 1500), ms("dwell", 500, 2000), rapid.IntRange(30, 200).Draw(t, "every"),
		rapid.Float64Range(0.003, 0.03).Draw(t, "clear"), rapid.IntRange(1, 60).Draw(t, "buffer"), ms("cycle", 1000, 2500), rapid.IntRange(20, 120).Draw(t, "holds"),
		rapid.Float64Range(0.1, 1).Draw(t, "takes"))
}

var steadyPaths = []string{"setting", "conveyor.index", "sealer.dwell", "sealer.stops.jam.every.constant", "sealer.stops.jam.clear", "robot.after.buffer", "robot.cycle",
	"robot.pallet.every", "robot.pallet.takes"}

// good is the output of one shift.
func good(t *testing.T, f *scenarios.File) float64 {
	shifts, err := scenarios.NewShifts(f, scenarios.Options{Seed: 1, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := shifts.Extend(context.Background(), 1); err != nil {
		t.Fatal(err)
	}
	return shifts.Good()[0]
}

// question is a question to margin, about a line without chance.
type question struct {
	line, path string
	spec       decisions.MarginSpec
	need       float64
}

var questions = rapid.Custom(func(t *rapid.T) question {
	q := question{line: steadyLine(t), path: rapid.SampledFrom(steadyPaths).Draw(t, "path"), spec: decisions.MarginSpec{Replications: 2}}
	if rapid.Bool().Draw(t, "target") {
		q.need = rapid.SampledFrom([]float64{0.95, 1.02}).Draw(t, "share")
	} else {
		q.spec.Keep = rapid.SampledFrom([]float64{0.9, 0.98, 0.995}).Draw(t, "keep")
	}
	return q
})

// What the screen of margin says of lines without chance is so: the printed limit, read back as a user would type it, keeps the
// threshold, and one more in its last digit does not; and where nothing is found, the output at the worst value, or the best, lies
// on the side that is claimed.
func TestMarginsHold(t *testing.T) {
	rows := 25
	if os.Getenv("DWELLCAST_LONG") != "" {
		rows = 400
	}
	limits, none := 0, 0
	for seed := range rows {
		q := questions.Example(seed)
		f, err := scenarios.Read("line.yaml", strings.NewReader(q.line), nil)
		if err != nil {
			t.Fatal(err)
		}
		path, spec := q.path, q.spec
		spec.Paths = []string{path}
		need := spec.Keep * good(t, f)
		if spec.Keep == 0 {
			spec.Target = math.Round(good(t, f) * q.need)
			need = spec.Target
		}
		m, err := decisions.FindMargins(context.Background(), scenarios.NewLab("test", scenarios.Options{Seed: 1}), f, 1, spec)
		if err != nil {
			t.Fatal(err)
		}
		kept := func(value string) bool {
			changed, err := f.With(path + "=" + value)
			if err != nil {
				t.Fatalf("%s=%s: %v", path, value, err)
			}
			return good(t, changed) >= need
		}
		one := &m.List[0]
		if !one.Found {
			none++
			if at, claim := kept(one.Reach.String()), m.Met; at != claim {
				t.Fatalf("%s: met today %v, but at %s kept is %v", path, m.Met, one.Reach, at)
			}
			continue
		}
		limits++
		fields := regexp.MustCompile(regexp.QuoteMeta(path) + `\s+(\S+)\s+(\S+)\s+exact`).FindStringSubmatch(screen(t, m))
		if fields == nil {
			t.Fatalf("no limit of %s in\n%s", path, screen(t, m))
		}
		limit, err := strconv.ParseFloat(fields[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		outward := one.Step
		if one.Grows != m.Met {
			outward = -outward
		}
		at := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + " " + one.Today.Unit() }
		if !kept(fields[2] + " " + one.Today.Unit()) {
			t.Fatalf("%s: the threshold is not kept at %s", path, fields[2])
		}
		for _, share := range []float64{0.25, 0.5, 0.75, 0.9} {
			between := roundTo(one.Today.Number()+share*(limit-one.Today.Number()), one.Step)
			if met := kept(at(between)); met != m.Met && math.Abs(between-limit) > one.Step {
				t.Errorf("%s: from %s to %s the threshold is kept %v, but at %s %v", path, one.Today, fields[2], m.Met, at(between), met)
			}
		}
		if beyond := roundTo(limit+outward, one.Step); kept(at(beyond)) {
			t.Fatalf("%s: the threshold is kept at %s, beyond %s", path, at(beyond), fields[2])
		}
	}
	t.Logf("%d limits, %d without", limits, none)
}

// roundTo takes the noise of binary numbers off a multiple of a step.
func roundTo(x, step float64) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(math.Round(x/step)*step, 'f', 10, 64), 64)
	return rounded
}

func screen(t *testing.T, m *decisions.Margins) string {
	var out bytes.Buffer
	write := func(w io.Writer) error {
		return reports.Margin(w, m, ofStudy, reports.Table, reports.Style{Width: 160})
	}
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}
