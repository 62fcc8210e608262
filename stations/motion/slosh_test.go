package motion_test

import (
	"math"
	"testing"

	"dwellcast/stations/motion"

	"pgregory.net/rapid"
)

func mustLaw(t testing.TB, name string) motion.Law {
	t.Helper()
	law, err := motion.LawByName(name)
	if err != nil {
		t.Fatal(err)
	}
	return law
}

func mustSlosh(t testing.TB, tank motion.Tank, move motion.IndexMove) *motion.Slosh {
	t.Helper()
	s, problems := motion.NewSlosh(tank, move)
	if len(problems) > 0 {
		t.Fatal(problems[0])
	}
	return s
}

// halfGallon is a carton of 95 mm filled to 210 mm, as in the reference table.
func halfGallon() motion.Tank {
	return motion.Tank{Length: 0.095, Depth: 0.2098, Freeboard: 0.015, Damping: 0.005, Modes: 5}
}

// integrated is the wave at the rear wall after a time, by the classical fourth-order Runge-Kutta method on each
// mode, with the steps laid on the joints of the law (multiples of 1/24 of the index) so that none straddles a step
// of the acceleration. It knows nothing of the closed form.
func integrated(tank motion.Tank, move motion.IndexMove, cycles int, part float64) float64 {
	const steps = 6000
	wave := 0.0
	for i := range tank.Modes {
		mode := tank.Mode(2*i + 1)
		w, drive := mode.Omega(), mode.Drive
		q, v := 0.0, 0.0
		run := func(length float64, acceleration func(z float64) float64) {
			h := length / steps
			slope := func(q, v, a float64) (float64, float64) {
				return v, drive*a - 2*tank.Damping*w*v - w*w*q
			}
			for k := range steps {
				a0 := acceleration((float64(k) + 1e-9) / steps)
				a1 := acceleration((float64(k) + 0.5) / steps)
				a2 := acceleration((float64(k) + 1 - 1e-9) / steps)
				q1, v1 := slope(q, v, a0)
				q2, v2 := slope(q+h/2*q1, v+h/2*v1, a1)
				q3, v3 := slope(q+h/2*q2, v+h/2*v2, a1)
				q4, v4 := slope(q+h*q3, v+h*v3, a2)
				q += h / 6 * (q1 + 2*q2 + 2*q3 + q4)
				v += h / 6 * (v1 + 2*v2 + 2*v3 + v4)
			}
		}
		scale := move.Travel / float64(move.Time*move.Time)
		index := func(z float64) float64 { return scale * move.Law.Acceleration(z) }
		rest := func(float64) float64 { return 0 }
		for range cycles {
			run(float64(move.Time), index)
			run(float64(move.Cycle-move.Time), rest)
		}
		run(float64(move.Time), index)
		run(part, rest)
		wave += q
	}
	return wave
}

// TestSloshAgainstIntegration: the closed form agrees with an independent integration to 1e-6 of the static rise at
// the peak acceleration.
func TestSloshAgainstIntegration(t *testing.T) {
	for _, law := range allLaws(t) {
		if law.Coefficients().VelocitySteps {
			continue
		}
		t.Run(law.Name(), func(t *testing.T) {
			for _, time := range []motion.Seconds{0.2, 0.6, 1.1} {
				move := motion.IndexMove{Law: law, Travel: 0.1016, Time: time, Cycle: 1.7}
				tank := halfGallon()
				s := mustSlosh(t, tank, move)
				want := integrated(tank, move, 2, 0.31)
				got := s.WaveAt(2*move.Cycle + move.Time + 0.31)
				near(t, "wave", got/s.QuasiStatic(), want/s.QuasiStatic(), 1e-6)
			}
		})
	}
}

// TestSloshInResonance: an undamped mode driven exactly at its own frequency by a cycloidal index; the particular
// solution has no finite amplitude there. At W = w the answer to a sin(wt) is a (sin wt - wt cos wt)/(2 w2), so one
// period leaves pi a/w2 (forced vibration, any textbook).
func TestSloshInResonance(t *testing.T) {
	tank := motion.Tank{Length: 0.095, Depth: 0.2, Modes: 1}
	mode := tank.Mode(1)
	for _, off := range []float64{0, 1e-9, 1e-6, 1e-5, 1e-4, 1e-3} {
		time := motion.Seconds((1 + off) / mode.Frequency)
		move := motion.IndexMove{Law: motion.Cycloidal(), Travel: 0.1, Time: time, Cycle: 2 * time}
		s := mustSlosh(t, tank, move)
		a := mode.Drive * motion.Cycloidal().Coefficients().Ca * 0.1 / float64(time*time)
		near(t, "residual", s.Residual(0)/(math.Pi*a/(mode.Omega()*mode.Omega())), 1, 1e-12+2*off)
		near(t, "wave", s.WaveAt(time+0.1), integrated(tank, move, 0, 0.1), 1e-9)
	}
}

