package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// timingCSV writes ceiling, margins, peaks and curves, one figure a row. An item of a curve is the angle of the master.
func timingCSV(w io.Writer, t *scenarios.Timing) error {
	s := newSheet()
	s.text("line", "", "title", t.Title, "")
	s.figure("line", "", "setting", float64(t.Setting), "cartons/h")
	if b := t.Ceiling.Binding(); b == nil {
		s.text("line", "", "ceiling", "none", "cartons/h")
	} else {
		s.figure("line", "", "ceiling", float64(t.Ceiling.Setting), "cartons/h")
		s.text("line", b.Where, "binding_limit", b.Name, "")
	}
	for _, l := range t.Ceiling.Limits {
		if l.Err == nil && l.Highest.Binds {
			s.figure("limit", l.Where, l.Name, float64(l.Highest.Setting), "cartons/h")
		} else {
			s.text("limit", l.Where, l.Name, highestWords(&l), "cartons/h")
		}
		s.figure("limit_margin", l.Where, l.Name, l.Now, l.Unit)
		for _, b := range l.Bands {
			s.rows = append(s.rows, []string{"band", l.Where, l.Name, layout.Digits(float64(b.Worst)), layout.Digits(float64(b.From)), layout.Digits(float64(b.To)), "cartons/h"})
		}
	}
	for _, u := range t.Ceiling.Unassessed {
		s.text("limit", u.Where, u.Name, "not assessed: "+u.Why, "")
	}
	for _, m := range t.Margins {
		s.figure("margin_angle", m.Where, m.Name, float64(m.Angle), "deg")
		s.figure("margin_time", m.Where, m.Name, float64(m.Time), "s")
		s.figure("margin_distance", m.Where, m.Name, m.Distance, map[bool]string{false: "m", true: "rad"}[m.Turns])
	}
	for i := range t.Conveyors {
		csvConveyor(s, &t.Conveyors[i])
	}
	for _, st := range t.Stations {
		for _, window := range st.Windows {
			s.rows = append(s.rows, []string{"window", st.Name, window.Name, layout.Digits(float64(window.To - window.From)), layout.Digits(float64(window.From)), layout.Digits(float64(window.To)), "s"})
		}
		s.figure("slack", st.Name, "", float64(st.Slack), "s")
	}
	s.warnings(t.Warnings)
	s.text("caution", "", "text", timingCaution, "")
	return s.writeTo(w)
}

func csvConveyor(s *sheet, c *scenarios.ConveyorTiming) {
	s.figure("conveyor", c.Name, "cycle", float64(c.Cycle), "s")
	s.figure("conveyor", c.Name, "revolution", float64(c.Revolution), "s")
	s.figure("conveyor", c.Name, "index", float64(c.Index), "s")
	for _, a := range c.Axes {
		if !a.Known {
			continue
		}
		unit := map[bool]string{false: "m", true: "rad"}[a.Turns]
		s.figure("peak", a.Name, "speed", a.Peaks.Velocity.Value, unit+"/s")
		s.figure("peak", a.Name, "acceleration", a.Peaks.Acceleration.Value, unit+"/s2")
		s.figure("peak", a.Name, "jerk", a.Peaks.Jerk.Value, unit+"/s3")
		if a.Load != nil {
			s.figure("motor", a.Name, "speed", a.Load.Speed, "rpm")
			s.figure("motor", a.Name, "peak_torque", a.Load.Torque, "N m")
			s.figure("motor", a.Name, "rms_torque", a.Load.TorqueRMS, "N m")
		}
	}
	if w := c.Slosh; w != nil {
		s.figure("slosh", c.Name, "peak", w.Open.Peak, "m")
		s.figure("slosh", c.Name, "standing", w.Open.Standing, "m")
		s.figure("slosh", c.Name, "indexes", float64(w.Indexes), "1")
		s.figure("slosh", c.Name, "steady_peak", w.Steady.Peak, "m")
		s.figure("slosh", c.Name, "freeboard", w.Tank.Freeboard, "m")
		s.figure("slosh", c.Name, "first_mode", w.First.Frequency, "Hz")
	}
	for _, curve := range c.Curves() {
		unit := map[bool]string{false: "m", true: "rad"}[curve.Turns]
		for i, at := range curve.At {
			s.figure("position", curve.Axis, layout.Digits(float64(at)), curve.Motion[i].Position, unit)
		}
		for i, at := range curve.At {
			s.figure("velocity", curve.Axis, layout.Digits(float64(at)), curve.Motion[i].Velocity, unit+"/s")
		}
	}
}
