package motion_test

import (
	"math"
	"testing"

	"dwellcast/stations/motion"

	"pgregory.net/rapid"
)

func board() motion.HeatSeal {
	return motion.HeatSeal{Thickness: 0.0005, Diffusivity: 1e-7, Start: 20, Jaws: 180, Wanted: 110}
}

// TestLeastDwellReachesTheTemperature for any board, contact and jaws: the interface is as wanted after the least
// dwell.
func TestLeastDwellReachesTheTemperature(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := board()
		s.Thickness = rapid.Float64Range(1e-4, 2e-3).Draw(r, "thickness")
		s.Biot = rapid.SampledFrom([]float64{0, 0.05, 1, 20, 500}).Draw(r, "Biot")
		s.OneJaw = rapid.Bool().Draw(r, "one jaw")
		s.Wanted = rapid.Float64Range(20.01, 179.9).Draw(r, "wanted")
		dwell, err := s.LeastDwell()
		if err != nil {
			r.Fatal(err)
		}
		if got := s.InterfaceTemperature(dwell); math.Abs(got-s.Wanted) > 1e-6 {
			r.Fatalf("%+v: %g C after %v s", s, got, dwell)
		}
		if s.InterfaceTemperature(dwell*1.01) < s.Wanted {
			r.Fatal("it must go on rising")
		}
	})
}

// explicitSlab is the temperature at the interface by an explicit finite-difference scheme of the heat equation,
// which knows no series.
func explicitSlab(s motion.HeatSeal, dwell float64) float64 {
	const cells = 100
	length := s.Thickness // half the slab, insulated in the middle
	if s.OneJaw {
		length *= 2
	}
	dx := length / cells
	steps := int(math.Ceil(dwell * s.Diffusivity / (0.4 * dx * dx)))
	fo := s.Diffusivity * dwell / float64(steps) / (dx * dx)
	t := make([]float64, cells+1) // t[0] at the middle, t[cells] at the jaw
	next := make([]float64, cells+1)
	for i := range t {
		t[i] = s.Start
	}
	biot := s.Biot * dx / s.Thickness // of one cell
	for range steps {
		next[0] = t[0] + 2*fo*(t[1]-t[0])
		for i := 1; i < cells; i++ {
			next[i] = t[i] + fo*(t[i-1]-2*t[i]+t[i+1])
		}
		next[cells] = s.Jaws
		if s.Biot > 0 {
			next[cells] = t[cells] + 2*fo*(t[cells-1]-t[cells]+biot*(s.Jaws-t[cells]))
		}
		t, next = next, t
	}
	if s.OneJaw {
		return t[cells/2]
	}
	return t[0]
}

func TestInterfaceTemperatureAgainstFiniteDifferences(t *testing.T) {
	for _, oneJaw := range []bool{false, true} {
		for _, biot := range []float64{0, 0.5, 5} {
			for _, dwell := range []float64{0.1, 0.5, 2} {
				s := board()
				s.OneJaw, s.Biot = oneJaw, biot
				near(t, "temperature", s.InterfaceTemperature(motion.Seconds(dwell)), explicitSlab(s, dwell), 0.05)
			}
		}
	}
}

// TestEarlySeriesMeetsLateSeries: the half-space form and the series agree where they meet, at every depth and
// contact.
func TestEarlySeriesMeetsLateSeries(t *testing.T) {
	for _, biot := range []float64{0.1, 1, 30, 1000, math.Inf(1)} {
		for x := 0.0; x <= 1; x += 0.05 {
			wall := motion.PlaneWall{Biot: biot}
			near(t, "remaining", wall.Remaining(0.005, x), wall.Remaining(0.005000001, x), 2e-6)
		}
	}
}

// TestDwellSensitivity: dwell goes with thickness squared in perfect contact, so 1 % of board is 2 % of dwell.
func TestDwellSensitivity(t *testing.T) {
	s := board()
	dwell, err := s.LeastDwell()
	if err != nil {
		t.Fatal(err)
	}
	k, err := s.Sensitivity()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "per percent", float64(k.PerThicknessPercent/dwell), 0.02, 1e-6)
	hotter := s
	hotter.Jaws += 1
	d, _ := hotter.LeastDwell()
	near(t, "per kelvin", float64(k.PerJawKelvin/(d-dwell)), 1, 0.02)
	if k.PerWantedKelvin <= 0 {
		t.Errorf("a hotter interface takes %g s/K", float64(k.PerWantedKelvin))
	}
	near(t, "one term", float64(s.OneTermDwell()/dwell), 1, 1e-3)
}