// TestSloshVeryFastIndex: an index much shorter than a slosh period shakes the liquid without letting it answer; the
// wave and its speed then follow from the moments of the acceleration: no net change of velocity, so q' = 0 and q =
// -drive travel (impulse theory).
func TestSloshVeryFastIndex(t *testing.T) {
	tank := motion.Tank{Length: 0.095, Depth: 0.2, Modes: 1}
	for _, law := range allLaws(t) {
		if law.Coefficients().VelocitySteps {
			continue
		}
		time := motion.Seconds(1e-4 / tank.Mode(1).Frequency)
		s := mustSlosh(t, tank, motion.IndexMove{Law: law, Travel: 0.001, Time: time, Cycle: 1})
		near(t, law.Name(), s.Residual(0)/(tank.Mode(1).Drive*0.001), 1, 1e-5)
	}
}

// TestSloshConstantAcceleration: under constant acceleration a damped liquid comes to rest at the wall height aL/2g
// when all modes are summed (hydrostatics); 50 odd modes leave out 2/(pi2 50) of it (the tail of the series 8/(n
// pi)2).
func TestSloshConstantAcceleration(t *testing.T) {
	tank := motion.Tank{Length: 0.095, Depth: 0.18, Damping: 0.5, Modes: 50}
	move := motion.IndexMove{Law: motion.ConstantAcceleration(), Travel: 20, Time: 10, Cycle: 12}
	s := mustSlosh(t, tank, move)
	a := 4 * 20.0 / 100
	want := a * 0.095 / (2 * motion.StandardGravity)
	near(t, "wall height", s.WaveAt(4.9)/want, 1, 2/(math.Pi*math.Pi*50)+1e-4)
	near(t, "quasi-static", s.QuasiStatic(), want, 1e-12)
}

// TestSloshFreeDecay: after the index a single mode falls by exp(-zeta w T) in a damped period T (any textbook on
// vibration).
func TestSloshFreeDecay(t *testing.T) {
	tank := motion.Tank{Length: 0.095, Depth: 0.18, Damping: 0.02, Modes: 1}
	s := mustSlosh(t, tank, motion.IndexMove{Law: motion.ModifiedSine(), Travel: 0.1, Time: 0.5, Cycle: 60})
	w := tank.Mode(1).Omega()
	period := 2 * math.Pi / (w * math.Sqrt(1-0.02*0.02))
	for _, start := range []float64{0.55, 0.9, 7} {
		first, later := s.WaveAt(motion.Seconds(start)), s.WaveAt(motion.Seconds(start+period))
		near(t, "decay", later/first, math.Exp(-0.02*w*period), 1e-9)
	}
}

// TestSloshSteady: endless indexing from rest ends in the steady response, cycle by cycle, and never exceeds the
// worst phase.
func TestSloshSteady(t *testing.T) {
	tank := halfGallon()
	tank.Damping = 0.02
	for _, cycle := range []motion.Seconds{1.9, 2.0934, 2.5} {
		s := mustSlosh(t, tank, motion.IndexMove{Law: motion.ModifiedSine(), Travel: 0.1016, Time: 0.7, Cycle: cycle})
		steady := s.Steady()
		peak := 0.0
		const cycles, looks = 40, 4000
		for k := range looks {
			at := cycles*cycle + cycle*motion.Seconds(k)/looks
			peak = max(peak, math.Abs(s.WaveAt(at)))
		}
		near(t, "steady peak", steady.Peak/peak, 1, 1e-4)
		if steady.Peak > s.WorstPhase() || s.Indexes(10, 1).Peak > s.WorstPhase() {
			t.Errorf("cycle %g: steady %g exceeds worst phase %g", float64(cycle), steady.Peak, s.WorstPhase())
		}
	}
}

// TestSloshUndampedInStepHasNoSteadyState: the waves grow for ever.
func TestSloshUndampedInStepHasNoSteadyState(t *testing.T) {
	tank := halfGallon()
	tank.Damping, tank.Modes = 0, 1
	cycle := motion.Seconds(4 / tank.Mode(1).Frequency)
	s := mustSlosh(t, tank, motion.IndexMove{Law: motion.Cycloidal(), Travel: 0.1, Time: 0.5, Cycle: cycle})
	if !math.IsInf(s.Steady().Peak, 1) || !math.IsInf(s.WorstPhase(), 1) {
		t.Errorf("steady %g, worst phase %g: want both infinite", s.Steady().Peak, s.WorstPhase())
	}
}

