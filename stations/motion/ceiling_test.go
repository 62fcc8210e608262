package motion_test

import (
	"math"
	"testing"

	"dwellcast/stations/motion"

	"pgregory.net/rapid"
)

// TestDwellCeiling: a 240 degree stand and a seal cycle of 1.42 s allow 1690/h; 0.1 s more dwell, 1579/h (arithmetic:
// 10 x 240/1.42).
func TestDwellCeiling(t *testing.T) {
	for needed, want := range map[motion.Seconds]float64{1.42: 2400 / 1.42, 1.52: 2400 / 1.52} {
		limit := motion.NewDwellLimit("dwell", motion.Master{}, 120, needed)
		got, err := motion.HighestAllowed(limit, 100, 5000)
		if err != nil || !got.Binds {
			t.Fatal(got, err)
		}
		near(t, "highest setting", float64(got.Setting), want, motion.SettingTolerance)
		if limit.Margin(got.Setting) < 0 {
			t.Errorf("%g/h is said to be allowed and has a margin of %g", float64(got.Setting), limit.Margin(got.Setting))
		}
	}
}

// TestDwellCeilingFixedRevolution: with the index taking a third of a fixed 1.8 s revolution, pace - 0.6 s >= 1.42 s
// allows 3600/2.02.
func TestDwellCeilingFixedRevolution(t *testing.T) {
	got, err := motion.HighestAllowed(motion.NewDwellLimit("dwell", motion.Master{Revolution: 1.8}, 120, 1.42), 100, 5000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "highest setting", float64(got.Setting), 3600/2.02, motion.SettingTolerance)
}

func TestHighestAllowedEnds(t *testing.T) {
	limit := motion.NewCycleLimit("robot", motion.RobotLimit, 2, 2.1)
	if got, err := motion.HighestAllowed(limit, 100, 2000); err != nil || got.Binds || got.Setting != 2000 {
		t.Errorf("two robots of 2.1 s up to 2000/h: %+v, %v", got, err)
	}
	if got, err := motion.HighestAllowed(limit, 4000, 5000); err == nil {
		t.Errorf("two robots of 2.1 s at 4000/h: %+v", got)
	}
	if _, err := motion.HighestAllowed(limit, 200, 100); err == nil {
		t.Error("a range that runs backwards")
	}
	bad := motion.Limit{Name: "NaN", Margin: func(motion.CartonsPerHour) float64 { return math.NaN() }}
	if _, err := motion.HighestAllowed(bad, 100, 200); err == nil {
		t.Error("a margin that is not a number allows nothing")
	}
}

// TestCeilingRanks: closed forms of the single limits, in order, for a line of one lane whose cams stretch with the
// pace.
func TestCeilingRanks(t *testing.T) {
	law := motion.ModifiedSine()
	conveyor := feed(t, 0.1524, 120, law)
	piston := camOf(t, axis("piston", segment(motion.Rise, 200, 350, 0.1, law), segment(motion.Return, 10, 190, 0.1, law)))
	drive := motion.Drive{TravelPerTurn: inch, RatedSpeed: 3000}
	var master motion.Master
	meter := motion.Piston{Area: 0.01}
	limits := []motion.Limit{
		motion.NewCycleLimit("robot", motion.RobotLimit, 1, 2),
		motion.NewDwellLimit("dwell", master, 120, 1.42),
		motion.NewAccelerationLimit("conveyor acceleration", master, conveyor, 2),
		motion.NewMotorLimit("conveyor motor", master, conveyor, drive),
		motion.NewFlowLimit("splash", master, piston, meter, motion.CircleArea(0.05), 1),
	}
	want := map[string]float64{
		"robot": 1800, "dwell": 2400 / 1.42,
		"conveyor acceleration": 1200 * math.Sqrt(2/(law.Coefficients().Ca*0.1524)),
		"conveyor motor":        1200 * 3000 * inch / 60 / (law.Coefficients().Cv * 0.1524),
		"splash":                1800 * motion.CircleArea(0.05) / (law.Coefficients().Cv * 0.1 * 0.01),
	}
	ceiling := motion.FindCeiling(limits, 100, 20000)
	last := motion.CartonsPerHour(0)
	for _, f := range ceiling.Findings {
		near(t, f.Limit.Name, float64(f.Highest.Setting), want[f.Limit.Name], motion.SettingTolerance)
		if f.Highest.Setting < last {
			t.Errorf("%s is out of order", f.Limit.Name)
		}
		last = f.Highest.Setting
	}
	if ceiling.Setting != ceiling.Findings[0].Highest.Setting {
		t.Errorf("the ceiling is %g, the binding limit %+v", float64(ceiling.Setting), ceiling.Findings[0].Highest)
	}
}

