package stations_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/stations"
)

// TestBatchesAddUp: in every stretch of a long run of any line, ideal = good + losses, and the row for what is on the line is what came in
// less what went out: exactly without a setting, and with one, where stations run on their own, but for a place that each unit has taken for
// a carton not yet made, the cut cycle at either end and one carton of rounding.
func TestBatchesAddUp(t *testing.T) {
	forAnyLine(t, func(t *rapid.T, line *stations.Line) {
		line.Shift.Planned = nil
		s := newSimulation(t, line)
		before, step := s.NewTally(), line.Shift.Length/7
		at := time.Duration(0)
		err := s.Watched(1, 0, step, func(now *stations.Tally) bool {
			batch := s.NewTally()
			batch.Copy(now)
			batch.Subtract(before)
			before.Copy(now)
			checkBatch(t, s, batch, at, at+step)
			at += step
			return false
		})
		if err != nil {
			t.Fatal(err)
		}
	})
}

func checkBatch(t *rapid.T, s *stations.Simulation, batch *stations.Tally, from, to time.Duration) {
	ideal, losses := s.Batch(batch, from, to)
	if good := batch.Flow[stations.Good]; ideal != good+sum(losses) {
		t.Errorf("ideal %d, good %d, losses %d", ideal, good, sum(losses))
	}
	line := s.Line
	more := batch.Flow[stations.Entered] - batch.Flow[stations.Good] - batch.Flow[stations.Bad] - batch.Flow[stations.Scrapped]
	var off int64
	if line.Setting > 0 {
		if len(line.Conveyors) > 0 {
			return
		}
		off = int64(2*line.Stations[0].Units + 1)
	}
	for r, c := range s.Causes() {
		if c.Kind == stations.ContentChange && (losses[r] < more-off || losses[r] > more+off) {
			t.Errorf("%d cartons more on the line, the row says %d", more, losses[r])
		}
	}
}
