package reports

import (
	"strconv"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// fact is a figure, or a word, under the name that data know it by.
func fact(key string, c layout.Cell) layout.Fact { return layout.Fact{Key: key, Cell: c} }

// runFacts say what was run, for data.
func runFacts(f *scenarios.Forecast) layout.Section {
	return layout.Facts("run", "",
		fact("title", layout.Word(f.Title)),
		fact("version", layout.Word(f.Version)),
		fact("file", layout.Word(f.File)),
		fact("changes", layout.Word(strings.Join(f.Changes, "; "))),
		fact("repeat", layout.Word(f.Repeat)),
		fact("seed", layout.Word(strconv.FormatUint(f.Seed, 10))),
		fact("shifts", layout.Count(f.Replications)),
		fact("confidence", layout.Percents(layout.Interval{Mean: f.Confidence}, 0).Lone()),
		fact("interrupted", layout.Word(strconv.FormatBool(f.Interrupted))))
}

// lineFacts are the figures of the line that stand in sentences, or nowhere else.
func lineFacts(f *scenarios.Forecast) layout.Section {
	g := f.GoodPerShift
	facts := []layout.Fact{
		fact("setting", layout.Exact(f.Setting).In("cartons/h")),
		fact("scheduled", layout.Exact(f.Scheduled.Seconds()).In("s")),
		fact("good_rate", layout.Estimate(f.GoodRate).In("cartons/h")),
		fact("good_per_shift", layout.Estimate(g.Interval).In(cartonsAShift)),
		fact("good_per_shift_p10", layout.Number(g.P10, 0).In(cartonsAShift)),
		fact("good_per_shift_p50", layout.Number(g.P50, 0).In(cartonsAShift)),
		fact("good_per_shift_p90", layout.Number(g.P90, 0).In(cartonsAShift)),
		fact("good_per_shift_sd", layout.Number(g.SD, 0).In(cartonsAShift)),
		fact("ideal_per_shift", layout.Exact(f.IdealPerShift).In(cartonsAShift)),
	}
	if f.Target != nil {
		facts = append(facts, fact("target", layout.Exact(f.Target.PerShift).In(cartonsAShift)), fact("target_chance", layout.Percent(f.Target.Chance)))
	}
	return layout.Facts("line", "", append(facts,
		fact("availability", layout.Share(f.Indicators.Availability)),
		fact("effectiveness", layout.Share(f.Indicators.Effectiveness)),
		fact("quality", layout.Share(f.Indicators.Quality)),
		fact("oee", layout.Share(f.Indicators.OEE)),
		fact("crew_load", layout.Percent(f.CrewLoad)))...)
}

// steadyFacts say how a long run was cut up; nothing of shifts.
func steadyFacts(s *scenarios.Steady) layout.Section {
	if s == nil {
		return layout.Section{}
	}
	return layout.Facts("steady", "",
		fact("length", layout.Exact(s.Length.Seconds()).In("s")),
		fact("warm_up", layout.Exact(s.WarmUp.Seconds()).In("s")),
		fact("batches", layout.Count(s.Batches)),
		fact("batch_length", layout.Exact(s.BatchLength.Seconds()).In("s")))
}