// TestForbiddenBandsKnown: bands of a margin whose negative parts are known, narrower than the steps of looking.
func TestForbiddenBandsKnown(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		width := rapid.Float64Range(0.5, 20).Draw(r, "width")
		centre := rapid.Float64Range(500, 2500).Draw(r, "centre")
		limit := motion.Limit{
			Name: "notch", DipWidth: width / centre,
			Margin: func(s motion.CartonsPerHour) float64 {
				x := (float64(s) - centre) / width
				return x*x/(1+x*x) - 0.2 // below 0 for |x| < 1/2
			},
			Dips: func(lo, hi motion.CartonsPerHour) []motion.CartonsPerHour { return nil },
		}
		bands := motion.ForbiddenBands(limit, 300, 3000)
		if len(bands) != 1 || math.Abs(float64(bands[0].From)-centre+width/2) > 0.02 || math.Abs(float64(bands[0].To)-centre-width/2) > 0.02 {
			r.Fatalf("notch of %g about %g: %+v", width, centre, bands)
		}
	})
}

// sloshLimit is the half gallon of the reference table on a conveyor of 120 deg.
func sloshLimit(t testing.TB, tank motion.Tank) motion.Limit {
	t.Helper()
	limit, err := motion.NewSloshLimit("slosh", motion.Master{}, feed(t, 0.1016, 120, motion.ModifiedSine()), tank, 0)
	if err != nil {
		t.Fatal(err)
	}
	return limit
}

// TestSloshBandsAgainstDenseLook: every setting on a grid far finer than the steps of looking is forbidden exactly
// where a band says so.
func TestSloshBandsAgainstDenseLook(t *testing.T) {
	tank := halfGallon()
	limit := sloshLimit(t, tank)
	bands := motion.ForbiddenBands(limit, 800, 2200)
	if len(bands) < 2 {
		t.Fatalf("bands %+v: want several, as at 1720/h the cycle is six slosh periods", bands)
	}
	inside := func(s motion.CartonsPerHour) bool {
		for _, b := range bands {
			if b.Contains(s) {
				return true
			}
		}
		return false
	}
	for s := motion.CartonsPerHour(800); s <= 2200; s += 0.1037 {
		m := limit.Margin(s)
		if (m < 0) != inside(s) && math.Abs(m) > 1e-6 {
			t.Fatalf("%g/h: margin %g m, in a band: %v; bands %+v", float64(s), m, inside(s), bands)
		}
	}
	for _, b := range bands {
		if limit.Margin(b.From-1.1*motion.SettingTolerance) < 0 && b.From > 800 || limit.Margin(b.From) >= 0 || limit.Margin(b.To) >= 0 {
			t.Errorf("edges of %+v are not exact", b)
		}
	}
}

// TestNarrowSloshBandIsFound: with next to no damping the bands are a few tenths of a carton per hour wide; each
// whole number of slosh periods must lie in one, unless the index itself leaves nothing there.
func TestNarrowSloshBandIsFound(t *testing.T) {
	tank := halfGallon()
	tank.Damping, tank.Modes, tank.Freeboard = 0.0002, 1, 0.03
	limit := sloshLimit(t, tank)
	bands := motion.ForbiddenBands(limit, 800, 1500)
	f := tank.Mode(1).Frequency
	for periods := math.Ceil(3600 * f / 1500); periods <= 3600*f/800; periods++ {
		setting := motion.CartonsPerHour(3600 * f / periods)
		found := false
		for _, b := range bands {
			found = found || b.Contains(setting)
		}
		if forbidden := limit.Margin(setting) < 0; forbidden != found {
			t.Errorf("%g periods, %g/h: forbidden %v, found %v", periods, float64(setting), forbidden, found)
		}
	}
}

