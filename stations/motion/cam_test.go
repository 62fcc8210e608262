package motion_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"dwellcast/stations/motion"

	"pgregory.net/rapid"
)

// axis is shorthand for a test's cam.
func axis(name string, segments ...motion.Segment) motion.Axis {
	return motion.Axis{Name: name, Segments: segments}
}

func segment(kind motion.SegmentKind, from, to motion.Degrees, travel float64, law motion.Law) motion.Segment {
	return motion.Segment{Name: string(kind), Kind: kind, From: from, To: to, Travel: travel, Law: law}
}

// TestAxisProblems: each mistake is found, named with its segment and its field.
func TestAxisProblems(t *testing.T) {
	law := motion.ModifiedSine()
	rise, back := segment(motion.Rise, 0, 60, 0.1, law), segment(motion.Return, 100, 160, 0.1, law)
	with := func(s motion.Segment, change func(*motion.Segment)) motion.Segment { change(&s); return s }
	for _, c := range []struct {
		name, path, words string
		axis              motion.Axis
	}{
		{"overlap", "segments[0].to", "overlaps return by 10 deg", axis("a", with(rise, func(s *motion.Segment) { s.To = 110 }), back)},
		{"overlap through zero", "segments[1].to", "overlaps rise by 20 deg", axis("a", rise, with(back, func(s *motion.Segment) { s.To = 20 }))},
		{"gap beside named dwells", "segments[1].to", "does not close", axis("a", rise, segment(motion.Dwell, 60, 90, 0, motion.Law{}), back,
			segment(motion.Dwell, 160, 360, 0, motion.Law{}))},
		{"return without rise", "segments[0].kind", "a return without a rise", axis("a", back)},
		{"rise without return", "segments[0].kind", "does not close", axis("a", rise)},
		{"unequal", "segments[1].travel", "does not close", axis("a", rise, with(back, func(s *motion.Segment) { s.Travel = 0.2 }))},
		{"no length", "segments[0].to", "has no length", axis("a", with(rise, func(s *motion.Segment) { s.To = 0 }), back)},
		{"zero index", "segments[0].to", "has no length", axis("a", segment(motion.Index, 30, 30, 0.1, law))},
		{"no stroke", "segments[1].travel", "travel of 0", axis("a", rise, with(back, func(s *motion.Segment) { s.Travel = 0 }))},
		{"NaN stroke", "segments[0].travel", "travel of NaN", axis("a", with(rise, func(s *motion.Segment) { s.Travel = math.NaN() }), back)},
		{"no law", "segments[0].law", "no motion law", axis("a", with(rise, func(s *motion.Segment) { s.Law = motion.Law{} }), back)},
		{"negative angle", "segments[0].from", "starts at -10 deg", axis("a", with(rise, func(s *motion.Segment) { s.From = -10 }), back)},
		{"too far", "segments[0].to", "ends at 800 deg", axis("a", with(rise, func(s *motion.Segment) { s.To = 800 }), back)},
		{"too long", "segments[0].to", "is 400 deg long", axis("a", segment(motion.Index, 10, 410, 0.1, law))},
		{"unknown kind", "segments[0].kind", `unknown kind "lift"`, axis("a", segment("lift", 0, 60, 0.1, law))},
		{"feeds and rises", "segments[2].kind", "cannot also rise", axis("a", rise, back, segment(motion.Index, 200, 300, 0.1, law))},
		{"dwell that travels", "segments[0].travel", "a dwell travels", axis("a", segment(motion.Dwell, 0, 360, 0.1, law))},
		{"empty", "segments", "has no segments", axis("a")},
	} {
		t.Run(c.name, func(t *testing.T) {
			cam, problems := motion.NewCam(c.axis)
			if cam != nil || len(problems) == 0 {
				t.Fatalf("cam %v with problems %v", cam, problems)
			}
			if problems[0].Path != c.path || !strings.Contains(problems[0].Error(), c.words) {
				t.Errorf("got %q at %s, want %q at %s", problems[0].Error(), problems[0].Path, c.words, c.path)
			}
		})
	}
}

func TestStraightLineIsCautioned(t *testing.T) {
	cautions := axis("conveyor", segment(motion.Index, 0, 90, 0.1, motion.StraightLine())).Cautions()
	if len(cautions) != 1 || cautions[0].Path != "segments[0].law" {
		t.Errorf("cautions %v", cautions)
	}
}

