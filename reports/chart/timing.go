package chart

import (
	"fmt"
	"time"
)

// Timing is the timing chart: what every axis and station does over the revolutions of the master.
type Timing struct {
	Caption Caption
	// Revolution is the time of one revolution of the master, above 0.
	Revolution time.Duration
	// Pause is how long the master stands after each revolution; 0 for one that never stops. Windows may reach into it: their
	// degrees run on at the speed of the revolution.
	Pause time.Duration
	// Revolutions shown; 0 takes 2.
	Revolutions int
	// Index is when the conveyor moves, or nil.
	Index *Span
	// Curves are the displacements of the axes, from top to bottom.
	Curves []Curve
	// Rows are the windows of the stations, below the curves.
	Rows []WindowRow
	// Margins are marked by numbers, which a list below the chart explains; the first stands out.
	Margins []Margin
	// Velocity adds a panel with the velocities of the curves that have them.
	Velocity bool
	// Width of the drawing in points; 0 takes 960.
	Width float64
}

// Span is a part of a revolution in degrees; one that ends at or before its start runs through 360.
type Span struct{ From, To float64 }

// Curve is the motion of one axis over one revolution.
type Curve struct {
	// Name of the axis, and for instance its motion law as detail.
	Name, Detail string
	// Unit of the displacement, for instance "mm".
	Unit string
	// Stroke is the whole travel in the unit; 0 takes it from the points.
	Stroke float64
	// Degrees of the master, rising from 0 to 360, and the displacement at each. Where the last differs from the first, as with a
	// conveyor, each revolution starts anew.
	Degrees, Position []float64
	// Velocity at the same degrees and its unit; nil for none.
	Velocity     []float64
	VelocityUnit string
}

// WindowRow is a station's windows, side by side.
type WindowRow struct {
	Name    string
	Windows []Window
}

// Window is a part of the cycle in which a station does something.
type Window struct {
	Name string
	Span Span
	// Critical puts the window on the critical path.
	Critical bool
	// Slack is how much later the window could end without delaying the next index; 0 or more.
	Slack time.Duration
}

// Margin is the distance between two events.
type Margin struct {
	// On is the name of the curve or row where the margin is marked.
	On string
	// Span from the earlier event to the later one.
	Span Span
	// Text explains it, for instance "nozzle out of the carton before the index: 12 deg, 38 ms".
	Text string
}

// period is the length of a cycle in degrees, the pause counted at the speed of the revolution.
func (t Timing) period() float64 { return 360 + t.degrees(t.Pause) }

// degrees is how far the master turns in a time.
func (t Timing) degrees(d time.Duration) float64 {
	return 360 * float64(d) / float64(t.Revolution)
}

// cycles is the number of revolutions shown.
func (t Timing) cycles() int {
	if t.Revolutions > 0 {
		return t.Revolutions
	}
	return 2
}

// length of the chart in degrees, pauses included.
func (t Timing) length() float64 { return float64(t.cycles()) * t.period() }

// occurrences are the repeats of a span that touch the chart, in degrees from its start and not yet cut at its ends.
func (t Timing) occurrences(s Span) []Span {
	s = t.unwrapped(s)
	var out []Span
	for k := -2; k < t.cycles(); k++ {
		shift := float64(k) * t.period()
		if s.To+shift > 0 && s.From+shift < t.length() {
			out = append(out, Span{s.From + shift, s.To + shift})
		}
	}
	return out
}

// unwrapped moves the end of a span behind its start.
func (t Timing) unwrapped(s Span) Span {
	if s.To <= s.From {
		s.To += t.period()
	}
	return s
}

// check refuses data that contradict themselves.
func (t Timing) check() error {
	if t.Revolution <= 0 || t.Pause < 0 {
		return fmt.Errorf("a revolution of %v with a pause of %v; the first must be above 0, the second 0 or more", t.Revolution, t.Pause)
	}
	if t.Revolutions < 0 || t.Revolutions > 8 {
		return fmt.Errorf("%d revolutions; take 1 to 8, or 0 for two", t.Revolutions)
	}
	if len(t.Curves)+len(t.Rows) == 0 {
		return fmt.Errorf("timing chart %q has neither curves nor windows", t.Caption.Title)
	}
	for _, c := range t.Curves {
		if err := c.check(); err != nil {
			return err
		}
	}
	if t.Index != nil {
		if err := t.checkSpan("index", *t.Index); err != nil {
			return err
		}
	}
	for _, r := range t.Rows {
		for _, w := range r.Windows {
			if err := t.checkSpan(fmt.Sprintf("window %q of %q", w.Name, r.Name), w.Span); err != nil {
				return err
			}
			if w.Slack < 0 {
				return fmt.Errorf("window %q of %q has a slack of %v; it must be 0 or more", w.Name, r.Name, w.Slack)
			}
		}
	}
	return t.checkMargins()
}

func (t Timing) checkMargins() error {
	for _, m := range t.Margins {
		if err := t.checkSpan("margin "+m.Text, m.Span); err != nil {
			return err
		}
		found := false
		for _, c := range t.Curves {
			found = found || c.Name == m.On
		}
		for _, r := range t.Rows {
			found = found || r.Name == m.On
		}
		if !found {
			return fmt.Errorf("margin %q is on %q, which is no curve or row of the chart", m.Text, m.On)
		}
	}
	return nil
}

func (t Timing) checkSpan(what string, s Span) error {
	whole := t.period()
	if !(s.From >= 0 && s.From <= whole && s.To >= 0 && t.unwrapped(s).To-s.From <= whole+1e-9) {
		return fmt.Errorf("%s runs from %g to %g degrees; it must start within the cycle of %s degrees and be no longer", what, s.From, s.To, brief(whole))
	}
	return nil
}

func (c Curve) check() error {
	n := len(c.Degrees)
	if n < 2 || len(c.Position) != n || len(c.Velocity) != 0 && len(c.Velocity) != n {
		return fmt.Errorf("axis %q has %d degrees, %d displacements and %d velocities; at least two, as many of each", c.Name, n, len(c.Position), len(c.Velocity))
	}
	for i, v := range c.Degrees {
		if !(v >= 0 && v <= 360) || i > 0 && v < c.Degrees[i-1] {
			return fmt.Errorf("axis %q: degrees must rise from 0 to 360; number %d is %g", c.Name, i+1, v)
		}
		if !finite(c.Position[i]) {
			return fmt.Errorf("axis %q: displacement at %g degrees is not finite", c.Name, v)
		}
	}
	if !finite(c.Stroke) || c.Stroke < 0 {
		return fmt.Errorf("axis %q has a stroke of %g; it must be 0 or more", c.Name, c.Stroke)
	}
	for i, v := range c.Velocity {
		if !finite(v) {
			return fmt.Errorf("axis %q: velocity at %g degrees is not finite", c.Name, c.Degrees[i])
		}
	}
	return nil
}
