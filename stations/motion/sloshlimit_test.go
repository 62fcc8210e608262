package motion_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/stations/motion"
)

// highestIntegrated is the highest wave at either wall over a number of indexes from rest and the stands behind them, by the
// classical fourth-order Runge-Kutta method on all modes at once. It knows nothing of the closed form.
func highestIntegrated(tank motion.Tank, move motion.IndexMove, indexes int) float64 {
	const steps = 960 // of an index; a multiple of 24, so that none straddles a step of the acceleration
	q, v := make([]float64, tank.Modes), make([]float64, tank.Modes)
	highest := 0.0
	run := func(length float64, steps int, acceleration func(z float64) float64) {
		h := length / float64(steps)
		for k := range steps {
			z := func(part float64) float64 { return (float64(k) + part) / float64(steps) }
			a0, a1, a2 := acceleration(z(1e-9)), acceleration(z(0.5)), acceleration(z(1-1e-9))
			wave := 0.0
			for i := range q {
				mode := tank.Mode(2*i + 1)
				w := mode.Omega()
				slope := func(q, v, a float64) float64 { return mode.Drive*a - 2*tank.Damping*w*v - w*w*q }
				q0, v0 := q[i], v[i]
				k1 := slope(q0, v0, a0)
				q1, v1 := q0+h/2*v0, v0+h/2*k1
				k2 := slope(q1, v1, a1)
				q2, v2 := q0+h/2*v1, v0+h/2*k2
				k3 := slope(q2, v2, a1)
				q3, v3 := q0+h*v2, v0+h*k3
				k4 := slope(q3, v3, a2)
				q[i] += h / 6 * (v0 + 2*v1 + 2*v2 + v3)
				v[i] += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
				wave += q[i]
			}
			highest = max(highest, math.Abs(wave))
		}
	}
	scale := move.Travel / float64(move.Time*move.Time)
	stand := float64(move.Cycle - move.Time)
	for range indexes {
		run(float64(move.Time), steps, func(z float64) float64 { return scale * move.Law.Acceleration(z) })
		run(stand, 1+int(steps*stand/float64(move.Time)), func(float64) float64 { return 0 })
	}
	return highest
}

// TestSloshLimitAgainstIntegration: whatever the carton, its law and the number of its indexes, the margin is the freeboard less the
// highest wave of an independent integration from rest.
func TestSloshLimitAgainstIntegration(t *testing.T) {
	names := []string{"modified sine", "cycloidal", "3-4-5 polynomial", "modified trapezoid"}
	rapid.Check(t, func(r *rapid.T) {
		tank := motion.Tank{
			Length: rapid.Float64Range(0.05, 0.2).Draw(r, "length"), Depth: rapid.Float64Range(0.05, 0.25).Draw(r, "depth"),
			Freeboard: 0.03, Damping: rapid.SampledFrom([]float64{0, 0.005, 0.02, 0.1}).Draw(r, "damping"), Modes: rapid.IntRange(1, 3).Draw(r, "modes"),
		}
		law := mustLaw(t, rapid.SampledFrom(names).Draw(r, "law"))
		indexes := rapid.IntRange(1, 12).Draw(r, "indexes")
		setting := motion.CartonsPerHour(rapid.Float64Range(600, 3000).Draw(r, "setting"))
		master := motion.Master{Share: rapid.Float64Range(0.5, 1).Draw(r, "share")}
		limit, err := motion.NewSloshLimit("slosh", master, feed(t, 0.12, 120, law), tank, indexes)
		if err != nil {
			r.Fatal(err)
		}
		cycle := motion.PacePeriod(setting, 1)
		move := motion.IndexMove{Law: law, Travel: 0.12, Time: cycle * motion.Seconds(master.Share) / 3, Cycle: cycle}
		want := highestIntegrated(tank, move, indexes)
		if got := tank.Freeboard - limit.Margin(setting); math.Abs(got-want) > 2e-4*want+1e-6 { // the integration looks at steps only
			r.Fatalf("%d indexes of %s at %g/h: wave of %g m, integrated %g m", indexes, law.Name(), float64(setting), got, want)
		}
	})
}

