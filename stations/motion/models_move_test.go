package motion_test

import (
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

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
