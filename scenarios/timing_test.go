package scenarios_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"dwellcast/scenarios"
	"dwellcast/stations/motion"
	"pgregory.net/rapid"
)

// near demands that two figures agree to a share.
func near(t rapid.TB, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Max(math.Abs(want), 1e-12)) {
		t.Errorf("%s: got %.12g, want %.12g", what, got, want)
	}
}

func timed(t rapid.TB, f *scenarios.File) *scenarios.Timing {
	t.Helper()
	timing, err := scenarios.TimingOf(f)
	if err != nil {
		t.Fatal(err)
	}
	return timing
}

func oatDrink(t rapid.TB, overrides ...string) *scenarios.File {
	t.Helper()
	f, err := scenarios.Open("example:oat-drink", overrides)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// partTime is the mean time of a station's part; -1 where there is none.
func partTime(f *scenarios.File, station, name string) float64 {
	for _, st := range f.Line.Stations {
		for _, p := range st.Parts {
			if st.Name == station && p.Name == name {
				return p.Time.Mean().Seconds()
			}
		}
	}
	return -1
}

// stand240 is a stand of 240 degrees in a revolution that is the pace period, and a seal of which close and open take 0.2 s each.
const stand240 = `
setting: 1500 cartons/h
conveyor: {pitch: 6 in, revolution: pace, index: {from: 0 deg, to: 120 deg, law: cycloidal}, encoder: 262144 pulses/rev}
stations: [{name: filler, kind: fill}, {name: sealer, kind: seal, after: {pitches: 2}, lag: 0.02 s, close: 0.2 s, dwell: 1.0 s, open: 0.2 s}]
`

// TestStandOf240Degrees: a 240 degree stand and a 1.42 s seal cycle allow 1690/h; 0.1 s more dwell, 1579/h. By hand: 10 x 240 deg
// / 1.42 s, and / 1.52 s.
func TestStandOf240Degrees(t *testing.T) {
	for dwell, want := range map[string]float64{"1.0 s": 2400 / 1.42, "1.1 s": 2400 / 1.52} {
		setting, limit, known := scenarios.Ceiling(readLine(t, stand240, "sealer.dwell="+dwell))
		if !known || limit != "sealer: seal cycle within the stand" || math.Abs(setting-want) > 0.1 {
			t.Errorf("dwell %s: ceiling %.3f by %q (%v), want %.3f", dwell, setting, limit, known, want)
		}
	}
}

// TestBeyondCeiling: a setting is refused from the ceiling on, and inside a band; never by a file of times alone.
func TestBeyondCeiling(t *testing.T) {
	far := "sealer.after.pitches=14" // so many indexes that the wave builds up
	f := oatDrink(t, far)
	timing := timed(t, f)
	ceiling := float64(timing.Ceiling.Setting)
	at := func(setting float64, more ...string) []scenarios.LimitFinding {
		return scenarios.BeyondCeiling(oatDrink(t, append(more, far, fmt.Sprintf("setting=%.3f cartons/h", setting))...))
	}
	if broken := at(ceiling - 0.1); len(broken) != 0 {
		t.Errorf("just below the ceiling: %+v", broken)
	}
	if broken := at(ceiling + 0.1); len(broken) != 1 || broken[0].Where != "sealer" {
		t.Errorf("just above the ceiling: %+v", broken)
	}
	var band *motion.Band
	for _, l := range timing.Ceiling.Limits {
		if len(l.Bands) > 1 {
			band = &l.Bands[0]
		}
	}
	if band == nil {
		t.Fatal("the example has no forbidden band below its last")
	}
	quick := []string{"sealer.dwell=0.5 s", "sealer.heat.jaws=290 degC", "sealer.heat.wanted=50 degC", "sealer.heat.margin=0 s", "filler.dosing.splash=5 m/s"}
	if broken := at(float64(band.From+band.To)/2, quick...); len(broken) != 1 || broken[0].Kind != motion.SloshLimit || len(broken[0].Bands) == 0 {
		t.Errorf("inside the band %v: %+v", *band, broken)
	}
	for _, setting := range []float64{float64(band.From) - 0.1, float64(band.To) + 0.1} {
		if broken := at(setting, quick...); len(broken) != 0 {
			t.Errorf("%.2f cartons/h, beside the band %v: %+v", setting, *band, broken)
		}
	}
	plain, err := scenarios.Open("example:bench-line", []string{"setting=1800 cartons/h"})
	if err != nil {
		t.Fatal(err)
	}
	if broken := scenarios.BeyondCeiling(plain); len(broken) > 0 {
		t.Errorf("times alone: %+v", broken)
	}
	if _, _, known := scenarios.Ceiling(plain); known {
		t.Error("the ceiling of times alone is known")
	}
}

// TestBandUnderTheCeiling: where the lowest limit falls into a band, the ceiling is below the band, and the band's limit binds.
func TestBandUnderTheCeiling(t *testing.T) {
	f := oatDrink(t, "sealer.after.pitches=14", "sealer.dwell=0.8 s", "sealer.heat.jaws=290 degC", "sealer.heat.wanted=50 degC", "filler.dosing.splash=2.705 m/s")
	timing := timed(t, f)
	binding := timing.Ceiling.Binding()
	if binding == nil || binding.Kind != motion.SloshLimit {
		t.Fatalf("binding %+v at %v", binding, timing.Ceiling.Setting)
	}
	near(t, "ceiling", float64(timing.Ceiling.Setting), float64(binding.Bands[0].From), 1e-4)
}

// TestTimesFollowTheSetting: what the master times shrinks with the setting, what runs on its own does not.
func TestTimesFollowTheSetting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.6, 1.02).Draw(t, "k")
		setting := math.Round(14500*k) / 10
		f := oatDrink(t, fmt.Sprintf("setting=%.1f cartons/h", setting))
		pace := 3600 / setting
		c := f.Line.Conveyors[0]
		near(t, "revolution", c.Revolution.Seconds(), 0.8*pace, 1e-8)
		near(t, "index", c.Index.Seconds(), 0.8*pace*110/360, 1e-8)
		near(t, "fill and rest of the turn", partTime(f, "filler", "fill")+partTime(f, "filler", "rest of the turn"), 0.8*pace*250/360, 1e-8)
		base := oatDrink(t)
		near(t, "fill", partTime(f, "filler", "fill")/partTime(base, "filler", "fill"), 1450/setting, 1e-7)
		for _, name := range []string{"lag", "close", "dwell", "open"} {
			if partTime(f, "sealer", name) != partTime(base, "sealer", name) {
				t.Errorf("%s of the sealer changes with the setting", name)
			}
		}
	})
}