// TestCamReciprocates: a nozzle that goes down through the zero of the master, with positions from the law at a tenth
// of its way (s(0.1) of the 3-4-5 polynomial is 0.00856 by its formula).
func TestCamReciprocates(t *testing.T) {
	law := motion.Polynomial345()
	cam := camOf(t, axis("nozzle", segment(motion.Rise, 330, 30, 0.2, law), segment(motion.Return, 130, 190, 0.2, law)))
	for at, want := range map[motion.Degrees]float64{
		330: 0, 336: 0.2 * 0.00856, 0: 0.1, 360: 0.1, -360: 0.1, 30: 0.2, 90: 0.2, 130: 0.2, 136: 0.2 * (1 - 0.00856), 160: 0.1, 190: 0, 300: 0,
	} {
		near(t, "position", cam.Position(at), want, 1e-15)
	}
	crossings := cam.Crossings(0.1)
	if len(crossings) != 2 {
		t.Fatalf("crossings %v", crossings)
	}
	near(t, "return crossing", float64(crossings[0].At), 160, 1e-9)
	near(t, "rise crossing", math.Mod(float64(crossings[1].At), 360), 0, 1e-9)
	near(t, "moving", float64(cam.Moving()[1].From), 330, 0)
	near(t, "standing at the top", float64(cam.Standing()[0].Span()), 140, 1e-9)
	near(t, "standing in the carton", float64(cam.Standing()[1].Span()), 100, 1e-9)
}

// TestCamFeeds: position grows by the pitch with every revolution, forwards and backwards.
func TestCamFeeds(t *testing.T) {
	cam := feed(t, 0.1524, 110, motion.ModifiedSine())
	near(t, "stroke", cam.Stroke(), 0.1524, 0)
	for turns := -3; turns <= 3; turns++ {
		start := motion.Degrees(360 * turns)
		near(t, "at the start", cam.Position(start), 0.1524*float64(turns), 1e-12)
		near(t, "after the index", cam.Position(start+110), 0.1524*float64(turns+1), 1e-12)
		near(t, "standing", cam.Position(start+300), 0.1524*float64(turns+1), 1e-12)
	}
}

// TestCamMotionIsDerivative compares velocity, acceleration and jerk with differences of the position at times a
// little apart.
func TestCamMotionIsDerivative(t *testing.T) {
	law := motion.Polynomial4567()
	cam := camOf(t, axis("nozzle", segment(motion.Rise, 330, 30, 0.2, law), segment(motion.Return, 100, 190, 0.2, law)))
	const revolution, h = 2.0, 1e-4
	at := func(angle float64, dt float64) motion.Motion {
		return cam.Motion(motion.Degrees(angle+dt/revolution*360), revolution)
	}
	for angle := 0.5; angle < 360; angle++ {
		m, before, after := at(angle, 0), at(angle, -h), at(angle, h)
		near(t, "v", m.Velocity, (after.Position-before.Position)/(2*h), 1e-6)
		near(t, "a", m.Acceleration, (after.Velocity-before.Velocity)/(2*h), 1e-4)
		near(t, "j", m.Jerk, (after.Acceleration-before.Acceleration)/(2*h), 1e-2)
		near(t, "position", m.Position, cam.Position(motion.Degrees(angle)), 1e-15)
	}
}

// TestCamPeaks: no angle exceeds a peak, and the angle named reaches it; rms against a fine sum.
func TestCamPeaks(t *testing.T) {
	cam := camOf(t, axis("nozzle",
		segment(motion.Rise, 330, 30, 0.2, motion.Cycloidal()), segment(motion.Return, 100, 190, 0.2, motion.ModifiedSine())))
	const revolution = 2.0
	p := cam.Peaks(revolution)
	near(t, "v", math.Abs(cam.Motion(p.Velocity.At, revolution).Velocity), p.Velocity.Value, 1e-12)
	near(t, "a", math.Abs(cam.Motion(p.Acceleration.At, revolution).Acceleration), p.Acceleration.Value, 1e-9)
	sum := 0.0
	const looks = 360000
	for k := range looks {
		m := cam.Motion(motion.Degrees(360*(float64(k)+0.5)/looks), revolution)
		sum += m.Acceleration * m.Acceleration
		if math.Abs(m.Velocity) > p.Velocity.Value+1e-9 || math.Abs(m.Acceleration) > p.Acceleration.Value+1e-9 ||
			math.Abs(m.Jerk) > p.Jerk.Value+1e-6 {
			t.Fatalf("%+v exceeds %+v", m, p)
		}
	}
	near(t, "rms of a", p.AccelerationRMS, math.Sqrt(sum/looks), 1e-6*p.AccelerationRMS)
}

