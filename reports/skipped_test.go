package reports

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios/decisions"
)

// TestEveryReasonIsGiven: of settings that were left out each reason is named, with the settings that it holds for.
func TestEveryReasonIsGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var skipped []decisions.SkippedSetting
		for k, why := range rapid.SliceOfN(rapid.SampledFrom([]string{"slosh", "splash", "glue"}), 0, 12).Draw(t, "reasons") {
			skipped = append(skipped, decisions.SkippedSetting{Setting: 1000 + float64(k), Refused: why})
		}
		notes := strings.Join(skippedNotes(skipped), "\n")
		changes := 0
		for k, s := range skipped {
			if !strings.Contains(notes, s.Refused) {
				t.Errorf("nothing is said of %s:\n%s", s.Refused, notes)
			}
			if k == 0 || skipped[k-1].Refused != s.Refused {
				changes++
			}
		}
		if got := strings.Count(notes, "Left out"); got != changes {
			t.Errorf("%d notes of %d reasons in turn:\n%s", got, changes, notes)
		}
	})
}
