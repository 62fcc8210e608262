package document_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// after applies an override to a document and returns the text at a path.
func after(t interface{ Fatal(...any) }, text, override, path string) (string, error) {
	root, err := document.Load("line.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := document.Apply(root, override); err != nil {
		return "", err
	}
	n, err := document.Find(root, path)
	if err != nil {
		t.Fatal(err)
	}
	return n.Raw(), nil
}

func TestSignedValuesAreChanges(t *testing.T) {
	const text = `
stations:
  - name: sealer
    dwell: {value: 1.25 s, low: 1.15 s, high: 1.40 s, source: measured}
    cycle: {normal: {mean: 2 s, sd: 0.1 s}}
    wait: {uniform: {from: 1 s, to: 3 s}}
    drop: {gamma: {shape: 4, scale: 5 s}}
    close: 280 ms
    reject: 0.4 %
    every: 900 cartons
    units: 2
`
	for _, c := range []struct{ change, path, want string }{
		{"sealer.close=+0.2s", "sealer.close", "480 ms"},
		{"sealer.close=-5 %", "sealer.close", "266 ms"},
		{"sealer.close=0.2s", "sealer.close", "0.2s"},
		{"sealer.reject=+0.1 %", "sealer.reject", "0.5 %"},
		{"sealer.every=+10 %", "sealer.every", "990 cartons"},
		{"sealer.units=+1", "sealer.units", "3"},
		{"sealer.dwell=+0.2 s", "sealer.dwell.value", "1.45 s"},
		{"sealer.dwell=+0.2 s", "sealer.dwell.high", "1.6 s"},
		{"sealer.dwell=+0.2 s", "sealer.dwell.source", "measured"},
		{"sealer.cycle=+0.2 s", "sealer.cycle.normal.mean", "2.2 s"},
		{"sealer.cycle=+0.2 s", "sealer.cycle.normal.sd", "0.1 s"},
		{"sealer.cycle=+10 %", "sealer.cycle.normal.sd", "0.11 s"},
		{"sealer.wait=+0.5 s", "sealer.wait.uniform.to", "3.5 s"},
		{"sealer.drop=+10 %", "sealer.drop.gamma.scale", "5.5 s"},
		{"sealer.drop=+10 %", "sealer.drop.gamma.shape", "4"},
	} {
		got, err := after(t, text, c.change, c.path)
		if err != nil || got != c.want {
			t.Errorf("%s: %s is %q (%v), want %q", c.change, c.path, got, err, c.want)
		}
	}
	for _, change := range []string{"sealer.drop=+1 s", "sealer.close=+1 mm", "sealer.name=+1 s", "sealer.open=+1 s", "sealer.close=+0.2", "sealer.close=+"} {
		if got, err := after(t, text, change, "sealer.close"); err == nil {
			t.Errorf("%s is accepted and gives %q", change, got)
		}
	}
}

// TestChangesAddUp: whatever the value and the change, in whatever units, the result is their sum to the nanosecond.
func TestChangesAddUp(t *testing.T) {
	units := []string{"s", "ms", "min"}
	rapid.Check(t, func(t *rapid.T) {
		value := fmt.Sprintf("%d %s", rapid.IntRange(1, 5000).Draw(t, "value"), rapid.SampledFrom(units).Draw(t, "unit"))
		change := fmt.Sprintf("%+d %s", rapid.IntRange(-5000, 5000).Draw(t, "change"), rapid.SampledFrom(units).Draw(t, "other"))
		got, err := after(t, "a: {b: "+value+"}\n", "a.b="+change, "a.b")
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, text := range []string{value, change} {
			q, err := quantity.Parse(text)
			if err != nil {
				t.Fatal(err)
			}
			sum += q.SI()
		}
		q, err := quantity.Parse(got)
		if err != nil {
			t.Fatal(err)
		}
		if d := q.SI() - sum; d > 1e-9 || d < -1e-9 {
			t.Errorf("%s %s = %s", value, change, got)
		}
	})
}