// TestPeaksScaleWithThePace: k times the setting means k times the peak speed and k squared the acceleration, k cubed
// the jerk, when the cams stretch with the pace.
func TestPeaksScaleWithThePace(t *testing.T) {
	laws := allLaws(t)
	rapid.Check(t, func(r *rapid.T) {
		law := laws[rapid.IntRange(0, len(laws)-1).Draw(r, "law")]
		k := rapid.Float64Range(0.1, 10).Draw(r, "k")
		setting := motion.CartonsPerHour(rapid.Float64Range(100, 5000).Draw(r, "setting"))
		master := motion.Master{Share: rapid.Float64Range(0.1, 1).Draw(r, "share"), Lanes: rapid.IntRange(1, 4).Draw(r, "lanes")}
		cam := feed(t, rapid.Float64Range(0.01, 1).Draw(r, "pitch"), rapid.Float64Range(10, 350).Draw(r, "index"), law)
		slow := cam.Peaks(master.RevolutionAt(setting))
		fast := cam.Peaks(master.RevolutionAt(setting * motion.CartonsPerHour(k)))
		for _, c := range [][3]float64{
			{slow.Velocity.Value, fast.Velocity.Value, 1}, {slow.Acceleration.Value, fast.Acceleration.Value, 2},
			{slow.Jerk.Value, fast.Jerk.Value, 3}, {slow.VelocityRMS, fast.VelocityRMS, 1}, {slow.AccelerationRMS, fast.AccelerationRMS, 2},
		} {
			if want := c[0] * math.Pow(k, c[2]); math.Abs(c[1]-want) > 1e-9*want {
				r.Fatalf("%v: %g became %g at %g times the setting, want %g", law, c[0], c[1], k, want)
			}
		}
	})
}

// TestMaster: arithmetic of the timing chart.
func TestMaster(t *testing.T) {
	near(t, "pace", float64(motion.Master{Lanes: 2}.Pace(1200)), 6, 1e-12)
	near(t, "share", float64(motion.Master{Share: 0.8}.RevolutionAt(1200)), 2.4, 1e-12)
	fixed := motion.Master{Revolution: 2}
	near(t, "on demand, pace longer", float64(fixed.CycleAt(1200)), 3, 1e-12)
	near(t, "on demand, revolution longer", float64(fixed.CycleAt(3600)), 2, 1e-12)
	near(t, "stand", float64(fixed.StandAt(1200, 90)), 2.5, 1e-12)
	fixed.Continuous = true
	near(t, "next cam zero", float64(fixed.CycleAt(1200)), 4, 1e-12)
	near(t, "cam zero in step", float64(fixed.CycleAt(900)), 4, 1e-12)
	if !math.IsInf(motion.CyclesUntilTimerSlips(3, 0.001), 1) {
		t.Error("a pace of whole timer steps never slips")
	}
}

func BenchmarkCamPosition(b *testing.B) {
	var angles [1024]motion.Degrees
	for i := range angles {
		_, f := math.Modf(float64(i) * math.Phi)
		angles[i] = motion.Degrees(360 * f)
	}
	for _, name := range []string{"modified sine", "polynomial 3-4-5", "cycloidal"} {
		law := mustLaw(b, name)
		nozzle := camOf(b, axis("nozzle", segment(motion.Rise, 330, 30, 0.2, law), segment(motion.Return, 100, 190, 0.2, law)))
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			sum := 0.0
			for i := range b.N {
				sum += nozzle.Position(angles[i&1023])
			}
			if math.IsNaN(sum) {
				b.Fatal(sum)
			}
		})
	}
}

// TestShotsClose: a stroke that returns in several shots, each written to four digits, closes: it is back where it began, and its shots are as
// written but for a thousandth. One that is off by more does not.
func TestShotsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stroke := rapid.Float64Range(0.01, 1).Draw(t, "stroke")
		shots := rapid.IntRange(2, 5).Draw(t, "shots")
		law := motion.ModifiedSine()
		segments := []motion.Segment{segment(motion.Rise, 0, 90, stroke, law)}
		left, written := stroke, 0.0
		for k := range shots {
			shot := left
			if k < shots-1 {
				shot *= rapid.Float64Range(0.3, 0.7).Draw(t, "share")
			}
			left -= shot
			digits, err := strconv.ParseFloat(strconv.FormatFloat(shot, 'g', 4, 64), 64)
			if err != nil {
				t.Fatal(err)
			}
			written += digits
			from := 100 + 50*motion.Degrees(k)
			segments = append(segments, segment(motion.Return, from, from+40, digits, law))
		}
		cam, problems := motion.NewCam(axis("piston", segments...))
		if problems != nil {
			t.Fatalf("%v of %v: %v", written, stroke, problems)
		}
		for k, s := range segments[1:] {
			moved := cam.Position(s.From) - cam.Position(s.To)
			if math.Abs(moved-s.Travel) > 1e-3*s.Travel {
				t.Errorf("shot %d moves %v, written %v", k+1, moved, s.Travel)
			}
		}
		if back := cam.Position(359.9); math.Abs(back) > 1e-12 {
			t.Errorf("ends %v from where it began", back)
		}
		segments[1].Travel += 0.0025 * stroke
		if cam, _ := motion.NewCam(axis("piston", segments...)); cam != nil {
			t.Error("a quarter of a percent too much is taken")
		}
	})
}
