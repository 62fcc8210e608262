package main

import (
	"bytes"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"
)

// screens are a call of every command that writes one.
var screens = [][]string{
	{"check", "example:oat-drink"},
	{"timing", "example:oat-drink"},
	{"run", "example:mixed-line", "--shifts", "2"},
	{"run", "example:bench-line", "--shifts", "3", "--explain"},
	{"compare", "example:bench-line", "--case", "a longer dwell of the sealer: sealer.dwell=1.3s", "--shifts", "2"},
	{"sweep", "example:bench-line", "--vary", "sealer.dwell=1s..1.3s/4", "--shifts", "3"},
	{"sweep", "example:bench-line", "--vary", "sealer.dwell=1s..1.3s/12", "--vary", "sealer.close=0.2s..0.3s/14", "--shifts", "2", "--set", "shift.length=1h"},
	{"pace", "example:bench-line", "--shifts", "3", "--settings", "4"},
	{"margin", "example:bench-line", "--vary", "sealer.dwell", "--shifts", "3"},
	{"size", "example:size-line", "--shifts", "2"},
	{"tornado", "example:oat-drink", "--shifts", "2"},
}

// Every screen, every help and every complaint fits the width that it is asked for.
func TestScreensFit(t *testing.T) {
	calls := append([][]string{
		{"--help"},
		{"run", "example:bench-line", "--set", "sealer.dwel=1s", "--set", "setting=3", "--set", "an.uncommonly.long.path.that.is.unknown=3s"},
	}, screens...)
	for _, c := range new(program).root().Commands() {
		calls = append(calls, []string{c.Name(), "--help"})
	}
	for _, width := range []int{40, 80} {
		t.Setenv("COLUMNS", strconv.Itoa(width))
		for _, args := range calls {
			var out, errs bytes.Buffer
			run(args, strings.NewReader(""), &out, &errs)
			if out.Len()+errs.Len() == 0 {
				t.Errorf("%q says nothing", args)
			}
			for line := range strings.Lines(out.String() + errs.String()) {
				if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > width && !toBeTyped(line) {
					t.Errorf("%q at %d columns has a line of %d: %s", args, width, n, line)
				}
			}
		}
	}
}

// toBeTyped says that a line is a word that can't be broken, or a command that a shell takes as it stands.
func toBeTyped(line string) bool {
	words := strings.Fields(line)
	return len(words) < 2 || words[0] == "dwellcast" || strings.HasPrefix(words[0], "--") || strings.HasPrefix(line, "\t")
}
