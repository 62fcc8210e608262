package motion

import (
	"fmt"
	"math"
)

// Move is a servo's move from rest to rest under limits; the units are m and s, or rad and s.
type Move struct {
	Distance     float64 // 0 or more
	Speed        float64 // limit, more than 0
	Acceleration float64 // limit, more than 0
	Deceleration float64 // limit; 0: as Acceleration
	Jerk         float64 // limit, more than 0; 0: none (trapezoidal velocity). With a jerk limit both ramps are alike
}

// Binding is which limit a move reaches.
type Binding string

// What a move reaches.
const (
	ReachesSpeed        Binding = "speed"        // it cruises
	ReachesAcceleration Binding = "acceleration" // too short to reach the speed
	ReachesJerkOnly     Binding = "jerk"         // too short to reach the acceleration
)

// Problems are the limits that make no sense.
func (m Move) Problems() []Problem {
	var found []Problem
	check := func(path string, value float64, ok bool, hint string) {
		if !ok || math.IsInf(value, 0) {
			found = append(found, Problem{Axis: "move", Path: path, Message: fmt.Sprintf("%s of %g", path, value), Hint: hint})
		}
	}
	check("distance", m.Distance, m.Distance >= 0, "0 or more")
	check("speed", m.Speed, m.Speed > 0, "more than 0")
	check("acceleration", m.Acceleration, m.Acceleration > 0, "more than 0")
	check("deceleration", m.Deceleration, m.Deceleration >= 0, "more than 0, or leave it out")
	check("jerk", m.Jerk, m.Jerk >= 0, "more than 0, or leave it out")
	if m.Jerk > 0 && m.Deceleration > 0 && m.Deceleration != m.Acceleration {
		check("deceleration", m.Deceleration, false, "a jerk-limited move has one limit for both ramps")
	}
	return found
}

// Time of the move, in closed form.
func (m Move) Time() Seconds {
	r := m.ramps()
	return Seconds(r.up + r.cruise + r.down)
}

// Reaches says which limit bounds the peak speed.
func (m Move) Reaches() Binding { return m.ramps().reaches }

// PeakSpeed that the move reaches.
func (m Move) PeakSpeed() float64 { return m.ramps().peak }

// Law of the move, normalised.
func (m Move) Law() Law {
	r := m.ramps()
	total := r.up + r.cruise + r.down
	if total == 0 {
		return StraightLine() // no move: any law will do
	}
	a, c, d := r.up/total, r.cruise/total, r.down/total
	var law Law
	var err error
	if m.Jerk > 0 {
		law, err = SCurve(a, c, d, r.jerkShare)
	} else {
		law, err = TrapezoidalVelocity(a, c, d)
	}
	if err != nil {
		return StraightLine() // limits that Problems rejects
	}
	return law
}

// ramps are the parts of a move in seconds.
type ramps struct {
	up, cruise, down float64
	jerkShare        float64 // of a ramp in which the acceleration changes
	peak             float64
	reaches          Binding
}

func (m Move) ramps() ramps {
	if m.Distance <= 0 {
		return ramps{reaches: ReachesJerkOnly}
	}
	if m.Jerk > 0 {
		return m.jerkLimited()
	}
	return m.trapezoidal()
}

// trapezoidal: Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), ch. 3.2.
func (m Move) trapezoidal() ramps {
	a, d := m.Acceleration, m.Deceleration
	if d <= 0 {
		d = a
	}
	v, reaches := m.Speed, ReachesSpeed
	if m.Distance < v*v/2*(1/a+1/d) {
		v, reaches = math.Sqrt(2*m.Distance/(1/a+1/d)), ReachesAcceleration
	}
	cruise := max(0, m.Distance/v-v/2*(1/a+1/d))
	return ramps{v / a, cruise, v / d, 0, v, reaches}
}

// jerkLimited: the symmetric seven-segment profile; Biagiotti and Melchiorri (2008), ch. 3.4. A ramp to speed v takes
// v/a + a/j where a is reached, else 2 sqrt(v/j); the move is v times a ramp long plus the cruise.
func (m Move) jerkLimited() ramps {
	v, a, j, h := m.Speed, m.Acceleration, m.Jerk, m.Distance
	if h >= v*rampTime(v, a, j) {
		ramp := rampTime(v, a, j)
		return ramps{ramp, h/v - ramp, ramp, changingShare(v, a, j), v, ReachesSpeed}
	}
	if h >= 2*a*a*a/(j*j) { // v (v/a + a/j) = h
		v = a / 2 * (-a/j + math.Sqrt(a*a/(j*j)+4*h/a))
		return ramps{v/a + a/j, 0, v/a + a/j, changingShare(v, a, j), v, ReachesAcceleration}
	}
	ramp := math.Cbrt(4 * h / j) // v 2 sqrt(v/j) = h, so the ramp is 2 (h/2j)^(1/3)
	return ramps{ramp, 0, ramp, 1, h / ramp, ReachesJerkOnly}
}

func rampTime(v, a, j float64) float64 {
	if v*j < a*a {
		return 2 * math.Sqrt(v/j)
	}
	return v/a + a/j
}

// changingShare is the share of a ramp to speed v in which the acceleration changes.
func changingShare(v, a, j float64) float64 {
	if v*j <= a*a {
		return 1
	}
	return 2 * (a / j) / (v/a + a/j)
}
