package motion_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

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
