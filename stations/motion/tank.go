package motion

import (
	"fmt"
	"math"
)

// Tank is the liquid in an open carton of rectangular section that is moved along its length.
type Tank struct {
	Length    float64 // m, inside, along the conveyor; more than 0
	Depth     float64 // m of liquid; more than 0
	Freeboard float64 // m from the still level to where liquid is lost; 0: not given
	Height    float64 // m, inside height of the carton; 0: not given
	Damping   float64 // share of critical damping of every mode, 0 to less than 1
	Modes     int     // odd modes counted, 1 to 50; 0 counts as 5
	Gravity   float64 // m/s2; 0 counts as StandardGravity
}

// Mode is one standing wave along the tank. Only odd ones are driven by moving the tank to and fro.
type Mode struct {
	Number      int     // half waves along the tank, 1 or more
	Frequency   float64 // Hz, undamped: omega2 = k g tanh(k depth), k = n pi/length
	Drive       float64 // wall height per second squared for a tank acceleration of 1 m/s2: 4 tanh(k depth)/(n pi) for odd n
	MassShare   float64 // of the liquid that moves with this mode: 8 tanh(k depth)/(n3 pi3 depth/length) for odd n
	StaticShare float64 // of the tilt under constant acceleration that this mode holds: 8/(n pi)2 for odd n
}

// Omega is the circular frequency, rad/s.
func (m Mode) Omega() float64 { return 2 * math.Pi * m.Frequency }

// Mode is the n-th mode of the tank, n = 1 or more. Sources: Lamb, Hydrodynamics, art. 257; Graham and Rodriguez
// 1952; Dodge, The New Dynamic Behavior of Liquids in Moving Containers (2000), ch. 1; Ibrahim, Liquid Sloshing
// Dynamics (2005), ch. 1.
func (t Tank) Mode(n int) Mode {
	k := float64(n) * math.Pi / t.Length
	depth := math.Tanh(k * t.Depth)
	m := Mode{Number: n, Frequency: math.Sqrt(t.gravity()*k*depth) / (2 * math.Pi)}
	if n%2 == 1 {
		pn := float64(n) * math.Pi
		m.Drive = 4 * depth / pn
		m.MassShare = 8 * depth / (pn * pn * pn * t.Depth / t.Length)
		m.StaticShare = 8 / (pn * pn)
	}
	return m
}

// StaticRise is how high the liquid stands at the wall under a constant acceleration, m from m/s2: a length/(2 g).
func (t Tank) StaticRise(acceleration float64) float64 {
	return acceleration * t.Length / (2 * t.gravity())
}

// LaminarDamping is the damping ratio of the first mode that the laminar layers at walls and bottom of a tank of a
// given width (m) cause, for a kinematic viscosity in m2/s: sqrt(nu/2 omega) [1/width + (1 - 2kh/sinh 2kh)/length +
// k/sinh 2kh]. After Keulegan 1959, J. Fluid Mech. 6. It leaves out the surface film, so real cartons damp more.
func (t Tank) LaminarDamping(width, viscosity float64) float64 {
	omega := t.Mode(1).Omega()
	k := math.Pi / t.Length
	x := 2 * k * t.Depth
	return math.Sqrt(viscosity/(2*omega)) * (1/width + (1-x/math.Sinh(x))/t.Length + k/math.Sinh(x))
}

// HousnerShare is the share of the liquid that sloshes by Housner's approximation, for a check of the first
// MassShare: 0.527 (l/h) tanh(1.58 h/l), l half the length. Housner 1963, Bull. Seism. Soc. Am. 53(2).
func (t Tank) HousnerShare() float64 {
	r := t.Depth / (t.Length / 2)
	return 0.527 / r * math.Tanh(1.58*r)
}

// Problems are values that make no sense.
func (t Tank) Problems() []Problem {
	var found []Problem
	add := func(path, message, hint string) {
		found = append(found, Problem{Axis: "slosh", Path: path, Message: message, Hint: hint})
	}
	if !(t.Length > 0) || math.IsInf(t.Length, 1) {
		add("length", fmt.Sprintf("inside length of %g m", t.Length), "more than 0")
	}
	if !(t.Depth > 0) || math.IsInf(t.Depth, 1) {
		add("depth", fmt.Sprintf("liquid %g m deep", t.Depth), "more than 0")
	}
	if !(t.Damping >= 0 && t.Damping < 1) {
		add("damping", fmt.Sprintf("damping ratio of %g", t.Damping), "0 to less than 1; 0.005 to 0.02 is usual for a thin liquid")
	}
	if !(t.Freeboard >= 0) {
		add("freeboard", fmt.Sprintf("freeboard of %g m", t.Freeboard), "0 or more")
	} else if t.Height > 0 && t.Depth+t.Freeboard > t.Height*(1+1e-9) {
		add("freeboard", fmt.Sprintf("freeboard of %g m over a depth of %g m ends above the carton, %g m high", t.Freeboard, t.Depth, t.Height),
			"at most the height less the depth")
	}
	if t.Modes < 0 || t.Modes > 50 {
		add("modes", fmt.Sprintf("%d modes", t.Modes), "1 to 50")
	}
	return found
}

func (t Tank) gravity() float64 {
	if t.Gravity == 0 {
		return StandardGravity
	}
	return t.Gravity
}

func (t Tank) modeCount() int {
	if t.Modes == 0 {
		return 5
	}
	return t.Modes
}
