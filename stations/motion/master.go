package motion

import "math"

// PacePeriod is the time between two cycles that the setting asks for: 3600 s x lanes / setting. Lanes is the number
// of cartons per cycle, 1 or more.
func PacePeriod(setting CartonsPerHour, lanes int) Seconds {
	return Seconds(3600 * float64(lanes) / float64(setting))
}

// SettingFor is the setting whose pace period is period (more than 0).
func SettingFor(period Seconds, lanes int) CartonsPerHour {
	return CartonsPerHour(3600 * float64(lanes) / float64(period))
}

// Master is the virtual axis that carries the cams. Its revolution is either a fixed time or a share of the pace
// period.
type Master struct {
	Revolution Seconds // fixed time of a revolution, more than 0; 0: Share says
	Share      float64 // revolution as a share of the pace period, 0 (excluded) .. 1; 0 counts as 1
	Continuous bool    // never stops: the next cycle waits for the next cam zero; else it turns on demand
	Lanes      int     // cartons per cycle; 0 counts as 1
}

func (m Master) lanes() int { return max(m.Lanes, 1) }

// Pace is the pace period at a setting.
func (m Master) Pace(setting CartonsPerHour) Seconds { return PacePeriod(setting, m.lanes()) }

// RevolutionAt is the time of one revolution at a setting.
func (m Master) RevolutionAt(setting CartonsPerHour) Seconds {
	if m.Revolution > 0 {
		return m.Revolution
	}
	if m.Share > 0 {
		return Seconds(m.Share * float64(m.Pace(setting)))
	}
	return m.Pace(setting)
}

// CycleAt is the shortest time between two cycles at a setting: the pace period or the revolution, whichever is
// longer; of a master that never stops, the next whole number of revolutions.
func (m Master) CycleAt(setting CartonsPerHour) Seconds {
	pace, turn := m.Pace(setting), m.RevolutionAt(setting)
	if !m.Continuous {
		return max(pace, turn)
	}
	turns := math.Ceil(float64(pace/turn) - 1e-9) // a whole number of turns must not round up to the next
	return Seconds(max(turns, 1)) * turn
}

// StandAt is how long the conveyor stands in a cycle at a setting, given the angle in which it moves.
func (m Master) StandAt(setting CartonsPerHour, moving Degrees) Seconds {
	return m.CycleAt(setting) - moving.Time(m.RevolutionAt(setting))
}

// Encoder counts pulses of the master.
type Encoder struct {
	PulsesPerTurn int // more than 0; 262144 (2^18) is common practice, no source
}

// PulsesPerDegree of the master.
func (e Encoder) PulsesPerDegree() float64 { return float64(e.PulsesPerTurn) / fullTurn }

// Frequency in pulses per second when a revolution lasts revolution.
func (e Encoder) Frequency(revolution Seconds) float64 {
	return float64(e.PulsesPerTurn) / float64(revolution)
}

// Pulses in a number of revolutions.
func (e Encoder) Pulses(revolutions float64) float64 { return revolutions * float64(e.PulsesPerTurn) }

// CyclesUntilTimerSlips is after how many cycles a timer that can only be set in steps of resolution (more than 0) is
// one whole cycle off a master of the exact pace period: period / |rounded period - period|; infinite if the period
// is a whole number of steps.
func CyclesUntilTimerSlips(period, resolution Seconds) float64 {
	set := math.Round(float64(period/resolution)) * float64(resolution)
	off := math.Abs(set - float64(period))
	if off <= 1e-12*float64(period) {
		return math.Inf(1)
	}
	return float64(period) / off
}
