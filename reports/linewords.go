package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// lineWords describes the line in words.
func lineWords(b *scenarios.Budget) []string {
	words := []string{settingWords(b)}
	for _, s := range b.Sections {
		if s.Conveyor < 0 {
			words = append(words, aloneWords(b, s))
		} else {
			words = append(words, conveyorWords(b, s))
		}
	}
	return append(words, shiftWords(b), attendantWords(b))
}

func settingWords(b *scenarios.Budget) string {
	lanes := quantity.FormatCount(int64(max(b.Line.Lanes, 1)), "lane")
	if b.Pace == 0 {
		return lanes + "; no setting, each station runs as fast as it can"
	}
	return fmt.Sprintf("%s; the setting of %s asks for %s every %s", lanes, quantity.FormatRate(b.Line.Setting),
		carton(b.Line.Lanes), cycleTime(b.Pace))
}

func conveyorWords(b *scenarios.Budget, s scenarios.SectionBudget) string {
	var names []string
	for _, st := range s.Stations {
		spec := b.Line.Stations[st.Station]
		name := fmt.Sprintf("%s (%s)", spec.Name, spec.Kind)
		if spec.Feed.Pitches > 0 {
			name = fmt.Sprintf("%s %s on", name, pitches(spec.Feed.Pitches))
		}
		names = append(names, name)
	}
	words := fmt.Sprintf("%s indexes in %s past %s", layout.StartWith(sectionName(b, s)), cycleTime(s.Index), strings.Join(names, ", "))
	if s.Revolution > 0 {
		words += "; its master turns in " + cycleTime(s.Revolution)
	}
	if s.Release == stations.AtCamZero {
		words += "; the next cycle begins at the next cam zero when all are clear"
	} else {
		words += "; the next cycle begins when all are clear"
	}
	return words + feedWords(b.Line.Stations[s.Stations[0].Station])
}

func pitches(n int) string {
	if n == 1 {
		return "1 pitch"
	}
	return fmt.Sprintf("%d pitches", n)
}

func aloneWords(b *scenarios.Budget, s scenarios.SectionBudget) string {
	spec := b.Line.Stations[s.Stations[0].Station]
	words := fmt.Sprintf("%s (%s) runs on its own", spec.Name, spec.Kind)
	if spec.Units > 1 {
		words = fmt.Sprintf("%d units of %s (%s) run side by side", spec.Units, spec.Name, spec.Kind)
	}
	return words + feedWords(spec)
}

func feedWords(spec stations.Station) string {
	buffer := spec.Feed.Buffer
	if buffer == nil {
		return ""
	}
	words := ", behind a buffer for " + quantity.FormatCount(int64(buffer.Capacity), "carton")
	switch buffer.Capacity {
	case stations.Unlimited:
		words = ", behind a buffer without limit"
	case 0:
		words = ", taking each carton from hand to hand"
	}
	if buffer.Transit > 0 {
		words += ", " + cycleTime(buffer.Transit) + " in transit"
	}
	return words
}

func shiftWords(b *scenarios.Budget) string {
	words := "Shift of " + lengthOf(b.Line.Shift.Length)
	var planned []string
	for _, w := range b.Line.Shift.Planned {
		planned = append(planned, fmt.Sprintf("%s %s", w.Name, lengthOf(w.To-w.From)))
	}
	if planned == nil {
		return words + ", nothing planned in it"
	}
	return fmt.Sprintf("%s, of which %s planned: %s", words, lengthOf(b.PlannedTime), strings.Join(planned, ", "))
}

func attendantWords(b *scenarios.Budget) string {
	reaction := b.Line.Crew.Reaction
	words := "An attendant is always free"
	if n := b.Line.Crew.Attendants; n > 0 {
		words = quantity.FormatCount(int64(n), "attendant")
	}
	switch {
	case reaction.Mean() == 0:
		return words + ", there at once"
	case reaction.Fixed():
		return words + ", there in " + cycleTime(reaction.Mean())
	}
	return words + ", there in " + cycleTime(reaction.Mean()) + " on average"
}
