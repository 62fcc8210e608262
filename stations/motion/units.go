package motion

import (
	"math"
	"time"
)

// Degrees is an angle of the master; 360 degrees are one revolution. Any finite value is an angle.
type Degrees float64

// Seconds is a length of time in seconds.
type Seconds float64

// CartonsPerHour is the operator's speed setting, more than 0.
type CartonsPerHour float64

// StandardGravity is the standard acceleration of free fall in m/s2 (3rd CGPM, 1901).
const StandardGravity = 9.80665

// fullTurn is one revolution of the master in degrees.
const fullTurn = 360.0

// Duration rounds to whole nanoseconds. Lengths beyond about 292 years saturate.
func (s Seconds) Duration() time.Duration {
	ns := math.Round(float64(s) * 1e9)
	switch {
	case math.IsNaN(ns):
		return 0
	case ns >= math.MaxInt64:
		return math.MaxInt64
	case ns <= math.MinInt64:
		return math.MinInt64
	}
	return time.Duration(ns)
}

// SecondsOf turns a duration into seconds.
func SecondsOf(d time.Duration) Seconds { return Seconds(d.Seconds()) }

// Within reduces an angle to 0 (included) .. 360 (excluded).
func (a Degrees) Within() Degrees {
	r := float64(a) - fullTurn*math.Floor(float64(a)/fullTurn)
	if r >= fullTurn {
		r = 0
	}
	return Degrees(r)
}

// Time is how long the master takes for the angle when one revolution lasts revolution.
func (a Degrees) Time(revolution Seconds) Seconds {
	return Seconds(float64(a) / fullTurn * float64(revolution))
}

// Angle is how far the master turns in s when one revolution lasts revolution (more than 0).
func (s Seconds) Angle(revolution Seconds) Degrees {
	return Degrees(fullTurn * float64(s) / float64(revolution))
}
