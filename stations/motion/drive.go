package motion

import "math"

// Drive is the motor and gearing of an axis. Zero ratings are unknown, and no share is formed with them.
type Drive struct {
	TravelPerTurn float64 // m (or rad) of the axis per turn of the motor, more than 0
	Inertia       float64 // kg m2 of motor, coupling and gearing, at the motor
	Mass          float64 // kg moved by the axis (kg m2 if it turns)
	PulsesPerTurn int     // of the motor's encoder; 0: none

	RatedSpeed  float64 // turns per minute, highest allowed
	RatedTorque float64 // N m, that it can keep up: compared with the rms
	PeakTorque  float64 // N m, for short: compared with the peak
}

// Load is what one axis asks of its motor.
type Load struct {
	Speed, SpeedRMS               float64 // turns per minute
	Acceleration, AccelerationRMS float64 // rad/s2 of the motor
	Torque, TorqueRMS             float64 // N m to accelerate inertia and mass; friction, weight and process forces are not in it
	PulsesPerSecond               float64 // at the peak speed
	SpeedAt, TorqueAt             Degrees // where the peaks fall

	SpeedShare, TorqueShare, TorqueRMSShare float64 // of the ratings; 0 where the rating is unknown
}

// ReflectedInertia of motor and moved mass at the motor, kg m2: J + m (travel per turn/2 pi)^2.
func (d Drive) ReflectedInertia() float64 {
	return d.Inertia + d.Mass*square(d.TravelPerTurn/(2*math.Pi))
}

// Load of the motor when it drives a cam whose revolution lasts revolution.
func (d Drive) Load(cam *Cam, revolution Seconds) Load {
	p := cam.Peaks(revolution)
	speed := 60 / d.TravelPerTurn            // turns per minute for 1 m/s
	radians := 2 * math.Pi / d.TravelPerTurn // rad/s2 for 1 m/s2
	torque := radians * d.ReflectedInertia() // N m for 1 m/s2
	l := Load{
		Speed: speed * p.Velocity.Value, SpeedRMS: speed * p.VelocityRMS, SpeedAt: p.Velocity.At,
		Acceleration: radians * p.Acceleration.Value, AccelerationRMS: radians * p.AccelerationRMS,
		Torque: torque * p.Acceleration.Value, TorqueRMS: torque * p.AccelerationRMS, TorqueAt: p.Acceleration.At,
		PulsesPerSecond: float64(d.PulsesPerTurn) * p.Velocity.Value / d.TravelPerTurn,
	}
	if p.VelocitySteps && torque > 0 { // a jolt takes a torque without bound
		l.Acceleration, l.AccelerationRMS, l.Torque, l.TorqueRMS = inf, inf, inf, inf
	}
	l.SpeedShare = share(l.Speed, d.RatedSpeed)
	l.TorqueShare = share(l.Torque, d.PeakTorque)
	l.TorqueRMSShare = share(l.TorqueRMS, d.RatedTorque)
	return l
}

var inf = math.Inf(1)

// HighestShare is the largest share of a rating.
func (l Load) HighestShare() float64 { return max(l.SpeedShare, l.TorqueShare, l.TorqueRMSShare) }

func share(value, rated float64) float64 {
	if rated <= 0 {
		return 0
	}
	return value / rated
}
