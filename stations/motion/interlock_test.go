package motion_test

import (
	"math"
	"strings"
	"testing"

	"dwellcast/stations/motion"

	"pgregory.net/rapid"
)

// filler is an invented bottom-up filler: the conveyor moves 0..110 deg, the nozzle goes down 120..180 and up
// 185..325, the piston dispenses 195..280 and draws 290..180.
func filler(t testing.TB) motion.FillStation {
	t.Helper()
	return fillerWith(t, 120, 195)
}

func fillerWith(t testing.TB, descent, reversal motion.Degrees) motion.FillStation {
	t.Helper()
	law := motion.Polynomial345()
	return motion.FillStation{
		Conveyor: camOf(t, axis("conveyor", segment(motion.Index, 0, 110, 0.1524, motion.ModifiedSine()))),
		Nozzle: camOf(t, axis("nozzle", segment(motion.Rise, descent, descent+60, 0.2286, law),
			segment(motion.Return, 185, 325, 0.2286, law))),
		Piston: camOf(t, axis("piston", segment(motion.Return, reversal, reversal+85, 0.14, law),
			segment(motion.Rise, 290, 180, 0.14, law))),
		RimBelowTop: 0.0381, TopAboveBottom: 0.2386, PistonArea: 18.046875 * inch * inch, CartonArea: 0.0120,
		DoseStroke: 0.14, LeastAboveLevel: 0.002, MostAboveLevel: 0.06, ValveLag: 0.005,
	}
}

// TestNozzleInterlockByHand: the tip passes the rim where 0.2286 s = 0.0381, so a sixth of the stroke down; z(1/6) of
// the 3-4-5 polynomial by its own inverse, checked by the reference rows.
func TestNozzleInterlockByHand(t *testing.T) {
	f := filler(t)
	m := f.NozzleOutWhileMoving(2)
	z := motion.Polynomial345().Inverse(1. / 6)
	down := 120 + 60*z
	near(t, "angle", float64(m.Angle), math.Min(down-110, 360-(325-140*z)), 1e-9)
	near(t, "time", float64(m.Time), float64(m.Angle)/180, 1e-12)
	near(t, "distance", m.Distance, 0.0381, 1e-12)
	if !m.Kept() {
		t.Errorf("%+v is not kept", m)
	}
}

func TestNozzleInterlockViolated(t *testing.T) {
	f := fillerWith(t, 60, 195)
	m := f.NozzleOutWhileMoving(2)
	if m.Kept() || m.Angle >= 0 || m.Distance >= 0 {
		t.Errorf("a nozzle that is down at 120 deg while the conveyor moves to 110: %+v", m)
	}
	near(t, "overlap", float64(m.Angle), -(110 - (60 + 60*motion.Polynomial345().Inverse(1./6))), 1e-8)
	near(t, "depth at 110 deg", m.Distance, 0.0381-f.Nozzle.Position(110), 1e-9)
	near(t, "where", float64(m.DistanceAt), 110, 1e-9)
}

// level is the height of the liquid above the bottom at an angle after the reversal, straight from the piston's
// position.
func level(f motion.FillStation, reversal, at float64) float64 {
	end := math.Min(at, reversal+85)
	return f.PistonArea / f.CartonArea * (f.Piston.Position(motion.Degrees(reversal)) - f.Piston.Position(motion.Degrees(end)))
}

// TestLevelInterlocksAgainstSampling: the proved margins are never above a fine sampling of the plain definition, and
// reach it.
func TestLevelInterlocksAgainstSampling(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		reversal := rapid.Float64Range(181, 204).Draw(r, "reversal")
		f := fillerWith(t, 120, motion.Degrees(reversal))
		f.LeastAboveLevel = rapid.Float64Range(0, 0.02).Draw(r, "least")
		least, most := math.Inf(1), math.Inf(1)
		leaves := 325 - 140*motion.Polynomial345().Inverse(1./6)
		const looks = 20000
		gap := func(at float64) float64 {
			return f.TopAboveBottom - f.Nozzle.Position(motion.Degrees(at)) - level(f, reversal, at)
		}
		for k := range looks + 1 {
			part := float64(k) / looks
			least = math.Min(least, gap(reversal+(leaves-reversal)*part)-f.LeastAboveLevel)
			most = math.Min(most, f.MostAboveLevel-gap(reversal+85*part))
		}
		for _, c := range []struct {
			m       motion.Margin
			sampled float64
		}{{f.TipAboveLevel(2), least}, {f.TipNearLevel(2), most}} {
			if c.m.Distance > c.sampled+1e-9 || c.m.Distance < c.sampled-1e-6 {
				r.Fatalf("%s: %.9g m at %g deg, sampled %.9g", c.m.Name, c.m.Distance, float64(c.m.DistanceAt), c.sampled)
			}
			if (c.m.Angle < 0) != (c.m.Distance < -1e-8) && math.Abs(c.m.Distance) > 1e-8 {
				r.Fatalf("%s: angle %g and distance %g disagree", c.m.Name, float64(c.m.Angle), c.m.Distance)
			}
		}
	})
}

