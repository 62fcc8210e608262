package motion_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

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
