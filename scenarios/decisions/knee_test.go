package decisions_test

import (
	"fmt"
	"math"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/stats"
)

// The knee of an undisturbed line is found to the nanosecond: 2.4 - 0.60 - 0.02 - 0.28 - 0.28 = 1.22 s of dwell.
func TestKneeOfUndisturbedLine(t *testing.T) {
	k := sweep(t, undisturbed(t), "good_rate", 2, "sealer.dwell=0.6s..1.6s/11").Knee
	if k == nil || k.At.Mean != 1.22 || k.At.HalfWidth() != 0 || !k.Exact {
		t.Fatalf("knee %+v, want exactly 1.22 s", k)
	}
	if k.From != decisions.SettingHolds || k.To.Name != "sealer" {
		t.Errorf("the bottleneck goes from %s to %s, want from the setting to sealer", k.From, k.To)
	}
	if math.Abs(k.Before.Mean) > 1e-9 {
		t.Errorf("slope %g before the knee, want a level line", k.Before.Mean)
	}
}

// behindBuffer is a machine paced at 1500 cartons/h, and a robot behind a buffer. The robot keeps up to a cycle of 2.4 s, whatever
// the buffer; the active periods change hands only when the buffer has filled within the shift.
func behindBuffer(t testing.TB, room int) *scenarios.File {
	return read(t, fmt.Sprintf("setting: 1500 cartons/h\nshift: {length: 8 h}\nstations:\n  - {name: maker, kind: machine, cycle: 1 s}\n"+
		"  - {name: robot, kind: offload, cycle: 2 s, after: {buffer: %d cartons}}\n", room))
}

// The knee is where the curve bends, not where the bottleneck is seen to change hands.
func TestKneeBehindABuffer(t *testing.T) {
	for _, room := range []int{1, 1200} {
		s := sweep(t, behindBuffer(t, room), "good_rate", 2, "robot.cycle=1.8s..3.2s/8")
		if k := s.Knee; k == nil || !k.At.Contains(2.4) || k.Exact || k.At.HalfWidth() > 0.005 {
			t.Errorf("room for %d: knee %+v, want 2.4 s to a carton", room, k)
		}
	}
}

// Curves that bend smoothly, or not at all, have no knee, however few shifts there are, and no knee is looked for in a chance.
func TestNoKneeWhereNoneIs(t *testing.T) {
	drawn := []string{"sealer.dwell={triangular: {low: 0.7 s, likely: 1.0 s, high: 1.5 s}}", "shift={length: 1 h}"}
	for _, c := range []struct {
		f      *scenarios.File
		figure string
		vary   string
		want   []decisions.Bend
	}{
		{example(t, "bench-line"), "good_rate", "sealer.dwell=0.6s..1.0s/9", []decisions.Bend{decisions.Straight, decisions.Level}},
		{example(t, "bench-line"), "good_rate", "sealer.dwell=1.3s..1.9s/9", []decisions.Bend{decisions.Straight, decisions.Smooth, decisions.Unclear}},
		{undisturbed(t), "good_rate", "sealer.dwell=1.3s..2.9s/9", []decisions.Bend{decisions.Straight, decisions.Smooth}},
		{example(t, "bench-line", drawn...), "good_rate", "setting=1300 cartons/h..1650 cartons/h/8", []decisions.Bend{decisions.Straight, decisions.Smooth, decisions.Unclear}},
		{example(t, "oat-drink"), "target_chance", "sealer.dwell=1.0s..1.6s/3", []decisions.Bend{decisions.NotSought}},
	} {
		seeds := uint64(1)
		if long() {
			seeds = 10
		}
		for seed := range seeds {
			s := sweepSeed(t, seed+1, c.f, c.figure, 30, c.vary)
			found := false
			for _, bend := range c.want {
				found = found || s.Bend == bend
			}
			if !found || s.Knee != nil {
				t.Errorf("%s over %s, seed %d: bend %v, knee %+v", c.figure, c.vary, seed+1, s.Bend, s.Knee)
			}
		}
	}
}

// kneeLines have knees that are known: the bench line's sealer paces it from a dwell of 1.22 s on, or up to a setting of 3600 / 2.33
// cartons/h; and a robot that paces a conveyor of its own.
var kneeLines = []struct {
	name  string
	knee  float64
	grids []string
}{
	{"dwell", 1.22, []string{"sealer.dwell=1.0s..1.5s/6", "sealer.dwell=0.9s..1.5s/13", "sealer.dwell=0.63s..1.61s/21"}},
	{"setting", 3600 / 2.33, []string{"setting=1300 cartons/h..1800 cartons/h/6", "setting=1200 cartons/h..1800 cartons/h/13", "setting=1337 cartons/h..1711 cartons/h/21"}},
	{"index", 0.67, []string{"conveyor.index=0.5s..0.9s/6", "conveyor.index=0.4s..1.0s/13", "conveyor.index=0.43s..0.81s/21"}},
}

// The interval of the knee holds the true one in 90 to 99 % of sweeps: over three lines, three grids, and 20, 100 and 400 shifts.
// What could not come by chance once in a thousand times counts as a miss.
func TestKneeCoverage(t *testing.T) {
	needsLong(t)
	for _, line := range kneeLines {
		for _, shifts := range []int{20, 100, 400} {
			covered, found, tried, width := 0, 0, 0, 0.0
			for g, grid := range line.grids {
				for seed := range uint64(max(3, 400/shifts)) {
					tried++
					s := sweepSeed(t, 1000*uint64(g+1)+seed, example(t, "bench-line"), "good_rate", shifts, grid)
					if s.Knee == nil {
						continue
					}
					found++
					width += s.Knee.At.HalfWidth()
					if s.Knee.At.Contains(line.knee) {
						covered++
					}
				}
			}
			least, _ := stats.CoverageBand(found, 0.9, 0.999)
			_, most := stats.CoverageBand(found, 0.99, 0.999)
			t.Logf("%s, %d shifts: %d of %d found, %d covered, half-width %.5g", line.name, shifts, found, tried, covered, width/float64(found))
			if covered < least || covered > most || found < tried*9/10 {
				t.Errorf("%s, %d shifts: the interval holds the knee %d times of %d, want %d to %d; %d sweeps", line.name, shifts, covered, found, least, most, tried)
			}
		}
	}
}
