package reports

import (
	"math"
	"strings"
	"time"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// cycleSection says what each station needs of a cycle, as figures and as a bar.
func cycleSection(b *scenarios.Budget, n *notes, style Style) layout.Section {
	s := layout.Section{Key: "station", Heading: "Time budget of one cycle"}
	t := &layout.Table{Columns: []layout.Column{layout.Words("station"), layout.Figures("act", "act"), layout.Figures("needs", "needs"), layout.Figures("has", "cycle"),
		layout.Figures("slack", "slack"), layout.Hidden("relief", "relief"), layout.Figures("can follow\nup to", "setting_ceiling"), layout.Told("", "critical")}}
	for _, part := range b.Sections {
		for _, st := range part.Stations {
			name := nameOf(b, st.Station)
			relief, critical := layout.Blank, layout.Blank
			if st.Critical {
				relief, critical = inSeconds(st.Relief), layout.Word("critical")
			}
			t.Add(layout.Word(name).Marked(n.mark("station "+name)+n.mark("buffer "+name)), inSeconds(st.Act), inSeconds(st.Needs), inSeconds(st.Cycle),
				inSeconds(st.Slack), relief, layout.Shown(ceilingWords(st.Ceiling), st.Ceiling).In("cartons/h"), critical)
		}
	}
	s.Table = t
	s.Plain = cyclePicture(b, style.Columns()-4)
	s.Notes = n.take()
	return s
}

func ceilingWords(perHour float64) string {
	if math.IsInf(perHour, 1) {
		return "any"
	}
	return strings.TrimSuffix(quantity.FormatRate(perHour), " cartons/h") + "/h"
}

// cyclePicture draws a bar for every station, all on one scale.
func cyclePicture(b *scenarios.Budget, width int) []string {
	longest, names := time.Duration(0), 0
	for _, s := range b.Sections {
		for _, st := range s.Stations {
			longest = max(longest, st.Cycle)
			names = max(names, len([]rune(nameOf(b, st.Station))))
		}
	}
	if longest == 0 {
		return nil
	}
	names = min(names, 20)
	room := width - names - 3
	var lines []string
	for _, s := range b.Sections {
		for _, st := range s.Stations {
			bar := stationBar(s, st, room, longest)
			lines = append(lines, padded(nameOf(b, st.Station), names)+" |"+bar+"|")
		}
	}
	end := cycleTime(longest)
	lines = append(lines, strings.Repeat(" ", names+1)+"0"+strings.Repeat(" ", room-len(end)+1)+end)
	const legend = "- index   = # parts of the act in turn   . slack"
	if len(legend) > width {
		return append(lines, layout.Wrap(legend, width)...)
	}
	return append(lines, legend)
}

// stationBar is index, parts in turn and slack, to the end of the cycle.
func stationBar(s scenarios.SectionBudget, st scenarios.StationBudget, room int, longest time.Duration) string {
	column := func(d time.Duration) int { return int(float64(room)*float64(min(d, longest))/float64(longest) + 0.5) }
	bar := []byte(strings.Repeat(" ", room))
	fill := func(from, to time.Duration, mark byte) {
		for i := column(from); i < column(to); i++ {
			bar[i] = mark
		}
	}
	fill(0, st.Cycle, '.')
	at := s.Index
	fill(0, at, '-')
	for i, part := range st.Parts {
		fill(at, min(at+part.Mean, st.Cycle), "=#"[i%2])
		at += part.Mean
	}
	return string(bar)
}

func padded(name string, width int) string {
	letters := []rune(layout.Printable(name))
	if len(letters) > width {
		letters = append(letters[:width-1], '~')
	}
	return string(letters) + strings.Repeat(" ", width-len(letters))
}