func TestDoseDrawn(t *testing.T) {
	f := filler(t)
	m := f.DoseDrawn(2)
	near(t, "angle", float64(m.Angle), 15-0.005*180, 1e-9) // 15 deg between drawing and dispensing, less 5 ms at 180 deg/s
	near(t, "distance", m.Distance, 0, 1e-12)
	f.DoseStroke = 0.17
	if m := f.DoseDrawn(2); m.Kept() {
		t.Errorf("a dose larger than what is drawn: %+v", m)
	}
	f = filler(t)
	f.ValveLag = 0.1
	if m := f.DoseDrawn(2); m.Kept() {
		t.Errorf("a valve slower than the stand of the piston: %+v", m)
	}
}

func TestDoseInsideCarton(t *testing.T) {
	f := filler(t)
	m := f.DoseInsideCarton(2)
	leaves := 325 - 140*motion.Polynomial345().Inverse(1./6)
	near(t, "angle", float64(m.Angle), leaves-280, 1e-8)
	near(t, "where", float64(m.AngleAt), 280, 1e-9)
	near(t, "distance", m.Distance, f.Nozzle.Position(280)-0.0381, 1e-9)
}

func TestFillStationProblems(t *testing.T) {
	if problems := filler(t).Problems(); problems != nil {
		t.Errorf("a good station: %v", problems)
	}
	f := filler(t)
	f.RimBelowTop, f.CartonArea, f.MostAboveLevel = 0.3, 0, 0.001
	var text strings.Builder
	for _, p := range f.Problems() {
		text.WriteString(p.Path + " ")
	}
	if text.String() != "rim_below_top piston_area above_level " {
		t.Errorf("problems of %s", text.String())
	}
}

// TestEarliestDescent: at the solved angle the interlock holds with exactly the wanted room, a hair earlier it does
// not.
func TestEarliestDescent(t *testing.T) {
	for _, keep := range []motion.Degrees{0, 1, 5} {
		f := fillerWith(t, 125, 195)
		from, err := f.EarliestDescent(keep)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "descent", float64(from), 110+float64(keep)-60*motion.Polynomial345().Inverse(1./6), 1e-9)
		at := fillerWith(t, from, 195).NozzleOutWhileMoving(2)
		near(t, "room", float64(at.Angle), float64(keep), 1e-7)
		if early := fillerWith(t, from-0.001, 195).NozzleOutWhileMoving(2); early.Angle >= keep {
			t.Errorf("0.001 deg earlier still leaves %g deg", float64(early.Angle))
		}
	}
}

// TestLatestReversal: at the solved angle all interlocks of the dose hold; a little later one does not.
func TestLatestReversal(t *testing.T) {
	for _, most := range []float64{0.080, 0.064, 0.058} {
		f := filler(t)
		f.LeastAboveLevel, f.MostAboveLevel = 0, most
		reversal, err := f.LatestReversal(1, 2)
		if err != nil {
			t.Fatal(err)
		}
		later := func(by motion.Degrees) bool {
			g := fillerWith(t, 120, reversal+by)
			g.LeastAboveLevel, g.MostAboveLevel = 0, most
			return g.TipNearLevel(2).Kept() && g.DoseInsideCarton(2).Angle >= 1-1e-7
		}
		if !later(-1e-6) || later(1e-4) {
			t.Errorf("most %g: reversal at %g deg holds: %v, 0.0001 deg later: %v", most, float64(reversal), later(-1e-6), later(1e-4))
		}
	}
}

