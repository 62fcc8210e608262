package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// TimingChart is the timing chart of one of the line's conveyors: its axes over two revolutions, the windows of its stations, the
// critical path and the slack.
func TimingChart(t *scenarios.Timing, conveyor int, velocity bool) chart.Timing {
	c := &t.Conveyors[conveyor]
	turn := c.Revolution
	if turn == 0 {
		turn = c.Cycle
	}
	out := chart.Timing{
		Caption:    chart.Caption{Title: "Timing chart: " + titleOf(t.Title) + ofConveyor(t, c), Subtitle: chartSubtitle(t, c), Foot: timingCaution},
		Revolution: turn.Duration(), Velocity: velocity,
	}
	cycle := longestCycle(t, conveyor)
	out.Pause = max(0, (cycle - turn).Duration())
	start, index := 0.0, chart.Span{From: 0, To: float64(c.Index.Angle(turn))}
	if len(c.Moving) > 0 {
		start = float64(c.Moving[0].From)
		index = chart.Span{From: start, To: float64(c.Moving[0].To)}
	}
	if index.To > index.From {
		out.Index = &index
	}
	for _, a := range c.Axes {
		if a.Known {
			out.Curves = append(out.Curves, axisCurve(&a, c.Axes, turn))
		}
	}
	for _, st := range t.Stations {
		if st.Conveyor == conveyor {
			out.Rows = append(out.Rows, windowRow(&st, start, turn))
		}
	}
	out.Caption.Subtitle = verdictWords(t) + ". " + out.Caption.Subtitle
	out.Margins = chartMargins(t, conveyor, turn, cycle)
	return out
}

// verdictWords are the ceiling and what the setting is against it, or the interlock that is violated.
func verdictWords(t *scenarios.Timing) string {
	var violated []string
	for _, m := range t.Margins {
		if !m.Kept() {
			violated = append(violated, m.Where+": "+m.Name)
		}
	}
	switch binding := t.Ceiling.Binding(); {
	case len(violated) > 0:
		return "VIOLATED: " + strings.Join(violated, "; ")
	case binding == nil && t.Ceiling.Kept():
		return "No limit binds"
	case binding == nil:
		return settingAgainst(t)
	case t.Ceiling.Setting == 0:
		return fmt.Sprintf("No setting is allowed: %s, %s", binding.Where, binding.Name)
	default:
		return settingAgainst(t) + fmt.Sprintf(", %s (%s)", ceilingRate(t.Ceiling.Setting), binding.Where)
	}
}

func chartSubtitle(t *scenarios.Timing, c *scenarios.ConveyorTiming) string {
	words := fmt.Sprintf("%s, a cycle of %s", quantity.FormatRate(float64(t.Setting)), seconds(c.Cycle))
	if c.Revolution == 0 {
		return words
	}
	if c.Continuous {
		return words + fmt.Sprintf("; the master never stops, a revolution takes %s", seconds(c.Revolution))
	}
	return words + fmt.Sprintf("; the master turns on demand, a revolution takes %s", seconds(c.Revolution))
}

// longestCycle is the cycle that the chart shows: that of the setting, or longer where a station needs more.
func longestCycle(t *scenarios.Timing, conveyor int) motion.Seconds {
	cycle := t.Conveyors[conveyor].Cycle
	for _, st := range t.Stations {
		if st.Conveyor == conveyor {
			cycle = max(cycle, st.Needs)
		}
	}
	return cycle
}

// axisCurve is the displacement and velocity of an axis over one revolution, in mm, inches or degrees.
func axisCurve(a *scenarios.AxisTiming, all []scenarios.AxisTiming, turn motion.Seconds) chart.Curve {
	c := chart.Curve{Name: a.Name, Detail: lawNames(a.Cam), Unit: "mm", VelocityUnit: "m/s"}
	for i := range all {
		if all[i].Name == a.Name && all[i].Station != a.Station {
			c.Name = a.Name + " of " + a.Station
		}
	}
	scale, speed := 1000.0, 1.0
	switch {
	case a.Turns:
		c.Unit, c.VelocityUnit = "deg", "deg/s"
		scale, speed = 180/math.Pi, 180/math.Pi
	case a.Units == scenarios.US:
		c.Unit, c.VelocityUnit = "in", "in/s"
		scale, speed = 1/quantity.Size("in"), 1/quantity.Size("in")
	}
	c.Stroke = scale * a.Cam.Stroke()
	for at := 0.0; at <= 360; at += 2 {
		m := a.Cam.Motion(motion.Degrees(at), turn)
		if at == 360 && a.Cam.Feeds() {
			m.Position = a.Cam.Position(0) + a.Cam.Stroke()
		}
		c.Degrees, c.Position, c.Velocity = append(c.Degrees, at), append(c.Position, scale*m.Position), append(c.Velocity, speed*m.Velocity)
	}
	return c
}

