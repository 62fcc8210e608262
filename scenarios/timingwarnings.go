package scenarios

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// atRest is a speed, as a share of the peak, that is put down to rounding.
const atRest = 1e-9

// warn says what to be careful of in a timing.
func (w *timer) warn() {
	t := w.timing
	add := func(about, format string, values ...any) {
		t.Warnings = append(t.Warnings, Warning{about, fmt.Sprintf(format, values...)})
	}
	for _, l := range t.Ceiling.Limits {
		if l.Now < 0 {
			add("limit "+l.Where+"/"+l.Name, "the setting of %s breaks it", quantity.FormatRate(float64(t.Setting)))
		}
	}
	for _, c := range t.Conveyors {
		for _, a := range c.Axes {
			if !c.Continuous && c.Revolution > 0 && c.Cycle > c.Revolution && a.Known && math.Abs(a.Cam.Motion(0, c.Revolution).Velocity) > atRest*a.Peaks.Velocity.Value {
				add("axis "+a.Name, "the master turns on demand and stands at its zero, where %s is in the middle of a move: it would be stopped with a jolt", a.Name)
			}
		}
		if c.Slosh != nil && len(c.Slosh.BeyondLinear) > 0 {
			add("slosh", "linear theory is taken beyond its limits: %s; expect a steeper crest than these figures say, and try it with a carton",
				strings.Join(c.Slosh.BeyondLinear, "; "))
		}
	}
	for _, s := range t.Stations {
		w.warnStation(&s, add)
	}
}

func (w *timer) warnStation(s *StationTiming, add func(about, format string, values ...any)) {
	if seal := s.Sealing; seal != nil && seal.Least > 0 && seal.Margin < 0 {
		add("seal "+s.Name, "the dwell of %s is %.3g s shorter than the seal needs", s.Name, -float64(seal.Margin))
	}
	d := s.Dosing
	if d == nil || d.Declared == 0 {
		return
	}
	switch {
	case d.Giveaway < 0:
		add("dose "+s.Name, "the mean dose of %s is below the declared content", s.Name)
	case d.ShareShort > shortShare:
		add("dose "+s.Name, "%s of the cartons of %s fall short by more than the tolerable deficiency", quantity.FormatRatio(d.ShareShort), s.Name)
	}
}

// Curve is an axis over two revolutions of the master.
type Curve struct {
	Station, Axis string
	Turns         bool
	// At are angles of the master from 0 to 720, with the Motion there: m (rad), m/s, m/s2, m/s3.
	At     []motion.Degrees
	Motion []motion.Motion
}

// curveStep is the angle between two points of a curve, in degrees.
const curveStep = 2

// rounded leaves out what is smaller than a billionth of a unit: near a rest it is rounding, and not the same on every processor.
func rounded(m motion.Motion) motion.Motion {
	for _, x := range []*float64{&m.Position, &m.Velocity, &m.Acceleration, &m.Jerk} {
		*x = math.Round(*x*1e9) / 1e9
	}
	return m
}

// Curves follow every axis of a conveyor over two revolutions. A conveyor's position starts again at each index, so that its
// curve stays on the chart.
func (c *ConveyorTiming) Curves() []Curve {
	var curves []Curve
	for _, a := range c.Axes {
		curve := Curve{Station: a.Station, Axis: a.Name, Turns: a.Turns}
		for at := motion.Degrees(0); at <= 720; at += curveStep {
			curve.At = append(curve.At, at)
			curve.Motion = append(curve.Motion, rounded(a.Cam.Motion(at, c.Revolution)))
		}
		curves = append(curves, curve)
	}
	return curves
}