func TestJaws(t *testing.T) {
	// 120 mm at 300 mm/s and 2000 mm/s2 take 0.55 s (reference table).
	move := motion.Move{Distance: 0.12, Speed: 0.3, Acceleration: 2}.Timed()
	jaws := motion.Jaws{SensorLag: 0.02, Close: move, Dwell: 0.9, Open: move, Stroke: 0.12}
	near(t, "cycle", float64(jaws.Cycle()), 0.02+0.55+0.9+0.55, 1e-12)
	near(t, "open", jaws.Opening(0), 0.12, 0)
	near(t, "half closed", jaws.Opening(0.02+0.275), 0.06, 1e-12)
	near(t, "closed", jaws.Opening(1), 0, 0)
	near(t, "half open", jaws.Opening(0.02+0.55+0.9+0.275), 0.06, 1e-12)
	m := jaws.ClearBeforeIndex(2.1, 0, 3)
	near(t, "time", float64(m.Time), 2.1-2.02, 1e-12)
	near(t, "angle", float64(m.Angle), 0.08*120, 1e-9)
	near(t, "distance", m.Distance, 0, 1e-12)
	jaws.ClearAt = 0.06
	near(t, "needed until half open", float64(jaws.Needed()), 2.02-0.275, 1e-9)
	m = jaws.ClearBeforeIndex(1.7, 0, 3)
	if m.Kept() || m.Distance >= 0 || m.Time >= 0 {
		t.Errorf("jaws still opening when the conveyor moves: %+v", m)
	}
	given := motion.Jaws{Close: motion.TimedMove{Time: 0.28}, Dwell: 0.95, Open: motion.TimedMove{Time: 0.28}, Stroke: 0.1}
	near(t, "cycle of given times", float64(given.Cycle()), 1.51, 1e-12)
	near(t, "half open at constant speed", given.Opening(1.37), 0.05, 1e-12)
}

// TestDrop: 0.3 m of free fall take sqrt(0.6/g).
func TestDrop(t *testing.T) {
	conveyor := feed(t, 0.1524, 110, motion.ModifiedSine())
	drop := motion.Drop{At: 150, Height: 0.3}
	fall := math.Sqrt(0.6 / motion.StandardGravity)
	near(t, "fall", float64(drop.FallTime()), fall, 1e-12)
	m := drop.BeforeIndex(conveyor, 2)
	near(t, "time", float64(m.Time), 210./180-fall, 1e-9)
	near(t, "distance", m.Distance, motion.StandardGravity/2*math.Pow(210./180, 2)-0.3, 1e-9)
	if m := (motion.Drop{At: 350, Height: 0.3}).BeforeIndex(conveyor, 2); m.Kept() {
		t.Errorf("let go 10 deg before the index: %+v", m)
	}
	if m := (motion.Drop{At: 50, Height: 0.3}).BeforeIndex(conveyor, 2); m.Kept() {
		t.Errorf("let go while the conveyor moves: %+v", m)
	}
	// The arm turns 90 deg from 200 to 340; it may turn by 0.02 rad until the carton has gone.
	arm := camOf(t, axis("arm", segment(motion.Index, 200, 340, math.Pi/2, motion.ModifiedSine())))
	free := 200 + 140*motion.ModifiedSine().Inverse(0.02/(math.Pi/2))
	m = drop.ArmClear(arm, 0.02, 2)
	near(t, "arm room", float64(m.Angle), free-(150+fall*180), 1e-7)
	if m := drop.ArmClear(arm, 0.02, 1); m.Kept() {
		t.Errorf("at twice the speed the arm hits the carton: %+v", m)
	}
}

func TestClearance(t *testing.T) {
	f := filler(t)
	c := motion.Clearance{Name: "nozzle down while dosing", Axis: f.Nozzle, Limit: 0.0381, Above: true, While: f.Piston.Returning()}
	got, want := c.Margin(2), f.DoseInsideCarton(2)
	near(t, "angle", float64(got.Angle), float64(want.Angle), 1e-9)
	near(t, "distance", got.Distance, want.Distance, 1e-12)
}

