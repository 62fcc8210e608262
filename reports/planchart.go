package reports

import (
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// PlanChart draws a line: its stations in flow order, what leads from one to the next, and what limits it undisturbed.
func PlanChart(b *scenarios.Budget) chart.Chart {
	p := planOf(b.Line, budgetAnswer(b, notesOf(nil)).Text[0])
	for _, part := range b.Sections {
		for _, st := range part.Stations {
			drawn := &p.Stations[st.Station]
			drawn.Words = append(drawn.Words, "act "+cycleTime(st.Act))
			drawn.Limits = b.Limit.Kind == scenarios.ByStation && b.Limit.Station == st.Station
			if st.Slack > 0 {
				drawn.Words = append(drawn.Words, "slack "+cycleTime(st.Slack))
			}
		}
	}
	return p
}

// ranPlan draws a line that was run: who held most of the bottleneck, and how long each waited.
func ranPlan(line *stations.Line, f *scenarios.Forecast) chart.Plan {
	holders := holdersOf(f)
	p := planOf(line, limitSentence(holders, f.ByCycles))
	for i := range f.Stations {
		st, drawn := &f.Stations[i], &p.Stations[i]
		drawn.Limits = holders[0].station == i && holders[0].share.Mean > 0
		for _, state := range []stations.State{stations.Starved, stations.Blocked} {
			if share := st.Shares[state].Mean; share >= 0.0005 {
				drawn.Words = append(drawn.Words, state.String()+" "+layout.Fixed(100*share, 1)+" %")
			}
		}
	}
	return p
}

// planOf is a line without figures, under a sentence.
func planOf(line *stations.Line, sentence string) chart.Plan {
	p := chart.Plan{Caption: finding(sentence, line.Title, ""), People: crewOf(line)}
	for i := range line.Stations {
		spec := &line.Stations[i]
		kind := spec.Kind.String()
		if spec.Units > 1 {
			kind += " x " + layout.Exactly(float64(spec.Units))
		}
		p.Stations = append(p.Stations, chart.PlanStation{Name: spec.Name, Words: []string{kind}, Units: spec.Units, Feed: wayTo(spec)})
	}
	return p
}

// wayTo is what leads to a station.
func wayTo(spec *stations.Station) chart.PlanFeed {
	buffer := spec.Feed.Buffer
	switch {
	case buffer == nil && spec.Feed.Pitches == 0:
		return chart.PlanFeed{}
	case buffer == nil:
		return chart.PlanFeed{Pitches: spec.Feed.Pitches, Words: pitches(spec.Feed.Pitches)}
	}
	way := chart.PlanFeed{Buffered: true, Unlimited: buffer.Capacity == stations.Unlimited, Room: buffer.Capacity, Words: quantity.FormatCount(int64(buffer.Capacity), "carton")}
	switch {
	case way.Unlimited:
		way.Room, way.Words = 0, "no limit"
	case way.Room == 0:
		way.Words = "hand to hand"
	}
	if buffer.Transit > 0 {
		way.Words += ", " + cycleTime(buffer.Transit) + " in transit"
	}
	return way
}

// crewOf says who clears the stops of a line.
func crewOf(line *stations.Line) string {
	return strings.TrimSuffix(attendantWords(&scenarios.Budget{Line: line}), ".")
}
