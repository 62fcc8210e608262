package reports

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// Summary is all that is known of a line, for whoever has to decide about it.
type Summary struct {
	Budget   *scenarios.Budget
	Forecast *scenarios.Forecast
	Explains *decisions.Explanation
	Pace     *decisions.Pace       // nil for a line without a setting
	Compares *decisions.Comparison // nil where no cases were asked for
	Timing   *scenarios.Timing     // nil where the file describes times alone
	// Text is the file, changes applied.
	Text string
	// Title, Author, Date and Logo are as given; empty where they are not. The logo is a data URI.
	Title, Author, Date, Logo string
}

// ErrRead says that a summary is to be read.
var ErrRead = errors.New("a report is to be read; run, pace and compare write data")

// Report writes a summary: two pages to decide by, and behind them all that they rest on. It has no JSON.
func Report(w io.Writer, s *Summary, origin Origin, format Format, style Style) error {
	return report{
		page: func(style Style) *layout.Page { return summaryPage(s, origin, style) },
		json: func() error { return ErrRead },
	}.write(w, format, style)
}

func summaryPage(s *Summary, o Origin, style Style) *layout.Page {
	n := notesOf(s.warnings())
	p := &layout.Page{Title: s.Title, Logo: s.Logo}
	if p.Title == "" {
		p.Title = titleOf(s.Forecast.Title)
	}
	p.Add(layout.Section{Notes: byline(s)})
	p.Add(summaryAnswer(s, n))
	p.Add(drawn(layout.Section{Heading: "The line"}, ranPlan(s.Budget.Line, s.Forecast)))
	p.Add(outputSummary(s))
	p.Add(limitSummary(s, n))
	p.Add(paceSummary(s))
	p.Add(caseSummary(s))
	p.Add(s.basisSection())
	p.Add(layout.Section{Heading: "Cautions, and how to repeat this", Notes: slices.Concat(n.rest(), []string{"Repeat it: " + o.Line, ranAs(s.Forecast), caution})})
	list := appendix(s, o, style)
	list[slices.IndexFunc(list, func(part layout.Section) bool { return !part.Data })].Break = true
	for _, part := range list {
		p.Add(part)
	}
	return p
}

// warnings are those of the forecast, and what is odd about the line beside them.
func (s *Summary) warnings() []scenarios.Warning {
	list := slices.Clone(s.Forecast.Warnings)
	for _, w := range s.Budget.Warnings {
		if !slices.Contains(list, w) {
			list = append(list, w)
		}
	}
	return list
}

// byline is who wrote a report, and when; nothing where it was not said.
func byline(s *Summary) []string {
	var words []string
	for _, word := range []string{s.Author, s.Date} {
		if word != "" {
			words = append(words, word)
		}
	}
	if words == nil {
		return nil
	}
	return []string{strings.Join(words, ", ")}
}

// drawn is a section with charts in it.
func drawn(s layout.Section, charts ...chart.Chart) layout.Section {
	pictures, notes := picturesOf(charts)
	s.Pictures, s.Notes = append(s.Pictures, pictures...), append(s.Notes, notes...)
	return s
}

// summaryAnswer says what was asked and answered.
func summaryAnswer(s *Summary, n *notes) layout.Section {
	answer := answerSection(s.Forecast, n)
	answer.Heading = "What was asked, and the answer"
	asked := "Asked: what the line makes as its file describes it, and what limits it"
	if s.Pace == nil {
		answer.Text = append(answer.Text, asked)
		return answer
	}
	answer.Text = append(answer.Text, paceAnswer(s.Pace)[0])
	answer.But = overturnedBy(&s.Pace.Ranges)
	answer.Text = append(answer.Text, asked+"; which setting to run it at, and why not faster")
	return answer
}