// TestShortestRevolution: jaws that need 1.42 s in a stand of 240 deg allow no revolution under 2.13 s.
func TestShortestRevolution(t *testing.T) {
	dwell := func(revolution motion.Seconds) []motion.Margin {
		left := motion.Degrees(240).Time(revolution) - 1.42
		return []motion.Margin{{Name: "dwell", Time: left, Angle: left.Angle(revolution)}}
	}
	got, err := motion.ShortestRevolution(dwell, 1, 5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "revolution", float64(got), 2.13, 1e-6)
	if _, err := motion.ShortestRevolution(dwell, 1, 2); err == nil {
		t.Error("no revolution up to 2 s can be long enough")
	}
	f := filler(t) // 15 deg for the valve's 5 ms: 120 ms at the least
	got, err = motion.ShortestRevolution(func(r motion.Seconds) []motion.Margin { return []motion.Margin{f.DoseDrawn(r)} }, 0.05, 5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "revolution for the valve", float64(got), 0.12, 2e-6)
}

// BenchmarkInterlocks is one whole proof of the filler.
func BenchmarkInterlocks(b *testing.B) {
	f := filler(b)
	for b.Loop() {
		f.Interlocks(2)
	}
}

// TestNozzleInterlockAgainstSampling draws cams of any law at random: the proof never says more room than a fine
// sampling finds, and no less than it could have missed.
func TestNozzleInterlockAgainstSampling(t *testing.T) {
	laws := allLaws(t)
	rapid.Check(t, func(r *rapid.T) {
		law := func(name string) motion.Law { return laws[rapid.IntRange(0, len(laws)-1).Draw(r, name)] }
		down := rapid.Float64Range(40, 200).Draw(r, "down")
		up := rapid.Float64Range(240, 300).Draw(r, "up")
		f := motion.FillStation{
			Conveyor: feed(t, 0.15, 110, law("index law")),
			Nozzle: camOf(t, axis("nozzle", segment(motion.Rise, motion.Degrees(down), motion.Degrees(down+40), 0.2, law("down law")),
				segment(motion.Return, motion.Degrees(up), motion.Degrees(up+rapid.Float64Range(20, 80).Draw(r, "span")).Within(), 0.2, law("up law")))),
			RimBelowTop: rapid.Float64Range(0.01, 0.19).Draw(r, "rim"),
		}
		m := f.NozzleOutWhileMoving(2)
		least := math.Inf(1)
		for k := range 11001 {
			least = math.Min(least, f.RimBelowTop-f.Nozzle.Position(motion.Degrees(k)/100))
		}
		const missed = 0.2 * 2.2 / 20 * 0.01 // m: stroke x largest Cv / shortest move x the step of 0.01 deg
		if m.Distance > least+1e-9 || m.Distance < least-missed {
			r.Fatalf("%+v, sampled %g", m, least)
		}
		if m.Kept() != (least >= 0) && math.Abs(least) > 1e-3 {
			r.Fatalf("%+v, sampled %g", m, least)
		}
	})
}

// TestNothingPanics: descriptions of any kind are refused or made into cams whose positions are finite.
func TestNothingPanics(t *testing.T) {
	laws := append(allLaws(t), motion.Law{})
	kinds := []motion.SegmentKind{motion.Rise, motion.Dwell, motion.Return, motion.Index, "other"}
	rapid.Check(t, func(r *rapid.T) {
		var a motion.Axis
		for range rapid.IntRange(0, 5).Draw(r, "segments") {
			a.Segments = append(a.Segments, motion.Segment{
				Kind: rapid.SampledFrom(kinds).Draw(r, "kind"), Law: rapid.SampledFrom(laws).Draw(r, "law"),
				From: motion.Degrees(rapid.Float64().Draw(r, "from")), To: motion.Degrees(rapid.Float64Range(-10, 800).Draw(r, "to")),
				Travel: rapid.Float64().Draw(r, "travel"),
			})
		}
		cam, problems := motion.NewCam(a)
		if (cam == nil) != (len(problems) > 0) {
			r.Fatalf("cam %v, problems %v", cam, problems)
		}
		if cam != nil && math.IsNaN(cam.Position(123)) {
			r.Fatalf("%+v has no position", a)
		}
		name := rapid.String().Draw(r, "name")
		if law, err := motion.LawByName(name); (err == nil) == law.IsZero() {
			r.Fatalf("%q: %v, %v", name, law, err)
		}
	})
}