// lawNames are the motion laws of a cam, each once.
func lawNames(cam *motion.Cam) string {
	var names []string
	for _, s := range cam.Axis().Segments {
		if name := s.Law.Name(); s.Kind != motion.Dwell && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// windowRow is a station's act in degrees from the zero of the master.
func windowRow(st *scenarios.StationTiming, start float64, turn motion.Seconds) chart.WindowRow {
	row := chart.WindowRow{Name: st.Name}
	for _, w := range st.Windows {
		span := chart.Span{From: start + float64(w.From.Angle(turn)), To: start + float64(w.To.Angle(turn))}
		if span.To-span.From > 1e-6 {
			row.Windows = append(row.Windows, chart.Window{Name: w.Name, Span: span, Critical: st.Critical})
		}
	}
	if n := len(row.Windows); n > 0 && !st.Critical {
		row.Windows[n-1].Slack = st.Slack.Duration().Round(time.Millisecond)
	}
	return row
}

// mostMargins is how many margins the chart marks.
const mostMargins = 4

// chartMargins are the tightest margins, the least first.
func chartMargins(t *scenarios.Timing, conveyor int, turn, cycle motion.Seconds) []chart.Margin {
	var list []scenarios.PlacedMargin
	for _, m := range t.Margins {
		if stationOn(t, m.Where, conveyor) && m.Angle < 180 {
			list = append(list, m)
		}
	}
	slices.SortStableFunc(list, func(a, b scenarios.PlacedMargin) int { return cmp.Compare(a.Time, b.Time) })
	var out []chart.Margin
	period := float64(cycle.Angle(turn))
	for _, m := range list[:min(len(list), mostMargins)] {
		if !m.Kept() {
			from := float64(m.AngleAt)
			out = append(out, chart.Margin{On: m.Where, Span: chart.Span{From: from, To: from + max(0.5, -float64(m.Angle))}, Text: "VIOLATED: " + marginWords(m)})
			continue
		}
		span := chart.Span{From: float64(m.AngleAt), To: float64(m.AngleAt + m.Angle)}
		if m.Before {
			span = chart.Span{From: float64(m.AngleAt - m.Angle), To: float64(m.AngleAt)}
			if span.From < 0 { // before the zero of the master, which follows a pause
				span = chart.Span{From: span.From + period, To: span.To + period}
			}
		}
		if span.To <= span.From {
			continue
		}
		out = append(out, chart.Margin{On: m.Where, Span: span, Text: marginWords(m)})
	}
	return out
}

func marginWords(m scenarios.PlacedMargin) string {
	words := fmt.Sprintf("%s: %s deg, %s", m.Name, layout.Fixed(float64(m.Angle), 1), ms(m.Time))
	if !m.Turns && math.Abs(m.Distance) < 1 {
		words += ", " + lengthIn(m.Distance, m.Units, 1)
	}
	return words
}

func stationOn(t *scenarios.Timing, name string, conveyor int) bool {
	for _, st := range t.Stations {
		if st.Name == name {
			return st.Conveyor == conveyor
		}
	}
	return false
}

// timingPicture is the chart in plain characters.
func timingPicture(t *scenarios.Timing, conveyor int, style Style) layout.Section {
	s := layout.Section{Heading: "Timing chart" + ofConveyor(t, &t.Conveyors[conveyor])}
	if style.Columns()-2 < chart.NarrowestText {
		s.Notes = []string{fmt.Sprintf("The chart takes a screen of %d columns; --chart draws it", chart.NarrowestText+2)}
		return s
	}
	text, err := TimingChart(t, conveyor, false).Text(style.Columns()-2, true)
	if err != nil {
		s.Notes = []string{"The chart can't be drawn: " + err.Error()}
		return s
	}
	s.Plain = strings.Split(strings.TrimRight(text, "\n"), "\n")
	return s
}

// timingCharts are the charts of all conveyors.
func timingCharts(t *scenarios.Timing) []chart.Chart {
	var list []chart.Chart
	for i := range t.Conveyors {
		list = append(list, TimingChart(t, i, false))
	}
	return list
}
