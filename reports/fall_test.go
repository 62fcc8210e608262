package reports_test

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/reports"
)

var (
	fallRow  = regexp.MustCompile(`(?m)^  station (cause \d+) +-([.\d]+) \|`)
	lossRow  = regexp.MustCompile(`(?m)^  station +(cause \d+) +-([.\d]+) `)
	steps    = regexp.MustCompile(`(?m)^  (?:station cause \d+|all others) +(-?)(-?[.\d]+) \|`)
	endsFall = regexp.MustCompile(`(?m)^  (ideal|good) +([.\d]+) \|`)
)

// On any screen of a run every step of the picture is the row of the loss sheet under it, to the digit, and the steps lead from ideal to good.
func TestFallIsThatOfTheSheet(t *testing.T) {
	seen := false
	rapid.Check(t, func(t *rapid.T) {
		var out strings.Builder
		if err := reports.Forecast(&out, drawSheet(t), reports.Table, reports.Style{Width: 120}); err != nil {
			t.Fatal(err)
		}
		rows := map[string]string{}
		for _, row := range lossRow.FindAllStringSubmatch(out.String(), -1) {
			if !strings.Contains(row[0], "|") {
				rows[row[1]] = row[2]
			}
		}
		for _, step := range fallRow.FindAllStringSubmatch(out.String(), -1) {
			seen = true
			if rows[step[1]] != step[2] {
				t.Errorf("%s falls by %s, the sheet says %s", step[1], step[2], rows[step[1]])
			}
		}
		ends := endsFall.FindAllStringSubmatch(out.String(), -1)
		if len(ends) != 2 {
			return // nothing is lost, or there is no picture
		}
		left := tenths(t, ends[0][2])
		for _, step := range steps.FindAllStringSubmatch(out.String(), -1) {
			left += tenths(t, step[1]+step[2])
		}
		if left != tenths(t, ends[1][2]) {
			t.Errorf("the steps lead to %g tenths, good is %s", left, ends[1][2])
		}
	})
	if !seen {
		t.Error("no picture was drawn at all")
	}
}
