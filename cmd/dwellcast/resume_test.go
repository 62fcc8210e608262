package main

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A decision that is interrupted again and again, and gone on from each time, ends in the same bytes as an uninterrupted one.
func TestResumeGivesTheSameBytes(t *testing.T) {
	for _, args := range [][]string{
		{"sweep", "example:bench-line", "--vary", "sealer.dwell=1s..1.5s/7", "--shifts", "60"},
		{"pace", "example:bench-line", "--shifts", "40", "--settings", "6", "--zone", "0.02%"},
		{"margin", "example:bench-line", "--vary", "sealer.dwell", "--vary", "setting", "--shifts", "40"},
		{"compare", "example:what-if", "--shifts", "10", "--precision", "0.1%", "--ceiling", "40"},
		{"run", "example:bench-line", "--explain", "--shifts", "60"},
	} {
		t.Run(args[0], func(t *testing.T) {
			want, status := within(time.Hour, args)
			if status != done && status != notMet {
				t.Fatalf("exit status %d", status)
			}
			args = append(args, "--resume", filepath.Join(t.TempDir(), "results.json"))
			interruptions := 0
			for patience := 15 * time.Millisecond; ; patience += patience / 4 {
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

// within runs a command for so long at the most, and returns what it prints and its exit status.
func within(patience time.Duration, args []string) (string, int) {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	var out, errs bytes.Buffer
	p := &program{stdin: strings.NewReader(""), stdout: &out, stderr: &errs}
	root := p.root()
	root.SetArgs(args)
	if err := root.ExecuteContext(ctx); err != nil {
		return out.String(), p.report(err)
	}
	return out.String(), done
}
