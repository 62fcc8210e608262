package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A sizing, and a tornado of it, that are interrupted and gone on from end in the same bytes as uninterrupted ones.
func TestResumeSizing(t *testing.T) {
	study := filepath.Join(t.TempDir(), "study.yaml")
	if err := os.WriteFile(study, []byte(`
line: example:bench-line
size:
  demand: {low: 5000000 cartons, likely: 5300000 cartons, high: 5400000 cartons}
  calendar: {days: 250, shifts: 2}
  attendant: 30 money/h
  candidates:
    - {name: as it is}
    - {name: longer dwell, changes: {sealer.dwell: {low: 1.1 s, likely: 1.3 s, high: 1.4 s}}}
`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, command := range []string{"size", "tornado"} {
		t.Run(command, func(t *testing.T) {
			args := []string{command, study, "--shifts", "40"}
			want, status := within(time.Hour, args)
			if status != done && status != notMet {
				t.Fatalf("exit status %d", status)
			}
			args = append(args, "--resume", filepath.Join(t.TempDir(), "results.json"))
			interruptions := 0
			for patience := 20 * time.Millisecond; ; patience += patience / 3 {
				got, status := within(patience, args)
				if status == failed {
					interruptions++
					continue
				}
				if got != want {
					t.Errorf("after %d interruptions:\n%s\nwant:\n%s", interruptions, got, want)
				}
				break
			}
			if interruptions == 0 {
				t.Error("it was never interrupted")
			}
		})
	}
}
