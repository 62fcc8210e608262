package reports_test

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"dwellcast/reports"
	"dwellcast/stations"
)

var update = flag.Bool("update", false, "rewrite the golden files in testdata")

// golden compares text with a file in testdata, or rewrites the file.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s differs (go test -update rewrites it):\n%s", name, diff)
	}
}

// written returns what a report writes.
func written(t *testing.T, write func(io.Writer) error) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestForecastScreens(t *testing.T) {
	for name, style := range map[string]reports.Style{"run-80.txt": {Width: 80}, "run-120.txt": {Width: 120}} {
		text := written(t, func(w io.Writer) error { return reports.Forecast(w, invented(), reports.Table, style) })
		golden(t, name, text)
		fits(t, name, text, style.Width)
	}
}

func TestForecastDocuments(t *testing.T) {
	for name, format := range map[string]reports.Format{"run.md": reports.Markdown, "run.csv": reports.CSV, "run.json": reports.JSON} {
		golden(t, name, written(t, func(w io.Writer) error { return reports.Forecast(w, invented(), format, reports.Style{}) }))
	}
}

func TestBudgetScreens(t *testing.T) {
	for name, style := range map[string]reports.Style{"check-80.txt": {Width: 80}, "check-120.txt": {Width: 120}} {
		text := written(t, func(w io.Writer) error { return reports.Budget(w, inventedBudget(nil), reports.Table, style) })
		golden(t, name, text)
		fits(t, name, text, style.Width)
	}
	odd := inventedBudget(func(line *stations.Line) {
		line.Setting, line.Stations[3].Units, line.Stations[3].StandLimit = 1800, 2, time.Second
		line.Conveyors[0].Release, line.Conveyors[0].Revolution = stations.AtCamZero, 1100*time.Millisecond
	})
	golden(t, "check-odd.txt", written(t, func(w io.Writer) error { return reports.Budget(w, odd, reports.Table, reports.Style{Width: 80}) }))
}

func TestBudgetDocuments(t *testing.T) {
	for name, format := range map[string]reports.Format{"check.md": reports.Markdown, "check.csv": reports.CSV, "check.json": reports.JSON} {
		golden(t, name, written(t, func(w io.Writer) error { return reports.Budget(w, inventedBudget(nil), format, reports.Style{}) }))
	}
}

// Long names from a file are folded, so that a screen still fits.
func TestLongNamesFit(t *testing.T) {
	f := invented()
	f.Title = strings.Repeat("a long title ", 12)
	for i := range f.Stations {
		f.Stations[i].Name = "station with rather a long name " + f.Stations[i].Name
	}
	f.Stops[0].Where, f.Stops[0].Cause = "antidisestablishmentarianisingstation", strings.Repeat("cause ", 12)
	f.Losses[2].Where, f.Losses[2].Cause = f.Stops[0].Where, f.Stops[0].Cause
	for _, width := range []int{0, 80, 120, 300} {
		text := written(t, func(w io.Writer) error { return reports.Forecast(w, f, reports.Table, reports.Style{Width: width}) })
		fits(t, "screen", text, max(width, 80))
	}
}

// Control characters in names don't reach the terminal.
func TestNoControlCharacters(t *testing.T) {
	f := invented()
	f.Title, f.Stops[0].Cause = "red \x1b[31m title", "bell\a"
	for _, format := range []reports.Format{reports.Table, reports.Markdown} {
		text := written(t, func(w io.Writer) error { return reports.Forecast(w, f, format, reports.Style{Width: 80}) })
		if bytes.ContainsAny(text, "\x1b\a") {
			t.Errorf("%s passes control characters on", format)
		}
	}
}

func fits(t *testing.T, name string, text []byte, width int) {
	t.Helper()
	for i, line := range strings.Split(string(text), "\n") {
		if n := utf8.RuneCountInString(line); n > width {
			t.Errorf("%s:%d is %d characters wide, more than %d: %s", name, i+1, n, width, line)
		}
	}
}