func TestHeatSealProblems(t *testing.T) {
	for path, change := range map[string]func(*motion.HeatSeal){
		"thickness":   func(s *motion.HeatSeal) { s.Thickness = 0 },
		"diffusivity": func(s *motion.HeatSeal) { s.Diffusivity = math.NaN() },
		"biot":        func(s *motion.HeatSeal) { s.Biot = -1 },
		"wanted":      func(s *motion.HeatSeal) { s.Wanted = 180 },
	} {
		s := board()
		change(&s)
		if problems := s.Problems(); len(problems) != 1 || problems[0].Path != path {
			t.Errorf("%s: %v", path, problems)
		}
		if _, err := s.LeastDwell(); err == nil {
			t.Errorf("%s: a dwell is given", path)
		}
	}
}

func TestGlue(t *testing.T) {
	g := motion.Glue{Open: 3, Set: 0.8}
	if g.Problems() != nil || g.Dwell() != 0.8 || g.OpenTimeLeft(3.5) != -0.5 {
		t.Errorf("%+v: %v", g, g.Problems())
	}
	g.Compression = 0.5
	if problems := g.Problems(); len(problems) != 1 || problems[0].Path != "compression" {
		t.Errorf("compression shorter than set time: %v", problems)
	}
}

// TestMoveLaw: the law of a move, run over its time, reaches the limits that the move reaches and exceeds none.
func TestMoveLaw(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		m := motion.Move{
			Distance: rapid.Float64Range(0.001, 2).Draw(r, "distance"), Speed: rapid.Float64Range(0.05, 2).Draw(r, "speed"),
			Acceleration: rapid.Float64Range(0.5, 20).Draw(r, "acceleration"),
		}
		if rapid.Bool().Draw(r, "jerk limited") {
			m.Jerk = rapid.Float64Range(5, 500).Draw(r, "jerk")
		}
		c, time := m.Law().Coefficients(), float64(m.Time())
		v, a, j := c.Cv*m.Distance/time, c.Ca*m.Distance/(time*time), c.Cj*m.Distance/(time*time*time)
		over := func(got, limit float64) bool { return got > limit*(1+1e-6) }
		if over(v, m.Speed) || over(a, m.Acceleration) || m.Jerk > 0 && over(j, m.Jerk) {
			r.Fatalf("%+v: v %g, a %g, j %g", m, v, a, j)
		}
		reached := map[motion.Binding]float64{motion.ReachesSpeed: v / m.Speed, motion.ReachesAcceleration: a / m.Acceleration,
			motion.ReachesJerkOnly: j / m.Jerk}
		if share := reached[m.Reaches()]; math.Abs(share-1) > 1e-6 {
			r.Fatalf("%+v reaches %s to %g only", m, m.Reaches(), share)
		}
		if m.Jerk > 0 && math.Abs(j/m.Jerk-1) > 1e-6 {
			r.Fatalf("%+v: a minimum-time move uses all of its jerk, got %g", m, j)
		}
	})
}

func TestMoveProblems(t *testing.T) {
	for path, m := range map[string]motion.Move{
		"distance":     {Distance: -1, Speed: 1, Acceleration: 1},
		"speed":        {Distance: 1, Speed: 0, Acceleration: 1},
		"acceleration": {Distance: 1, Speed: 1, Acceleration: math.NaN()},
		"deceleration": {Distance: 1, Speed: 1, Acceleration: 1, Deceleration: 2, Jerk: 10},
		"jerk":         {Distance: 1, Speed: 1, Acceleration: 1, Jerk: -1},
	} {
		if problems := m.Problems(); len(problems) != 1 || problems[0].Path != path {
			t.Errorf("%s: %v", path, problems)
		}
	}
}
