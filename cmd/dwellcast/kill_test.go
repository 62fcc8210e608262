package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// TestKilledRunLeavesWholeFiles: whenever a run is killed, its output is not there, or whole; and the next run writes it.
func TestKilledRunLeavesWholeFiles(t *testing.T) {
	for _, after := range []time.Duration{0, 5, 20, 60, 150, 400} {
		cmd, _ := started(t, nil, "run", "example:bench-line", "--shifts", "2000", "-o", "out.json")
		time.Sleep(after * time.Millisecond)
		_ = cmd.Process.Signal(syscall.SIGKILL)
		_, _ = exitOf(cmd)
		path := filepath.Join(cmd.Dir, "out.json")
		if text, err := os.ReadFile(path); err == nil && !json.Valid(text) {
			t.Errorf("killed after %d ms: half of a file is left", after)
		}
		again, errs := started(t, nil, "run", "example:bench-line", "--shifts", "3", "-o", path)
		if status, _ := exitOf(again); status != done {
			t.Errorf("killed after %d ms: the next run ends with %d: %s", after, status, errs)
		}
		if text, err := os.ReadFile(path); err != nil || !json.Valid(text) {
			t.Errorf("killed after %d ms: the next run leaves no whole file: %v", after, err)
		}
	}
}
