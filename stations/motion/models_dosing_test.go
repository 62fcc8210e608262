package motion_test

import (
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
		{"exit velocity = 4Q", exitVelocity}, {"nozzle exit velocity", exitVelocity},
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
			return one(piston.Bore() / inch)
		}},
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

// exitVelocity reads the bore as "nozzle bore 2 in" or "nozzle bore=30 mm", and the flow as given, from dose and
// time, or from the cam.
func exitVelocity(t *testing.T, p parameters) []float64 {
	bore := p.valueOr(t, 0, "nozzle bore", "bore", "nozzle", "d")
	for _, word := range p.words {
		if text, ok := strings.CutPrefix(word, "nozzle bore "); ok {
			d, err := quantity(text)
			if err != nil {
				t.Fatal(err)
			}
			bore = d
		}
	}
	if bore == 0 {
		t.Fatalf("%s: no nozzle bore in %q", p.row.id, p.all)
	}
	flow := p.valueOr(t, 0, "flow", "Q")
	if time := p.valueOr(t, 0, "time", "t"); flow == 0 && time > 0 {
		flow = motion.PeakFlow(p.law(t), p.dose(t), motion.Seconds(time))
	}
	if flow == 0 {
		flow = dispenseFlow(t, p)
	}
	return one(motion.ExitVelocity(flow, motion.CircleArea(bore)))
}
