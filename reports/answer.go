package reports

import (
	"fmt"
	"time"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// answerSection is what the reader came for: good cartons per hour and per shift, and the chance of the target.
func answerSection(f *scenarios.Forecast, n *notes) layout.Section {
	s := layout.Section{Answer: true}
	level := layout.Confidence(f.Confidence)
	s.Text = append(s.Text, fmt.Sprintf("%s good cartons an hour%s%s",
		layout.Mean(f.GoodRate), bounds(f.GoodRate, level+" interval ", ""), n.mark("good_rate")))
	shift := "a shift of " + lengthOf(f.Scheduled)
	if f.Steady != nil {
		shift = "in " + lengthOf(f.Scheduled)
	}
	s.Text = append(s.Text, fmt.Sprintf("%s %s%s%s%s", layout.Mean(f.GoodPerShift.Interval), shift,
		bounds(f.GoodPerShift.Interval, "", ""), spreadOf(f), n.mark("good_per_shift")))
	if f.Target != nil {
		s.Text = append(s.Text, fmt.Sprintf("Target of %s a shift: made in %s%s", layout.Exactly(f.Target.PerShift), oddsOf(f.Target.Chance), n.mark("target")))
	}
	if f.Steady != nil {
		s.Text = append(s.Text, steadyWords(f.Steady)+n.mark("steady"))
	}
	if f.Interrupted {
		s.Text = append(s.Text, fmt.Sprintf("INTERRUPTED: these figures rest on the %s done until then",
			f.Counted()))
	}
	s.Notes = n.take()
	return s
}

// bounds prints an interval in parentheses behind its mean.
func bounds(iv interval, label, unit string) string {
	switch {
	case !iv.Assessed():
		return " (" + label + layout.None + ", not assessed)"
	case iv.HalfWidth() == 0:
		return " (no spread)"
	}
	return " (" + label + layout.Band(iv) + unit + ")"
}

// spreadOf says how single shifts differ from each other.
func spreadOf(f *scenarios.Forecast) string {
	g := f.GoodPerShift
	if f.Steady != nil || f.Replications < 2 || g.SD == 0 {
		return ""
	}
	return fmt.Sprintf("; single shifts: P10 %s, P50 %s, P90 %s", layout.Fixed(g.P10, 0), layout.Fixed(g.P50, 0), layout.Fixed(g.P90, 0))
}

func steadyWords(s *scenarios.Steady) string {
	how := "found by MSER-5"
	if s.WarmUpGiven {
		how = "given"
	}
	return fmt.Sprintf("Long run of %s after a warm-up of %s (%s), in %d batches of %s",
		lengthOf(s.Length), lengthOf(s.WarmUp), how, s.Batches, lengthOf(s.BatchLength))
}

// lengthOf prints a length of time to the millisecond, or to the second when it is longer than an hour.
func lengthOf(d time.Duration) string {
	switch {
	case d.Abs() >= time.Hour && d%time.Hour != 0:
		return layout.Fixed(d.Hours(), 1) + " h"
	case d.Abs() >= 10*time.Minute && d%time.Minute != 0:
		return layout.Fixed(d.Minutes(), 1) + " min"
	}
	return quantity.FormatDuration(d.Round(time.Millisecond))
}
