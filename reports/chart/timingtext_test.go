package chart_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"dwellcast/reports/chart"

	"github.com/google/go-cmp/cmp"
)

func TestTimingText(t *testing.T) {
	for _, c := range []struct {
		file  string
		chart chart.Timing
		width int
		ascii bool
	}{
		{"timing-80.txt", cartonTiming(), 80, false},
		{"timing-80-ascii.txt", cartonTiming(), 80, true},
		{"timing-120.txt", cartonTiming(), 120, false},
		{"timing-paused-120.txt", pausedTiming(), 120, true},
		{"timing-crowded-80.txt", crowdedTiming(), 80, false},
	} {
		got, err := c.chart.Text(c.width, c.ascii)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(got, "\n") {
			if n := utf8.RuneCountInString(line); n > c.width {
				t.Errorf("%s: line of %d characters on a screen of %d: %s", c.file, n, c.width, line)
			}
			if strings.IndexFunc(line, func(r rune) bool { return r > '~' }) >= 0 && c.ascii {
				t.Errorf("%s: not ASCII: %s", c.file, line)
			}
		}
		file := filepath.Join("testdata", c.file)
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.file, diff)
		}
	}
}
