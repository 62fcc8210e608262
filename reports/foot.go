package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// caution stands at the foot of every report.
const caution = "Caution: a forecast of throughput or a time budget is no safety validation. Moving servos, hot jaws and stored energy " +
	"maim: guards, interlocks and lockout come before any change of speed or dwell, as local codes and licensed practice require."

// footSection says how to repeat the report.
func footSection(f *scenarios.Forecast) layout.Section {
	runs := quantity.FormatCount(int64(f.Replications), "shift")
	if f.Steady != nil {
		runs = "one long run"
	}
	notes := []string{fmt.Sprintf("%s, seed %d, intervals at %s, dwellcast %s%s", runs, f.Seed, layout.Confidence(f.Confidence), f.Version, repeats(f.Interrupted))}
	if f.File != "" {
		notes = append(notes, "File: "+f.File+changedWords(f.Changes))
	}
	if f.Repeat != "" && !f.Interrupted {
		notes = append(notes, "Repeat it: "+f.Repeat)
	}
	return layout.Section{Notes: append(notes, caution)}
}

// repeats says that a run that came to its end can be repeated.
func repeats(interrupted bool) string {
	if interrupted {
		return "; interrupted, so another run may stop elsewhere"
	}
	return "; the same file, seed and version give the same figures"
}

// changedWords says what was changed in a file.
func changedWords(changes []string) string {
	if len(changes) == 0 {
		return ""
	}
	return "; changed: " + strings.Join(changes, "; ")
}
