package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dwellcast/reports"
)

func TestReplaceFileWritesWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), "report.txt")
	for _, text := range []string{"first\n", "second, longer\n", "3\n"} {
		if err := replaceFile(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(path); string(got) != text {
			t.Errorf("file holds %q, want %q", got, text)
		}
	}
	onlyFile(t, path)
}

func TestReplaceFileKeepsModeAndLink(t *testing.T) {
	folder := t.TempDir()
	target, link := filepath.Join(folder, "target"), filepath.Join(folder, "link")
	if err := os.WriteFile(target, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, link); err != nil {
		t.Skip(err)
	}
	if err := replaceFile(link, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v", err)
	}
	info, err := os.Stat(target)
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode is %v (%v), want 0640", info.Mode().Perm(), err)
	}
	if got, _ := os.ReadFile(target); string(got) != "new" {
		t.Errorf("file holds %q", got)
	}
}

func TestReplaceFileWritesToDevices(t *testing.T) {
	before, err := os.Stat(os.DevNull)
	if err != nil {
		t.Skip(err)
	}
	if err := replaceFile(os.DevNull, []byte("text")); err != nil {
		t.Fatal(err)
	}
	if after, err := os.Stat(os.DevNull); err != nil || after.Mode() != before.Mode() {
		t.Errorf("%s was replaced", os.DevNull)
	}
}

func TestFailedReportLeavesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "report.txt")
	out, err := newOutput(path, "table")
	if err != nil {
		t.Fatal(err)
	}
	noFile(t, path)
	p := &program{stdout: &bytes.Buffer{}, stderr: &bytes.Buffer{}}
	broken := errors.New("broken")
	err = p.send(out, func(w io.Writer, _ reports.Style) error {
		_, _ = io.WriteString(w, "half a report")
		return broken
	})
	if !errors.Is(err, broken) {
		t.Errorf("error is %v", err)
	}
	noFile(t, path)
}

func TestOutputIsRefusedEarly(t *testing.T) {
	folder := t.TempDir()
	for path, word := range map[string]string{
		folder: "directory",
		filepath.Join(folder, "missing", "report.txt"): "no such file",
	} {
		_, err := newOutput(path, "table")
		if c, ok := errors.AsType[*complaint](err); !ok || c.status != badInput || !strings.Contains(err.Error(), word) {
			t.Errorf("%s: %v", path, err)
		}
	}
	if _, err := newOutput("", "pdf"); err == nil {
		t.Error("an unknown format was taken")
	}
}

// onlyFile is a check that path is alone in its folder: nothing temporary is left.
func onlyFile(t *testing.T, path string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(entries) != 1 {
		t.Errorf("folder holds %v (%v), want one file", entries, err)
	}
}
