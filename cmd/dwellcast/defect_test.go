package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestDefectIsOneLine: a mistake of the program itself ends with status 1 and no trace, which goes to a file where one is asked for.
func TestDefectIsOneLine(t *testing.T) {
	var stderr bytes.Buffer
	p := &program{stderr: &stderr}
	if status := p.report(defect("index out of range", []byte("goroutine 1"))); status != failed {
		t.Errorf("status %d", status)
	}
	if text := stderr.String(); strings.Contains(text, "goroutine") || !strings.Contains(text, "index out of range") {
		t.Errorf("says %q", text)
	}
	path := filepath.Join(t.TempDir(), "trace")
	t.Setenv(traceVariable, path)
	_ = defect("index out of range", []byte("goroutine 1"))
	if text, err := os.ReadFile(path); err != nil || !strings.Contains(string(text), "goroutine 1") {
		t.Errorf("the trace holds %q, %v", text, err)
	}
}