func TestCeilingBelowBand(t *testing.T) {
	limit := sloshLimit(t, halfGallon())
	bands := motion.ForbiddenBands(limit, 800, 1800)
	last := bands[len(bands)-1]
	inBand := (last.From + last.To) / 2
	robot := motion.NewCycleLimit("robot", motion.RobotLimit, 1, motion.SecondsOf(motion.PacePeriod(inBand, 1).Duration()))
	c := motion.FindCeiling([]motion.Limit{limit, robot}, 800, 2200)
	if c.Setting >= last.From || limit.Margin(c.Setting) < 0 || robot.Margin(c.Setting) < 0 {
		t.Errorf("ceiling %g, band %+v", float64(c.Setting), last)
	}
}

func TestSloshLimitNeedsOneIndex(t *testing.T) {
	law := motion.ModifiedSine()
	twice := camOf(t, axis("conveyor", segment(motion.Index, 0, 90, 0.1, law), segment(motion.Index, 180, 270, 0.1, law)))
	if _, err := motion.NewSloshLimit("slosh", motion.Master{}, twice, halfGallon(), 0); err == nil {
		t.Error("two indexes in a revolution must be refused")
	}
}

// BenchmarkForbiddenBands is a whole sweep of slosh bands.
func BenchmarkForbiddenBands(b *testing.B) {
	limit := sloshLimit(b, halfGallon())
	for b.Loop() {
		motion.ForbiddenBands(limit, 800, 2200)
	}
}

// TestInterlockCeiling: of the filler's interlocks only the valve depends on the pace: its 5 ms need the 15 degrees
// between drawing and dispensing, so 120 ms a revolution or 30000/h.
func TestInterlockCeiling(t *testing.T) {
	f := filler(t)
	limit := motion.NewInterlockLimit("filler", motion.Master{}, f.Interlocks)
	got, err := motion.HighestAllowed(limit, 100, 50000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "highest setting", float64(got.Setting), 30000, motion.SettingTolerance)
	margins := f.Interlocks(2)
	if len(margins) != 5 {
		t.Fatalf("margins %v", margins)
	}
	tightest := motion.Tightest(margins)
	for _, m := range margins {
		if m.Time < tightest.Time {
			t.Errorf("%s is tighter than %s", m.Name, tightest.Name)
		}
		near(t, "ms", m.Milliseconds(), 1000*float64(m.Time), 0)
		near(t, "mm", m.Millimetres(), 1000*m.Distance, 0)
	}
	bad := fillerWith(t, 60, 195)
	if limit := motion.NewInterlockLimit("filler", motion.Master{}, bad.Interlocks); limit.Margin(100) >= 0 {
		t.Error("a nozzle in the carton while it moves is no better at a low setting")
	}
}

// TestJoltsAreNotAllowed: an axis whose velocity steps has an acceleration without bound; no limit of it, nor of the torque that it takes, is kept
// at any setting, and one of its speed alone is as that of any law.
func TestJoltsAreNotAllowed(t *testing.T) {
	law := mustLaw(t, "straight line")
	rapid.Check(t, func(t *rapid.T) {
		travel, setting := rapid.Float64Range(0.01, 1).Draw(t, "travel"), motion.CartonsPerHour(rapid.Float64Range(10, 5000).Draw(t, "setting"))
		cam, problems := motion.NewCam(axis("conveyor", segment(motion.Index, 0, motion.Degrees(rapid.IntRange(30, 300).Draw(t, "angle")), travel, law)))
		if problems != nil {
			t.Fatal(problems)
		}
		master := motion.Master{Share: rapid.Float64Range(0.3, 1).Draw(t, "share")}
		for name, l := range map[string]motion.Limit{
			"acceleration": motion.NewAccelerationLimit("acceleration", master, cam, rapid.Float64Range(0.1, 100).Draw(t, "highest")),
			"torque":       motion.NewMotorLimit("drive", master, cam, motion.Drive{TravelPerTurn: 0.1, Mass: 1, PeakTorque: rapid.Float64Range(0.1, 1000).Draw(t, "peak")}),
		} {
			if m := l.Margin(setting); m >= 0 {
				t.Errorf("%s: a margin of %v", name, m)
			}
		}
		speed := motion.NewMotorLimit("drive", master, cam, motion.Drive{TravelPerTurn: 0.1, Mass: 1, RatedSpeed: 1e9})
		if m := speed.Margin(setting); !(m > 0) {
			t.Errorf("speed: a margin of %v", m)
		}
	})
}
