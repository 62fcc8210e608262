package motion

import (
	"fmt"
	"math"
)

// HeatSeal is two boards of one thickness pressed between jaws; the seal is made at the interface between the boards.
type HeatSeal struct {
	Thickness   float64 // m of one board, more than 0
	Diffusivity float64 // m2/s of the board, more than 0
	Biot        float64 // h d/k of one board of thickness d under the contact conductance h; 0: perfect contact
	OneJaw      bool    // only one jaw is hot; the other is taken as insulating. Else both are
	Start       float64 // C, boards when the jaws close
	Jaws        float64 // C
	Wanted      float64 // C at the interface, strictly between Start and Jaws
}

// Diffusivity of a material, m2/s, from conductivity (W/mK), density (kg/m3) and specific heat (J/kgK).
func Diffusivity(conductivity, density, specificHeat float64) float64 {
	return conductivity / (density * specificHeat)
}

// Problems are values that make no sense.
func (s HeatSeal) Problems() []Problem {
	var found []Problem
	add := func(path, message, hint string) {
		found = append(found, Problem{Axis: "heat seal", Path: path, Message: message, Hint: hint})
	}
	if !(s.Thickness > 0) {
		add("thickness", fmt.Sprintf("board of %g m", s.Thickness), "more than 0")
	}
	if !(s.Diffusivity > 0) {
		add("diffusivity", fmt.Sprintf("diffusivity of %g m2/s", s.Diffusivity), "more than 0")
	}
	if !(s.Biot >= 0) {
		add("biot", fmt.Sprintf("Biot number of %g", s.Biot), "more than 0, or 0 for perfect contact")
	}
	if w := s.wantedShare(); !(w > 0 && w < 1) {
		add("wanted", fmt.Sprintf("%g C wanted at the interface, boards at %g C, jaws at %g C", s.Wanted, s.Start, s.Jaws),
			"the interface only ever comes between the two")
	}
	return found
}

// InterfaceTemperature after the jaws have been closed for a dwell, C.
func (s HeatSeal) InterfaceTemperature(dwell Seconds) float64 {
	return s.Jaws + (s.Start-s.Jaws)*s.remaining(dwell)
}

// LeastDwell for the wanted temperature at the interface.
func (s HeatSeal) LeastDwell() (Seconds, error) {
	if problems := s.Problems(); len(problems) > 0 {
		return 0, problems[0]
	}
	share := s.wantedShare()
	missing := func(fo float64) float64 { return s.wall().Remaining(fo, s.depth()) - share }
	hi := 1.0
	for missing(hi) > 0 {
		hi *= 2
		if hi > 1e9 {
			return 0, fmt.Errorf("heat seal: no dwell reaches %g C at the interface", s.Wanted)
		}
	}
	return Seconds(root(missing, 0, hi, 0) * square(s.halfThickness()) / s.Diffusivity), nil
}

// DwellSensitivity is how the least dwell moves with what it rests on.
type DwellSensitivity struct {
	PerJawKelvin        Seconds // change for 1 K more at the jaws (negative: shorter)
	PerWantedKelvin     Seconds // change for 1 K more at the interface
	PerThicknessPercent Seconds // change for 1 % more board, at the same contact conductance
}

// Sensitivity of the least dwell, by central differences of the exact solution.
func (s HeatSeal) Sensitivity() (DwellSensitivity, error) {
	if _, err := s.LeastDwell(); err != nil {
		return DwellSensitivity{}, err
	}
	const step = 1e-3
	h := step * min(math.Abs(s.Jaws-s.Wanted), math.Abs(s.Wanted-s.Start))
	slope := func(h float64, vary func(by float64) HeatSeal) Seconds {
		up, _ := vary(h).LeastDwell()
		down, _ := vary(-h).LeastDwell()
		return (up - down) / Seconds(2*h)
	}
	return DwellSensitivity{
		PerJawKelvin:    slope(h, func(by float64) HeatSeal { v := s; v.Jaws += by; return v }),
		PerWantedKelvin: slope(h, func(by float64) HeatSeal { v := s; v.Wanted += by; return v }),
		PerThicknessPercent: slope(step, func(by float64) HeatSeal {
			v := s
			v.Thickness *= 1 + by
			v.Biot *= 1 + by
			return v
		}) / 100,
	}, nil
}

// wantedShare is the share of the initial difference that may be left.
func (s HeatSeal) wantedShare() float64 { return (s.Wanted - s.Jaws) / (s.Start - s.Jaws) }

func (s HeatSeal) remaining(dwell Seconds) float64 {
	fo := s.Diffusivity * float64(dwell) / square(s.halfThickness())
	return s.wall().Remaining(fo, s.depth())
}

// halfThickness of the plane wall: one board between two hot jaws, both boards under one.
func (s HeatSeal) halfThickness() float64 {
	if s.OneJaw {
		return 2 * s.Thickness
	}
	return s.Thickness
}

// depth of the interface in the plane wall, 0 at the middle.
func (s HeatSeal) depth() float64 {
	if s.OneJaw {
		return 0.5
	}
	return 0
}

func (s HeatSeal) wall() PlaneWall {
	if s.Biot == 0 {
		return PlaneWall{math.Inf(1)}
	}
	return PlaneWall{s.Biot * s.halfThickness() / s.Thickness}
}

// OneTermDwell is the least dwell by the first term of the series alone, which text books give: l2/(diffusivity z2)
// ln(C cos(z x)/share). It is within 1 % from a Fourier number of 0.2 on; LeastDwell is exact.
func (s HeatSeal) OneTermDwell() Seconds {
	w := s.wall()
	z := w.Root(1)
	fo := math.Log(w.Coefficient(1)*math.Cos(z*s.depth())/s.wantedShare()) / (z * z)
	return Seconds(max(0, fo) * square(s.halfThickness()) / s.Diffusivity)
}
