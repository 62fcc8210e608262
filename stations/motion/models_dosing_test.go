package motion_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

// dose is the row's dose in m3.
func (p parameters) dose(t *testing.T) float64 {
	t.Helper()
	texts := append([]string{p.named["dose"]}, p.words...)
	for _, text := range texts {
		if unit := unitOf(text); unit == "fl oz" || unit == "L" || unit == "US gal" || unit == "ml" || unit == "l" {
			x, err := quantity(text)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
	}
	t.Fatalf("%s: no dose in %q", p.row.id, p.all)
	return 0
}

// tenOuncesPerInch is the piston of common practice (no source): one inch of travel meters 10 US fl oz.
func tenOuncesPerInch() motion.Piston { return motion.Piston{Area: 10 * fluidOunce / inch} }

// dosingCam is a piston that dispenses the row's dose in beta degrees at the setting P, and the revolution.
func dosingCam(t *testing.T, p parameters) (*motion.Cam, motion.Seconds) {
	t.Helper()
	stroke, err := tenOuncesPerInch().Stroke(p.dose(t))
	if err != nil {
		t.Fatal(err)
	}
	beta := motion.Degrees(p.value(t, "beta"))
	law := p.law(t)
	cam := camOf(t, motion.Axis{Name: "piston", Segments: []motion.Segment{
		{Name: "draw", Kind: motion.Rise, From: beta, To: 360, Travel: stroke, Law: law},
		{Name: "dispense", Kind: motion.Return, From: 0, To: beta, Travel: stroke, Law: law}}})
	return cam, motion.PacePeriod(motion.CartonsPerHour(p.value(t, "P")), lanes(t, p))
}

func dispenseFlow(t *testing.T, p parameters) float64 {
	cam, revolution := dosingCam(t, p)
	return tenOuncesPerInch().Flows(cam, revolution).Dispense.Value
}

// cartonSide finds "3.75 x 3.75 in" in the model or "70 mm x 70 mm" in the parameters: the inside area in m2.
func cartonArea(t *testing.T, p parameters) float64 {
	m := regexp.MustCompile(`([\d.]+) ?(mm|in)? ?x ?([\d.]+) ?(mm|in)`).FindStringSubmatch(p.row.model + " " + p.all)
	if m == nil {
		t.Fatalf("%s: no carton in %q", p.row.id, p.all)
	}
	return first(m[1]) * first(m[3]) * siUnits[m[4]] * siUnits[m[4]]
}

func dosingModels() []modelWords {
	area := func(*testing.T, parameters) []float64 { return one(tenOuncesPerInch().Area / (inch * inch)) }
	stroke := func(t *testing.T, p parameters) []float64 {
		s, err := tenOuncesPerInch().Stroke(p.dose(t))
		if err != nil {
			t.Fatal(err)
		}
		return one(s / inch)
	}
	return []modelWords{
		{"piston area for 10", area},
		{"bore", func(t *testing.T, p parameters) []float64 {
			piston := tenOuncesPerInch()
			if a, ok := p.named["A"]; ok {
				in2, err := quantity(a)
				if err != nil {
					t.Fatal(err)
				}
				piston.Area = in2
			}
			if strings.HasPrefix(p.row.model, "nozzle exit") {
				return exitVelocity(t, p)
			}
			return one(piston.Bore() / inch)
		}},
		{"nozzle exit velocity", exitVelocity},
		{"max rate under exit-velocity limit", func(t *testing.T, p parameters) []float64 {
			return one(float64(motion.SettingAtExitVelocity(p.law(t), p.dose(t), motion.CircleArea(p.value(t, "d")),
				motion.Degrees(p.value(t, "beta")), p.value(t, "u"), lanes(t, p))))
		}},
		{"stroke for", stroke},
		{"piston peak speed", func(t *testing.T, p parameters) []float64 {
			cam, revolution := dosingCam(t, p)
			return one(cam.Peaks(revolution).Velocity.Value / inch)
		}},
		{"peak flow Q = A v, in3/s", func(t *testing.T, p parameters) []float64 {
			return one(dispenseFlow(t, p) / (inch * inch * inch))
		}},
		{"level rise speed", func(t *testing.T, p parameters) []float64 {
			return one(motion.LevelSpeed(dispenseFlow(t, p), cartonArea(t, p)) / inch)
		}},
		{"peak volumetric flow", func(t *testing.T, p parameters) []float64 {
			return one(1000 * motion.PeakFlow(p.law(t), p.dose(t), motion.Seconds(p.value(t, "time"))))
		}},
		{"rise of level for a dose", func(t *testing.T, p parameters) []float64 {
			return one(1000 * motion.FillHeight(p.dose(t), cartonArea(t, p)))
		}},
		{"tolerable negative error", func(t *testing.T, p parameters) []float64 {
			error, err := motion.TolerableDeficiency(first(p.text(t, "Qn")))
			if err != nil {
				t.Fatal(err)
			}
			return one(error)
		}},
		{"sample correction factor", func(t *testing.T, p parameters) []float64 {
			factor, err := motion.SampleCorrectionFactor(int(p.value(t, "n")))
			if err != nil {
				t.Fatal(err)
			}
			return one(factor)
		}},
		{"mean fill so that at most 1 in 10^", func(t *testing.T, p parameters) []float64 {
			odds := regexp.MustCompile(`1 in 10\^(\d+)`).FindStringSubmatch(p.row.model)
			short := first(p.text(t, "m"))
			d := motion.Dosing{Declared: first(strings.TrimPrefix(p.words[0], "label")), Spread: first(p.text(t, "sigma"))}
			return one(d.LeastGiveaway(short, math.Pow(10, -first(odds[1]))))
		}},
	}
}

func exitVelocity(t *testing.T, p parameters) []float64 {
	for _, word := range p.words {
		if bore, ok := strings.CutPrefix(word, "nozzle bore "); ok {
			d, err := quantity(bore)
			if err != nil {
				t.Fatal(err)
			}
			return one(motion.ExitVelocity(dispenseFlow(t, p), motion.CircleArea(d)))
		}
	}
	t.Fatalf("%s: no nozzle bore in %q", p.row.id, p.all)
	return nil
}

// tank is the row's carton.
func (p parameters) tank(t *testing.T) motion.Tank {
	tank := motion.Tank{Length: p.value(t, "L"), Depth: p.valueOr(t, 0.1, "h"), Gravity: p.valueOr(t, 0, "g")}
	damping := p.valueOr(t, math.NaN(), "zeta")
	if m := regexp.MustCompile(`zeta=([\d.]+)`).FindStringSubmatch(p.row.model); math.IsNaN(damping) && m != nil {
		damping = first(m[1])
	}
	if math.IsNaN(damping) {
		damping = 0
	}
	tank.Damping = damping
	text := p.row.model + ";" + p.all
	if m := regexp.MustCompile(`(\d+) odd modes`).FindStringSubmatch(text); m != nil {
		tank.Modes = int(first(m[1]))
	}
	if m := regexp.MustCompile(`odd modes 1\.\.(\d+)`).FindStringSubmatch(text); m != nil {
		tank.Modes = (int(first(m[1])) + 1) / 2
	}
	return tank
}

// slosh is the row's carton under its index; the law stands in the parameters or in the model.
func (p parameters) slosh(t *testing.T, law motion.Law, time, cycle float64) *motion.Slosh {
	t.Helper()
	s, problems := motion.NewSlosh(p.tank(t), motion.IndexMove{
		Law: law, Travel: p.value(t, "D", "stroke"), Time: motion.Seconds(time), Cycle: motion.Seconds(cycle)})
	for _, problem := range problems {
		t.Fatal(problem)
	}
	return s
}

// lawInModel is the law named in the model's text.
func lawInModel(t *testing.T, model string) motion.Law {
	for _, name := range []string{"modified sine", "cycloidal", "3-4-5 polynomial", "modified trapezoid", "simple harmonic", "4-5-6-7 polynomial"} {
		if strings.Contains(model, name) {
			law, err := motion.LawByName(name)
			if err != nil {
				t.Fatal(err)
			}
			return law
		}
	}
	t.Fatalf("no law in %q", model)
	return motion.Law{}
}

// seconds finds "next 1 s", "plus 1 s" or "2 s after" in a model.
func seconds(model string) motion.Seconds {
	m := regexp.MustCompile(`next ([\d.]+) s|plus ([\d.]+) s|([\d.]+) s after`).FindStringSubmatch(model)
	if m == nil {
		return 1
	}
	return motion.Seconds(first(m[1] + m[2] + m[3]))
}

func sloshModels() []modelWords {
	modeNumber := func(t *testing.T, p parameters) int { return int(p.valueOr(t, 1, "n")) }
	frequency := func(t *testing.T, p parameters) []float64 { return one(p.tank(t).Mode(modeNumber(t, p)).Frequency) }
	share := func(t *testing.T, p parameters) []float64 {
		return one(motion.Tank{Length: 1, Depth: 1}.Mode(modeNumber(t, p)).StaticShare)
	}
	static := func(t *testing.T, p parameters) []float64 { return one(p.tank(t).StaticRise(p.value(t, "a"))) }
	alone := func(t *testing.T, p parameters) motion.Response {
		time := p.value(t, "T")
		return p.slosh(t, p.law(t), time, time).Indexes(1, max(1, seconds(p.row.model)))
	}
	return []modelWords{
		{"f_n = sqrt", frequency}, {"f_1", frequency}, {"natural frequency, rectangular tank", frequency},
		{"m_n/m = 8 tanh", func(t *testing.T, p parameters) []float64 { return one(p.tank(t).Mode(modeNumber(t, p)).MassShare) }},
		{"static wall rise", static}, {"steady wall height under constant acceleration", static},
		{"share of static tilt", share}, {"share of the static wall height", share},
		{"residual 1st-mode amplitude after one cycloidal index", func(t *testing.T, p parameters) []float64 {
			time := p.value(t, "T")
			return one(p.slosh(t, motion.Cycloidal(), time, time).Residual(0))
		}},
		{"residual 1st mode, trapezoidal velocity", func(t *testing.T, p parameters) []float64 {
			b, time := p.value(t, "b"), p.value(t, "T")
			law, err := motion.TrapezoidalVelocity(b, 1-2*b, b)
			if err != nil {
				t.Fatal(err)
			}
			return one(p.slosh(t, law, time, time).Residual(0))
		}},
		{"peak wall wave height (either wall)", func(t *testing.T, p parameters) []float64 { return one(alone(t, p).Peak) }},
		{"residual wall wave height after the index", func(t *testing.T, p parameters) []float64 { return one(alone(t, p).After) }},
		{"peak wall wave height over", func(t *testing.T, p parameters) []float64 {
			n := int(first(regexp.MustCompile(`over (\d+) index`).FindStringSubmatch(p.row.model)[1]))
			beta := first(regexp.MustCompile(`beta=([\d.]+)`).FindStringSubmatch(p.row.model)[1])
			cycle := float64(motion.PacePeriod(motion.CartonsPerHour(p.value(t, "P")), lanes(t, p)))
			s := p.slosh(t, lawInModel(t, p.row.model), cycle*beta/360, cycle)
			return one(s.Indexes(n, motion.Seconds(cycle*(1-beta/360))+seconds(p.row.model)).Peak)
		}},
		{"steady build-up of the residual", func(t *testing.T, p parameters) []float64 {
			m := regexp.MustCompile(`L=([\d.]+),\s*h=([\d.]+)`).FindStringSubmatch(p.all)
			tank := motion.Tank{Length: first(m[1]), Depth: first(m[2]), Damping: p.value(t, "zeta"), Modes: 1}
			cycle := motion.Seconds(p.value(t, "Tc"))
			s, problems := motion.NewSlosh(tank, motion.IndexMove{Law: motion.Cycloidal(), Travel: 0.1, Time: cycle / 3, Cycle: cycle})
			if problems != nil {
				t.Fatal(problems)
			}
			return one(s.BuildUp(0))
		}},
		{"laminar wall-layer damping", func(t *testing.T, p parameters) []float64 {
			return one(p.tank(t).LaminarDamping(p.value(t, "b"), p.value(t, "nu")))
		}},
		{"Housner convective mass fraction", func(t *testing.T, p parameters) []float64 { return one(p.tank(t).HousnerShare()) }},
		{"largest wall wave during and after one", func(t *testing.T, p parameters) []float64 {
			time := p.value(t, "T")
			r := p.slosh(t, lawInModel(t, p.row.model), time, time).Indexes(1, seconds(p.row.model))
			return []float64{r.Moving, r.After}
		}},
		{"residual amplitude of an undamped unit mode", func(t *testing.T, p parameters) []float64 {
			return one(motion.ResidualRatio(lawInModel(t, "cycloidal"), p.value(t, "T/period")))
		}},
	}
}

func sealingModels() []modelWords {
	wall := func(t *testing.T, p parameters) motion.PlaneWall {
		for name := range p.named {
			if strings.HasPrefix(name, "Bi") {
				return motion.PlaneWall{Biot: first(p.named[name])}
			}
		}
		return motion.PlaneWall{Biot: math.Inf(1)}
	}
	remaining := func(t *testing.T, p parameters) []float64 {
		return one(wall(t, p).Remaining(p.value(t, "Fo"), 0))
	}
	dwell := func(s motion.HeatSeal) []float64 {
		d, err := s.LeastDwell()
		if err != nil {
			panic(fmt.Sprintf("%+v: %v", s, err))
		}
		return one(float64(d))
	}
	temperature := func(model string) float64 {
		m := regexp.MustCompile(`reach ([\d.]+) C`).FindStringSubmatch(model)
		if m == nil {
			return math.NaN()
		}
		return first(m[1])
	}
	// seal reads "d=0.0004 m; alpha=0.18/(930*1340) m2/s; jaws 180 C; start 20 C; target 110 C"
	seal := func(t *testing.T, p parameters) motion.HeatSeal {
		s := motion.HeatSeal{Thickness: p.value(t, "d"), Diffusivity: p.value(t, "alpha"), Wanted: temperature(p.row.model)}
		for _, word := range p.words {
			switch {
			case strings.HasPrefix(word, "jaw"):
				s.Jaws = first(word)
			case strings.HasPrefix(word, "start"):
				s.Start = first(word)
			case strings.HasPrefix(word, "target"):
				s.Wanted = first(word)
			}
		}
		return s
	}
	return []modelWords{
		{"first root of zeta tan zeta = Bi", func(t *testing.T, p parameters) []float64 { return one(wall(t, p).Root(1)) }},
		{"C1 = 4 sin z", func(t *testing.T, p parameters) []float64 { return one(wall(t, p).Coefficient(1)) }},
		{"interface (mid-plane) remaining", remaining}, {"interface remaining difference with contact", remaining},
		{"centre-plane temperature ratio", remaining},
		{"one heated jaw", func(t *testing.T, p parameters) []float64 {
			s := seal(t, p)
			s.OneJaw = true
			return dwell(s)
		}},
		{"dwell to reach", func(t *testing.T, p parameters) []float64 { return dwell(seal(t, p)) }},
		{"least dwell for interface temperature", func(t *testing.T, p parameters) []float64 {
			return dwell(motion.HeatSeal{Thickness: p.value(t, "board"), Diffusivity: p.value(t, "alpha"), Start: p.value(t, "T0"),
				Jaws: p.value(t, "jaws"), Wanted: p.value(t, "wanted")})
		}},
		{"semi-infinite body, erfc(eta)", func(t *testing.T, p parameters) []float64 {
			return one(motion.HalfSpaceReached(2*p.value(t, "eta"), 1, 1))
		}},
	}
}

func moveModels() []modelWords {
	// A move in one unit of length throughout: numbers without their units.
	move := func(t *testing.T, p parameters) motion.Move {
		get := func(names ...string) float64 {
			for _, name := range names {
				if text, ok := p.named[name]; ok {
					return first(text)
				}
			}
			return 0
		}
		m := motion.Move{Distance: get("d"), Speed: get("v", "vmax"), Acceleration: get("a", "amax"), Deceleration: get("dec", "dmax"),
			Jerk: get("j", "jmax")}
		for _, problem := range m.Problems() {
			t.Error(problem)
		}
		return m
	}
	time := func(t *testing.T, p parameters) []float64 {
		m := move(t, p)
		checkReaches(t, p.row.model, m)
		return one(float64(m.Time()))
	}
	return []modelWords{
		{"7-segment S-curve time", time}, {"trapezoidal velocity move time", time}, {"trapezoid, unequal accel/decel", time},
		{"trapezoidal move time", time}, {"jerk-limited (symmetric seven-segment) move time", time},
		{"per pallet layer", func(t *testing.T, p parameters) []float64 {
			n := numbers(strings.ReplaceAll(p.all, "x", " "))
			cases, err := motion.CasesPerLayer(int(n[0]), int(n[1]), int(n[2]), int(n[3]))
			if err != nil {
				t.Fatal(err)
			}
			return one(float64(cases))
		}},
		{"minimum distance S = K T + C", func(t *testing.T, p parameters) []float64 {
			return one(1000 * motion.SafetyDistance(p.value(t, "K"), motion.Seconds(p.value(t, "T")), p.value(t, "C")))
		}},
	}
}

// checkReaches: the rows of the S-curve say in brackets what the move reaches.
func checkReaches(t *testing.T, model string, m motion.Move) {
	for words, want := range map[string]motion.Binding{
		"(v reached)": motion.ReachesSpeed, "(a reached)": motion.ReachesAcceleration, "(jerk only)": motion.ReachesJerkOnly,
	} {
		if strings.Contains(model, words) && m.Reaches() != want {
			t.Errorf("%+v reaches %q, the model says %q", m, m.Reaches(), words)
		}
	}
}