// TestPeaksScale: with cams that stretch with the pace, k times the setting gives k times the peak speed and k^2 times the peak
// acceleration, k^3 times the jerk, and so k^2 times the torque of a motor.
func TestPeaksScale(t *testing.T) {
	base := timed(t, oatDrink(t, "setting=1000 cartons/h"))
	for seed := range 12 {
		k := math.Round(100*rapid.Float64Range(0.5, 3).Example(seed)) / 100
		fast := timed(t, oatDrink(t, fmt.Sprintf("setting=%.0f cartons/h", 1000*k)))
		for i, a := range fast.Conveyors[0].Axes {
			b := base.Conveyors[0].Axes[i]
			near(t, a.Name+" speed", a.Peaks.Velocity.Value, k*b.Peaks.Velocity.Value, 1e-9)
			near(t, a.Name+" acceleration", a.Peaks.Acceleration.Value, k*k*b.Peaks.Acceleration.Value, 1e-9)
			near(t, a.Name+" jerk", a.Peaks.Jerk.Value, k*k*k*b.Peaks.Jerk.Value, 1e-9)
			near(t, a.Name+" motor speed", a.Load.Speed, k*b.Load.Speed, 1e-9)
			near(t, a.Name+" torque", a.Load.TorqueRMS, k*k*b.Load.TorqueRMS, 1e-9)
		}
	}
}

// TestCeilingIsRight: at the highest setting that a limit allows it holds, and above it it does not.
func TestCeilingIsRight(t *testing.T) {
	c := timed(t, oatDrink(t)).Ceiling
	for _, l := range c.Limits {
		if !l.Highest.Binds {
			continue
		}
		if m := l.Margin(l.Highest.Setting); m < 0 {
			t.Errorf("%s at its highest setting %.2f: margin %g", l.Name, l.Highest.Setting, m)
		}
		if m := l.Margin(l.Highest.Setting + 0.1); m >= 0 {
			t.Errorf("%s a tenth above its highest setting %.2f: margin %g", l.Name, l.Highest.Setting, m)
		}
	}
	for i := 1; i < len(c.Limits); i++ {
		if c.Limits[i-1].Highest.Binds && c.Limits[i].Highest.Binds && c.Limits[i-1].Highest.Setting > c.Limits[i].Highest.Setting {
			t.Errorf("%s stands before %s", c.Limits[i-1].Name, c.Limits[i].Name)
		}
	}
}

