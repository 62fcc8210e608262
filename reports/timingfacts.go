package reports

import (
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// ceilingFacts are the setting and its ceiling, for data.
func ceilingFacts(t *scenarios.Timing) layout.Section {
	facts := []layout.Fact{fact("title", layout.Word(t.Title)), fact("setting", layout.Exact(float64(t.Setting)).In("cartons/h"))}
	b := t.Ceiling.Binding()
	if b == nil {
		return layout.Facts("line", "", append(facts, fact("ceiling", layout.Word("none")))...)
	}
	return layout.Facts("line", "", append(facts, fact("ceiling", layout.Shown(ceilingRate(t.Ceiling.Setting), float64(t.Ceiling.Setting)).In("cartons/h")),
		fact("bound_by", layout.Word(b.Where)), fact("binding_limit", layout.Word(b.Name)))...)
}

// bandTable lists the settings that a limit forbids, for data.
func bandTable(t *scenarios.Timing) layout.Section {
	table := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("limit"), layout.Words("band"), layout.Figures("from", "from"), layout.Figures("to", "to"), layout.Figures("worst", "worst")}}
	for _, l := range t.Ceiling.Limits {
		for i, b := range l.Bands {
			rate := func(x float64) layout.Cell { return layout.Number(x, 1).In("cartons/h") }
			table.Add(layout.Word(l.Where), layout.Word(l.Name), layout.Count(i+1), rate(float64(b.From)), rate(float64(b.To)), rate(float64(b.Worst)))
		}
	}
	return layout.Section{Key: "band", Heading: "bands", Data: true, Table: table}
}

// conveyorFacts are the times of a conveyor, and the wave in the cartons on it, for data.
func conveyorFacts(c *scenarios.ConveyorTiming) layout.Section {
	facts := []layout.Fact{fact("cycle", secondsCell(c.Cycle)), fact("revolution", secondsCell(c.Revolution)), fact("index", secondsCell(c.Index))}
	if w := c.Slosh; w != nil {
		wave := func(m float64) layout.Cell { return layout.Shown(layout.Fixed(m, 4), m).In("m") }
		facts = append(facts, fact("slosh_peak", wave(w.Open.Peak)), fact("slosh_standing", wave(w.Open.Standing)), fact("slosh_indexes", layout.Count(w.Indexes)),
			fact("slosh_steady_peak", wave(w.Steady.Peak)), fact("freeboard", wave(w.Tank.Freeboard)), fact("first_mode", layout.Measure(w.First.Frequency, 2, "Hz")))
	}
	return layout.Facts("conveyor", c.Name, facts...)
}

// curveTable holds position and velocity of every axis, angle by angle of the master, for data.
func curveTable(c *scenarios.ConveyorTiming) layout.Section {
	table := &layout.Table{Columns: []layout.Column{layout.Words("axis"), layout.Words("at, deg"), layout.Figures("position", "position"), layout.Figures("velocity", "velocity")}}
	for _, curve := range c.Curves() {
		unit := strokeUnit(curve.Turns)
		for i, at := range curve.At {
			table.Add(layout.Word(curve.Axis), layout.Word(layout.Digits(float64(at))), layout.Number(curve.Motion[i].Position, 6).In(unit), layout.Number(curve.Motion[i].Velocity, 6).In(unit+"/s"))
		}
	}
	return layout.Section{Key: "curve", Heading: "curves", Data: true, Table: table}
}
