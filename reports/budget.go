package reports

import (
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// Budget writes the time budget of a line. Style matters to the table format only.
func Budget(w io.Writer, b *scenarios.Budget, format Format, style Style) error {
	return report{
		page:   func(style Style) *layout.Page { return budgetPage(b, style) },
		json:   func() error { return budgetJSON(w, b) },
		charts: func() []chart.Chart { return []chart.Chart{PlanChart(b)} },
	}.write(w, format, style)
}

func budgetPage(b *scenarios.Budget, style Style) *layout.Page {
	n := notesOf(b.Warnings)
	p := &layout.Page{Title: titleOf(b.Line.Title)}
	p.Add(budgetFacts(b))
	p.Add(sectionFacts(b))
	p.Add(budgetAnswer(b, n))
	p.Add(layout.Section{Heading: "The line", Text: lineWords(b), Notes: n.take()})
	p.Add(cycleSection(b, n, style))
	p.Add(partSection(b))
	p.Add(callSection(b, n))
	p.Add(Basis(b.Assumptions).section(""))
	p.Add(layout.Section{Heading: "Notes", Notes: n.rest()})
	p.Add(layout.Section{Notes: []string{"No stop, miss, reject or wait for a buffer is in this budget; the run command forecasts with them.", caution}})
	return p
}

// budgetAnswer says what limits the line when nothing disturbs it, and what would limit it next.
func budgetAnswer(b *scenarios.Budget, n *notes) layout.Section {
	s := layout.Section{Answer: true}
	if math.IsInf(b.Rate, 1) {
		s.Text = []string{"Nothing in this line takes time, so nothing limits it" + n.mark("setting")}
		s.Notes = n.take()
		return s
	}
	s.Text = append(s.Text, fmt.Sprintf("%s undisturbed: %s%s", rateWords(b), limitWords(b), n.mark("setting")))
	s.Text = append(s.Text, nextWords(b))
	s.Text = append(s.Text, stretchWords(b)...)
	s.Notes = n.take()
	return s
}

// rateWords prints the undisturbed rate; drawn times are sampled, which leaves it uncertain by some tenths of a percent.
func rateWords(b *scenarios.Budget) string {
	for _, s := range b.Sections {
		if s.Expected != s.Cycle {
			return "About " + layout.Fixed(b.Rate, 0) + " cartons/h"
		}
	}
	return quantity.FormatRate(b.Rate)
}

func limitWords(b *scenarios.Budget) string {
	switch b.Limit.Kind {
	case scenarios.BySetting:
		return fmt.Sprintf("the setting paces the line, %s every %s", carton(b.Line.Lanes), cycleTime(b.Pace))
	case scenarios.ByStation:
		_, st := find(b, b.Limit.Station)
		return fmt.Sprintf("%s is critical, it needs a cycle of %s", nameOf(b, b.Limit.Station), cycleTime(st.Needs))
	case scenarios.ByMaster:
		return "the master's revolution outlasts all else"
	case scenarios.ByCamZero:
		return "each cycle waits for the next cam zero"
	}
	return "nothing takes time"
}

// nextWords says at what setting the critical station changes.
func nextWords(b *scenarios.Budget) string {
	if b.Limit.Kind == scenarios.ByStation {
		_, st := find(b, b.Limit.Station)
		words := fmt.Sprintf("It stays critical until it needs %s less", cycleTime(st.Relief))
		if st.Relief == 0 {
			words = "Something else needs as much"
		}
		if b.Line.Setting > 0 {
			words += fmt.Sprintf("; the setting asks for %s", quantity.FormatRate(b.Line.Setting))
		}
		return words
	}
	if b.Next < 0 {
		return fmt.Sprintf("Next to limit: the master, at %s", quantity.FormatRate(b.Ceiling))
	}
	return fmt.Sprintf("Next to limit: %s, above a setting of %s", nameOf(b, b.Next), quantity.FormatRate(b.Ceiling))
}

// stretchWords says what drawn times do to the mean of a cycle.
func stretchWords(b *scenarios.Budget) []string {
	var words []string
	for _, s := range b.Sections {
		why := "it waits for the longest draw"
		if s.Release == stations.AtCamZero {
			why = "draws fall on either side of a cam zero"
		}
		if math.Abs(float64(s.Expected-s.Cycle)) > 0.001*float64(s.Cycle) {
			words = append(words, fmt.Sprintf("A cycle of %s lasts %s on average and %s at mean times, because %s",
				sectionName(b, s), cycleTime(s.Expected), cycleTime(s.Cycle), why))
		}
	}
	return words
}

func find(b *scenarios.Budget, station int) (*scenarios.SectionBudget, *scenarios.StationBudget) {
	for k := range b.Sections {
		for i := range b.Sections[k].Stations {
			if b.Sections[k].Stations[i].Station == station {
				return &b.Sections[k], &b.Sections[k].Stations[i]
			}
		}
	}
	return nil, nil
}

func nameOf(b *scenarios.Budget, station int) string { return b.Line.Stations[station].Name }

func sectionName(b *scenarios.Budget, s scenarios.SectionBudget) string {
	if s.Conveyor < 0 {
		return nameOf(b, s.Stations[0].Station)
	}
	if len(b.Line.Conveyors) == 1 {
		return "the conveyor"
	}
	return fmt.Sprintf("the conveyor of %s", nameOf(b, s.Stations[0].Station))
}

func carton(lanes int) string {
	if lanes <= 1 {
		return "a carton"
	}
	return fmt.Sprintf("%d cartons", lanes)
}

// cycleTime prints a time to the millisecond, in seconds.
func cycleTime(d time.Duration) string { return exactly3(d.Seconds()) + " s" }

// inSeconds is a time as cycleTime prints it.
func inSeconds(d time.Duration) layout.Cell { return layout.Shown(cycleTime(d), d.Seconds()).In("s") }

func exactly3(x float64) string {
	text := layout.Fixed(x, 3)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}
