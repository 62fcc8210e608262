package scenarios

import (
	"time"

	"dwellcast/stations"
)

const (
	firstStage = 50                      // shifts before a wanted precision is first looked at
	budget     = 1600 * time.Millisecond // of processor time for a run with the default number of shifts
	perAct     = 80 * time.Nanosecond    // about what one act of one station costs to simulate
)

// defaultReplications is a round number of shifts that two processors run in about a second. It depends on the line alone, so
// that the same file gives the same answer on any machine.
func defaultReplications(line *stations.Line) int {
	var acts float64
	for _, g := range line.Sections() {
		acts += float64(line.Shift.Length) / float64(cycleOf(line, g)) * float64(g.Last-g.First+1)
	}
	fit := float64(budget) / (acts * float64(perAct))
	for _, n := range []int{1000, 500, 200, 100, 50} {
		if fit >= float64(n) {
			return n
		}
	}
	return 30
}

// cycleOf is about how long a section's cycle takes, from its pace and its longest mean act.
func cycleOf(line *stations.Line, g stations.Group) time.Duration {
	cycle := time.Millisecond
	for i := g.First; i <= g.Last; i++ {
		var act time.Duration
		for _, part := range line.Stations[i].Parts {
			act += part.Time.Mean()
		}
		cycle = max(cycle, act/time.Duration(line.Stations[i].Units))
	}
	if line.Setting > 0 {
		cycle = max(cycle, line.Pace())
	}
	return cycle
}
