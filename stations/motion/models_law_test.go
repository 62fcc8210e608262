package motion_test

import (
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

// calculation is what a model of the table asks for: from its parameters the expected numbers, in their units.
type calculation func(t *testing.T, p parameters) []float64

// find is the calculation of a model by the distinguishing words of its text.
func find(model string) calculation {
	for _, m := range allModels() {
		if strings.Contains(model, m.words) {
			return m.calculate
		}
	}
	return nil
}

type modelWords struct {
	words     string
	calculate calculation
}

func allModels() []modelWords {
	var all []modelWords
	for _, group := range [][]modelWords{lawModels(), timingModels(), dosingModels(), sloshModels(), sealingModels(), moveModels()} {
		all = append(all, group...)
	}
	return all
}

func one(x float64) []float64 { return []float64{x} }

// law is the row's motion law: named, or the part of the text without a name that is one.
func (p parameters) law(t *testing.T) motion.Law {
	t.Helper()
	names := p.words
	if name, ok := p.named["law"]; ok {
		names = []string{name}
	}
	for _, name := range names {
		if law, err := motion.LawByName(name); err == nil {
			return law
		}
	}
	t.Fatalf("%s: no motion law in %q", p.row.id, p.all)
	return motion.Law{}
}

func lawModels() []modelWords {
	coefficient := func(pick func(motion.Coefficients) float64) calculation {
		return func(t *testing.T, p parameters) []float64 { return one(pick(p.law(t).Coefficients())) }
	}
	cv := coefficient(func(c motion.Coefficients) float64 { return c.Cv })
	ca := coefficient(func(c motion.Coefficients) float64 { return c.Ca })
	cj := coefficient(func(c motion.Coefficients) float64 { return c.Cj })
	return []modelWords{
		{"Cv = max|d^1s/dz^1|", cv}, {"peak of ds/dx", cv}, {"peak of |ds/dx", cv},
		{"Ca = max|d^2s/dz^2|", ca}, {"peak of |d2s/dx2|", ca},
		{"Cj = max|d^3s/dz^3|", cj}, {"peak of |d3s/dx3|", cj},
		{"power coefficient max|s' s''|", coefficient(func(c motion.Coefficients) float64 { return c.Power })},
		{"Ca_rms", coefficient(func(c motion.Coefficients) float64 { return c.CaRMS })},
		{"Cv_rms", coefficient(func(c motion.Coefficients) float64 { return c.CvRMS })},
		{"z at which s(z)=fraction", func(t *testing.T, p parameters) []float64 {
			return one(p.law(t).Inverse(p.value(t, "fraction")))
		}},
		{"s(z)", func(t *testing.T, p parameters) []float64 { return one(p.law(t).Position(p.value(t, "z"))) }},
		{"displacement s(x)", func(t *testing.T, p parameters) []float64 { return one(p.law(t).Position(p.value(t, "x"))) }},
	}
}
