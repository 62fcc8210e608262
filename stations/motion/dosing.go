package motion

import (
	"fmt"
	"math"
)

// Piston meters a dose by its travel.
type Piston struct {
	Area   float64 // m2, or what is the same, m3 per m of travel; more than 0
	Travel float64 // m, longest stroke of the cylinder; 0: not limited
}

// CircleArea of a bore, m2 from m.
func CircleArea(bore float64) float64 { return math.Pi / 4 * bore * bore }

// BoreOf is the bore of a circle of the given area, m from m2.
func BoreOf(area float64) float64 { return math.Sqrt(4 * area / math.Pi) }

// PistonOfBore is the piston of a bore in m.
func PistonOfBore(bore, travel float64) Piston { return Piston{CircleArea(bore), travel} }

// Bore of the piston, m.
func (p Piston) Bore() float64 { return BoreOf(p.Area) }

// Capacity is the largest dose, m3; infinite if the travel is not limited.
func (p Piston) Capacity() float64 {
	if p.Travel <= 0 {
		return math.Inf(1)
	}
	return p.Area * p.Travel
}

// Stroke for a dose in m3, m. A dose that the cylinder cannot hold, or that is not more than 0, is an error.
func (p Piston) Stroke(dose float64) (float64, error) {
	if !(dose > 0) {
		return 0, fmt.Errorf("dose of %g m3: it must be more than 0", dose)
	}
	if dose > p.Capacity()*(1+1e-12) {
		return 0, fmt.Errorf("dose of %.6g l is larger than the cylinder of %.6g l", 1000*dose, 1000*p.Capacity())
	}
	return dose / p.Area, nil
}

// PeakFlow is the largest flow of a dose (m3) moved in a time by a law: Cv dose/time, m3/s.
func PeakFlow(law Law, dose float64, time Seconds) float64 {
	return law.Coefficients().Cv * dose / float64(time)
}

// Flows are the largest flows of a dosing piston in a revolution, m3/s, and where they fall.
type Flows struct{ Draw, Dispense Peak }

// Flows of the piston driven by a cam (m of travel).
func (p Piston) Flows(cam *Cam, revolution Seconds) Flows {
	var f Flows
	for _, m := range cam.moves {
		if m.travel == 0 {
			continue
		}
		k := m.law.Coefficients()
		flow := p.Area * math.Abs(m.travel) * m.perSpan * fullTurn / float64(revolution) * k.Cv
		peak := &f.Draw
		if m.travel < 0 {
			peak = &f.Dispense
		}
		peak.raise(flow, cam.angle(m, k.AtV))
	}
	return f
}

// ExitVelocity at a nozzle of the given open area (m2) at a flow (m3/s), m/s, by continuity.
func ExitVelocity(flow, area float64) float64 { return flow / area }

// LevelSpeed is how fast the level rises in a carton of the given inside area (m2) at a flow (m3/s), m/s, by
// continuity.
func LevelSpeed(flow, cartonArea float64) float64 { return flow / cartonArea }

// FillHeight of a dose (m3) in a carton of the given inside area (m2), m.
func FillHeight(dose, cartonArea float64) float64 { return dose / cartonArea }

// SettingAtExitVelocity is the setting at which a dose (m3), dispensed by the law within an angle of a revolution
// that stretches with the pace, leaves the nozzle (area m2) at the splash limit (m/s): 10 lanes angle limit area/(Cv
// dose).
func SettingAtExitVelocity(law Law, dose, area float64, angle Degrees, limit float64, lanes int) CartonsPerHour {
	return SettingFor(stretched(Seconds(PeakFlow(law, dose, 1)/(limit*area)), angle), lanes)
}

// stretched is the revolution in which an angle takes a time.
func stretched(time Seconds, angle Degrees) Seconds { return time * fullTurn / Seconds(angle) }