// TestSolvedPhases: a cam moved to its solved phase keeps its interlocks, and moved a little further does not.
func TestSolvedPhases(t *testing.T) {
	solved := map[string]scenarios.SolvedPhase{}
	for _, p := range timed(t, oatDrink(t)).Solved {
		if p.Fault != "" {
			t.Errorf("%s: %s", p.What, p.Fault)
		}
		solved[p.Where+": "+p.What] = p
	}
	violated := func(overrides ...string) string {
		for _, m := range timed(t, oatDrink(t, overrides...)).Margins {
			if !m.Kept() {
				return m.Name
			}
		}
		return ""
	}
	down := solved["filler: earliest descent of the nozzle"].Could
	for by, want := range map[float64]string{0.001: "", -0.1: "nozzle out of the carton while the conveyor moves"} {
		got := violated(fmt.Sprintf("filler.cams.nozzle.moves.down.from=%.4f deg", down+by), fmt.Sprintf("filler.cams.nozzle.moves.down.to=%.4f deg", down+by+73))
		if got != want {
			t.Errorf("descent %g deg from the earliest: violated %q, want %q", by, got, want)
		}
	}
	dose := solved["filler: latest reversal of the piston"].Could
	for by, want := range map[float64]bool{-0.001: false, 0.1: true} {
		got := violated(fmt.Sprintf("filler.cams.piston.moves.dose.from=%.4f deg", dose+by), fmt.Sprintf("filler.cams.piston.moves.dose.to=%.4f deg", dose+by+135))
		if (got != "") != want {
			t.Errorf("dose %g deg from the latest: violated %q, want a violation: %v", by, got, want)
		}
	}
}

// TestWindowsEndWithTheAct: the windows of a station follow one another and last as long as its act.
func TestWindowsEndWithTheAct(t *testing.T) {
	f := oatDrink(t)
	timing := timed(t, f)
	for i, st := range timing.Stations {
		var act time.Duration
		for _, p := range f.Line.Stations[i].Parts {
			act += p.Time.Mean()
		}
		last := st.Windows[len(st.Windows)-1].To
		near(t, st.Name, float64(last-st.Windows[0].From), act.Seconds(), 1e-9)
	}
}

// TestCriticalIsWithoutSlack: what is called critical makes the cycle longer by what it is late, and what has slack does not, up to its
// slack. Where the setting paces nothing is critical.
func TestCriticalIsWithoutSlack(t *testing.T) {
	cycle := func(f *scenarios.File) time.Duration { return scenarios.BudgetOf(f.Line).Sections[0].Cycle }
	for _, dwell := range []int{900, 1250, 1296, 1297, 1400} {
		set := fmt.Sprintf("sealer.dwell=%d ms", dwell)
		f := oatDrink(t, set)
		for _, st := range timed(t, f).Stations[:3] {
			path := map[string]string{"erector": "erector.bottom_seal=+1 ms", "sealer": "sealer.dwell=+1 ms"}[st.Name]
			if path == "" {
				continue // the filler rides on the master
			}
			longer := cycle(oatDrink(t, set, path)) > cycle(f)
			if st.Critical && !longer || st.Slack > 0.001 && longer {
				t.Errorf("dwell of %d ms: %s is critical (%v) with a slack of %v, and a millisecond more makes the cycle longer: %v", dwell, st.Name, st.Critical, st.Slack, longer)
			}
		}
	}
	for _, st := range timed(t, oatDrink(t)).Stations {
		if st.Critical {
			t.Errorf("%s is critical though the setting paces", st.Name)
		}
	}
}

func BenchmarkTiming(b *testing.B) {
	f, err := scenarios.Open("example:oat-drink", nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := scenarios.TimingOf(f); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBeyondCeiling(b *testing.B) {
	f, err := scenarios.Open("example:oat-drink", nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		scenarios.BeyondCeiling(f)
	}
}

// TestSlackIsOfTheCycleShown: on two conveyors, of which the second is slower than the setting, the slack of every station is what the cycle of
// its conveyor leaves beyond its need.
func TestSlackIsOfTheCycleShown(t *testing.T) {
	for _, cycle := range []string{"1.2 s", "1.7 s", "1.9 s", "3 s"} {
		f := readLine(t, "setting: 1500 cartons/h\nshift: {length: 1 h}\nstations:\n"+
			"  - {name: erector, kind: erect, bottom_seal: 0.9 s, conveyor: {index: 0.6 s, revolution: 2 s}}\n"+
			"  - {name: sealer, kind: seal, after: {pitches: 2}, close: 0.3 s, dwell: 0.9 s, open: 0.3 s}\n"+
			"  - {name: capper, kind: machine, conveyor: {index: 0.606 s, revolution: 2.2 s}, after: {buffer: 10 cartons}, cycle: "+cycle+"}\n"+
			"  - {name: robot, kind: offload, after: {pitches: 2}, cycle: 1.5 s}\n")
		timing, err := scenarios.TimingOf(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, st := range timing.Stations {
			if want := timing.Conveyors[st.Conveyor].Cycle - st.Needs; math.Abs(float64(st.Slack-want)) > 1e-9 {
				t.Errorf("capper of %s: %s has a slack of %v, its conveyor leaves it %v", cycle, st.Name, st.Slack, want)
			}
		}
	}
}