// TestSloshPeakIsFound: the crest that is reported is reached, and no look on a fine grid is higher.
func TestSloshPeakIsFound(t *testing.T) {
	laws := allLaws(t)
	rapid.Check(t, func(r *rapid.T) {
		law := laws[rapid.IntRange(0, len(laws)-1).Draw(r, "law")]
		if law.Coefficients().VelocitySteps {
			return
		}
		tank := halfGallon()
		tank.Damping = rapid.Float64Range(0, 0.1).Draw(r, "damping")
		time := motion.Seconds(rapid.Float64Range(0.1, 1.2).Draw(r, "time"))
		cycle := time + motion.Seconds(rapid.Float64Range(0, 2).Draw(r, "stand"))
		s, problems := motion.NewSlosh(tank, motion.IndexMove{Law: law, Travel: 0.1, Time: time, Cycle: cycle})
		if problems != nil {
			r.Fatal(problems)
		}
		after := cycle - time // until a third index would begin
		response := s.Indexes(2, after)
		if got := math.Abs(s.WaveAt(response.PeakAt)); math.Abs(got-response.Peak) > 1e-9 {
			r.Fatalf("wave at %v is %.12g, not the peak %.12g", response.PeakAt, got, response.Peak)
		}
		for k := range 3000 {
			at := 2 * cycle * motion.Seconds(k) / 3000
			if got := math.Abs(s.WaveAt(at)); got > response.Peak*(1+1e-7) {
				r.Fatalf("wave at %v is %.9g, above the peak %.9g", at, got, response.Peak)
			}
		}
	})
}

// TestQuietIndexTimes: an undamped cycloidal index leaves nothing when it lasts 2, 3, 4 periods (vibration theory).
func TestQuietIndexTimes(t *testing.T) {
	tank := halfGallon()
	tank.Damping = 0
	period := 1 / tank.Mode(1).Frequency
	quiet := tank.QuietIndexTimes(motion.Cycloidal(), 0.1, motion.Seconds(1.2*period), motion.Seconds(4.5*period))
	if len(quiet) != 3 {
		t.Fatalf("found %v, want three nodes", quiet)
	}
	for i, q := range quiet {
		near(t, "periods", float64(q.Time)/period, float64(i+2), 1e-6)
		near(t, "residual", q.Residual, 0, 1e-9)
	}
}

func TestTankProblems(t *testing.T) {
	for field, tank := range map[string]motion.Tank{
		"damping":   {Length: 0.1, Depth: 0.2, Damping: -0.01},
		"length":    {Length: 0, Depth: 0.2},
		"depth":     {Length: 0.1, Depth: math.NaN()},
		"freeboard": {Length: 0.1, Depth: 0.2, Height: 0.25, Freeboard: 0.06},
		"modes":     {Length: 0.1, Depth: 0.2, Modes: 1000},
	} {
		problems := tank.Problems()
		if len(problems) != 1 || problems[0].Path != field {
			t.Errorf("%+v: %v, want one problem of %s", tank, problems, field)
		}
	}
	if _, problems := motion.NewSlosh(halfGallon(), motion.IndexMove{Law: motion.StraightLine(), Travel: 0.1, Time: 1, Cycle: 2}); problems == nil {
		t.Error("a straight-line index has no finite acceleration and must be refused")
	}
}

func TestBeyondLinear(t *testing.T) {
	tank := halfGallon()
	if reasons := tank.BeyondLinear(0.009); reasons != nil {
		t.Errorf("a 9 mm wave in 95 mm: %v", reasons)
	}
	if reasons := tank.BeyondLinear(0.010); len(reasons) != 1 {
		t.Errorf("a 10 mm wave in 95 mm: %v", reasons)
	}
	if reasons := (motion.Tank{Length: 1, Depth: 0.1}).BeyondLinear(0.03); len(reasons) != 2 {
		t.Errorf("a 30 mm wave in shallow liquid: %v", reasons)
	}
}

// BenchmarkSlosh is one solution: all five modes, ten cycles, peak and residual.
func BenchmarkSlosh(b *testing.B) {
	for _, name := range []string{"modified sine", "polynomial 3-4-5", "S-curve 1/3-1/3-1/3, half jerk"} {
		law := mustLaw(b, name)
		b.Run("ten cycles, "+name, func(b *testing.B) {
			for b.Loop() {
				s := mustSlosh(b, halfGallon(), motion.IndexMove{Law: law, Travel: 0.1016, Time: 1, Cycle: 3})
				s.Indexes(10, 2)
			}
		})
		b.Run("steady, "+name, func(b *testing.B) {
			for b.Loop() {
				s := mustSlosh(b, halfGallon(), motion.IndexMove{Law: law, Travel: 0.1016, Time: 1, Cycle: 3})
				s.Steady()
			}
		})
	}
}