// TestSloshLimitBandsAgainstDenseLook: over all that is looked at, and below, a setting is forbidden exactly where a band says so.
func TestSloshLimitBandsAgainstDenseLook(t *testing.T) {
	for _, c := range []struct {
		indexes            int
		damping, freeboard float64
		revolution, share  motion.Seconds
		continuous         bool
	}{
		{2, 0.02, 0.015, 0, 0.8, false}, {2, 0, 0.008, 0, 1, false}, {14, 0.005, 0.015, 0, 0.8, false}, {40, 0.002, 0.03, 0, 1, false},
		{3, 0.01, 0.02, 1.6, 0, false}, {3, 0.01, 0.02, 1.1, 0, true}, {1, 0.02, 0.0002, 0, 1, false},
	} {
		t.Run(fmt.Sprint(c), func(t *testing.T) {
			tank := halfGallon()
			tank.Damping, tank.Freeboard = c.damping, c.freeboard
			master := motion.Master{Revolution: c.revolution, Share: float64(c.share), Continuous: c.continuous}
			limit, err := motion.NewSloshLimit("slosh", master, feed(t, 0.1016, 120, motion.ModifiedSine()), tank, c.indexes)
			if err != nil {
				t.Fatal(err)
			}
			found := motion.AssessDips(limit, 1)
			wrong := 0
			for s := limit.From / 8; s < limit.To; s *= 1.0047 {
				inside := false
				for _, b := range found.Bands {
					inside = inside || b.Contains(s)
				}
				m := limit.Margin(s)
				if s < limit.From && len(found.Bands) > 0 && s < found.Bands[0].From || c.revolution > 0 && s < limit.From {
					continue
				}
				if (m < 0) != inside && math.Abs(m) > 1e-6 {
					if wrong++; wrong < 4 {
						t.Errorf("%g/h: margin %g m, in a band: %v", float64(s), m, inside)
					}
				}
			}
			if found.Err == nil && limit.Margin(found.Highest.Setting) < 0 {
				t.Errorf("the highest of %g/h is forbidden", float64(found.Highest.Setting))
			}
			if wrong > 0 {
				t.Errorf("%d settings wrong, from %g to %g: %d bands", wrong, float64(limit.From), float64(limit.To), len(found.Bands))
			}
		})
	}
}

// TestSurelyStill: below the lowest setting that is looked at for the sake of the rim, no wave reaches it.
func TestSurelyStill(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		tank := halfGallon()
		tank.Damping = rapid.SampledFrom([]float64{0, 0.005, 0.05}).Draw(r, "damping")
		tank.Freeboard = rapid.Float64Range(0.005, 0.08).Draw(r, "freeboard")
		indexes := rapid.IntRange(1, 30).Draw(r, "indexes")
		limit, err := motion.NewSloshLimit("slosh", motion.Master{}, feed(t, 0.1016, 120, motion.ModifiedTrapezoid()), tank, indexes)
		if err != nil {
			r.Fatal(err)
		}
		still := 3600 * tank.Mode(1).Frequency / 60 // where it is looked at from there, at the latest
		if s := float64(limit.From) * rapid.Float64Range(0.3, 1).Draw(r, "share"); s > still && limit.Margin(motion.CartonsPerHour(s)) < 0 {
			r.Fatalf("%g/h, below %g/h: margin %g m", s, float64(limit.From), limit.Margin(motion.CartonsPerHour(s)))
		}
	})
}

// BenchmarkSloshBands is the whole search for bands, of a carton that makes two indexes and of one that makes two hundred.
func BenchmarkSloshBands(b *testing.B) {
	for _, indexes := range []int{2, 200} {
		for _, freeboard := range []float64{0.02, 0.0002} {
			b.Run(fmt.Sprintf("%d indexes, %g mm", indexes, 1000*freeboard), func(b *testing.B) {
				tank := halfGallon()
				tank.Freeboard = freeboard
				limit, err := motion.NewSloshLimit("slosh", motion.Master{}, feed(b, 0.1016, 120, motion.ModifiedSine()), tank, indexes)
				if err != nil {
					b.Fatal(err)
				}
				for b.Loop() {
					motion.AssessDips(limit, 1)
				}
			})
		}
	}
}

// TestAssessAbout: about a setting that is forbidden, the same band is found as by looking everywhere.
func TestAssessAbout(t *testing.T) {
	tank := halfGallon()
	limit, err := motion.NewSloshLimit("slosh", motion.Master{Share: 0.8}, feed(t, 0.1016, 120, motion.ModifiedSine()), tank, 9)
	if err != nil {
		t.Fatal(err)
	}
	everywhere := motion.AssessDips(limit, 1)
	if len(everywhere.Bands) < 3 {
		t.Fatalf("only %d bands", len(everywhere.Bands))
	}
	for _, b := range everywhere.Bands {
		about := motion.AssessAbout(limit, (b.From+b.To)/2, 1)
		found := false
		for _, other := range about.Bands {
			found = found || math.Abs(float64(b.From-other.From)) < 2*motion.SettingTolerance && math.Abs(float64(b.To-other.To)) < 2*motion.SettingTolerance
		}
		if !found {
			t.Errorf("band %+v is not among %+v", b, about.Bands)
		}
		if last := b.To >= limit.To; last != about.Highest.Binds {
			t.Errorf("band %+v: highest %+v", b, about.Highest)
		}
	}
}
