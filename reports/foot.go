package reports

import (
	"fmt"

	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// caution stands at the foot of every report.
const caution = "Caution: a forecast of throughput or a time budget is no safety validation. Moving servos, hot jaws and stored energy " +
	"maim: guards, interlocks and lockout come before any change of speed or dwell, as local codes and licensed practice require."

// footSection says how to repeat the report.
func footSection(f *scenarios.Forecast) section {
	runs := quantity.FormatCount(int64(f.Replications), "replication")
	if f.Steady != nil {
		runs = "one long run"
	}
	return section{notes: []string{
		fmt.Sprintf("%s, seed %d, intervals at %s, dwellcast %s; the same file, seed and version give the same figures",
			runs, f.Seed, confidence(f.Confidence), f.Version),
		caution,
	}}
}