func outputSummary(s *Summary) layout.Section {
	section := layout.Section{Heading: "Output against the target"}
	if spreadOf(s.Forecast) == "" {
		section.Text = []string{"Single shifts do not differ"}
		return section
	}
	return drawn(section, spreadChart(s.Forecast))
}

// limitSummary says what limits, and what fixing it brings.
func limitSummary(s *Summary, n *notes) layout.Section {
	section := layout.Section{Heading: "What limits it, and what fixing brings", Limits: true, Text: []string{limitSentence(holdersOf(s.Forecast), s.Forecast.ByCycles) + n.mark("bottleneck")}}
	section.Text = append(section.Text, fasterWords(s.Explains))
	section.Notes = n.take()
	if len(s.Explains.Worths) == 0 {
		return section
	}
	return drawn(section, worthChart(s.Explains, s.Forecast, frontWorths))
}

// So that all fits two sheets of paper: the causes that the front shows, and the height of its curve in points.
const (
	frontWorths = 6
	frontHeight = 160
)

// paceSummary says why this setting, and why not faster.
func paceSummary(s *Summary) layout.Section {
	if s.Pace == nil {
		return layout.Section{}
	}
	line := paceLine(s.Pace, Origin{Version: s.Forecast.Version})
	line.Height = frontHeight
	return drawn(layout.Section{Heading: "The setting, and why not faster", Text: whyNotFaster(s.Pace)}, line)
}

// caseSummary says what the cases of a study would change.
func caseSummary(s *Summary) layout.Section {
	if s.Compares == nil {
		return layout.Section{}
	}
	return drawn(layout.Section{Heading: "What if", Text: comparisonAnswer(s.Compares)[1:]}, ComparisonChart(s.Compares, Origin{Version: s.Forecast.Version}))
}

// basisSection is the register of assumptions, with whether an end of its range overturns the setting.
func (s *Summary) basisSection() layout.Section {
	section := Basis(s.Budget.Assumptions).section("")
	if s.Pace == nil || section.Table == nil {
		return section
	}
	overturns := map[string]bool{}
	for _, o := range s.Pace.Overturns {
		overturns[o.Path] = true
	}
	section.Table.Columns = append(section.Table.Columns, layout.Told("moves the setting", "moves"))
	listed := Basis(s.Budget.Assumptions).sorted()
	for i, row := range section.Table.Rows {
		word := "not found to"
		switch a := listed[i]; {
		case overturns[a.Path]:
			word = "yes"
		case a.Low == "" && a.High == "":
			word = "no range given"
		}
		section.Table.Rows[i] = append(row, layout.Word(word))
	}
	return section
}

// appendix is what the two pages rest on: every page that was made, its sections under its name, and the file.
func appendix(s *Summary, o Origin, style Style) []layout.Section {
	var list []layout.Section
	take := func(name string, p *layout.Page) {
		for _, part := range p.Sections {
			if part.Heading == "" && !part.Data || part.Heading == "Notes" || part.Heading == "What the answer rests on" {
				continue
			}
			part.Heading, part.Answer, part.Limits = fmt.Sprintf("Appendix, %s: %s", name, lowered(part.Heading)), false, false
			list = append(list, part)
		}
	}
	take("run", explainedPage(s.Forecast, s.Explains, o, style))
	take("check", budgetPage(s.Budget, style))
	if s.Pace != nil {
		take("pace", pacePage(s.Pace, o))
	}
	if s.Compares != nil {
		take("compare", comparisonPage(s.Compares, o))
	}
	if s.Timing != nil {
		list = append(list, drawn(layout.Section{Heading: "Appendix, timing: the chart"}, timingCharts(s.Timing)...))
		take("timing", timingPage(s.Timing, style))
	}
	return append(list, layout.Section{Heading: "Appendix: the file", Verbatim: s.Text})
}

// lowered begins a heading of ours in small letters.
func lowered(heading string) string {
	if heading == "" {
		return "figures"
	}
	return strings.ToLower(heading[:1]) + heading[1:]
}
