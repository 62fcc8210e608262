package scenarios_test

import (
	"testing"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// TestEveryKindIsWhole: each kind of station that a file may name can be read, and what limits the speed of one, on a conveyor or on its own, has a name, and says
// what lifts it. A new kind fails here until its reader, its act and its limit have words.
func TestEveryKindIsWhole(t *testing.T) {
	acts := map[string]string{"erect": "bottom_seal: 1.9 s", "fill": "fill: 1.9 s", "seal": "close: 0.2 s, dwell: 1.5 s, open: 0.2 s", "offload": "cycle: 1.9 s", "machine": "cycle: 1.9 s"}
	for _, kind := range stations.KindNames() {
		act, known := acts[kind]
		if !known {
			t.Errorf("%s is not looked at: give it an act here", kind)
			continue
		}
		for _, conveyor := range []string{"conveyor: {index: 0.6 s, revolution: 2 s}\n", ""} {
			f := readLine(t, "setting: 1000 cartons/h\nshift: {length: 1 h}\n"+conveyor+"stations:\n  - {name: it, kind: "+kind+", "+act+"}\n")
			timing, err := scenarios.TimingOf(f)
			if err != nil {
				t.Errorf("%s: %v", kind, err)
				continue
			}
			if b := timing.Ceiling.Binding(); b == nil || b.Where != "it" || b.Name == "" || b.Lift == "" {
				t.Errorf("%s: what binds is %+v, want a limit of the station, with a name and what lifts it", kind, b)
			}
		}
	}
}
