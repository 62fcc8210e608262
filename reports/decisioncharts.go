package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// ComparisonChart draws the differences of all cases with their intervals.
func ComparisonChart(c *decisions.Comparison, o Origin) chart.Chart {
	out := chart.Ranges{
		Caption:    finding(comparisonAnswer(c)[0], c.Title, "Intervals at "+layout.Confidence(c.Spec.Confidence)+" over all cases together. "+madeBy(mostShifts(c), c.Seed, o.Version)),
		X:          chart.Axis{Title: "difference from the base", Unit: "good cartons a shift"},
		References: []chart.Reference{{Label: "no difference", Vertical: true}},
	}
	best := bestCase(c)
	for i := range c.Cases {
		r := &c.Cases[i]
		words := difference(*r)
		if r.Shows {
			words += fmt.Sprintf(" (%s %%)", differencePercent(*r))
		}
		out.Rows = append(out.Rows, chart.RangeRow{Name: r.Name + refusedMark(r.Refused), At: r.Difference.Mean, Low: r.Difference.Low, High: r.Difference.High, Words: words,
			Strong: r == best, Hollow: !r.Shows || r.Refused != ""})
		if small := r.SmallestCartons; small > 0 {
			out.Idle = chart.Idle{Label: "below the smallest difference worth knowing of", From: -small, To: small}
		}
	}
	return out
}

// PaceChart draws output over the setting.
func PaceChart(a *decisions.Pace, o Origin) chart.Chart { return paceLine(a, o) }

// paceLine is the chart, whose height may be chosen.
func paceLine(a *decisions.Pace, o Origin) chart.Line {
	s := chart.Series{Name: "good output"}
	chosen := recommended(&a.Choice)
	for i := range a.Rows {
		row := &a.Rows[i]
		s.X, s.Y = append(s.X, row.Setting), append(s.Y, row.Good.Mean)
		s.Low, s.High = append(s.Low, row.Good.Low), append(s.High, row.Good.High)
	}
	title := fmt.Sprintf("Run at %s: %s good cartons a shift; five percent faster %s", quantity.FormatRate(chosen.Setting), layout.Mean(chosen.Good), fasterInShort(a))
	out := chart.Line{Caption: finding(title, a.Title, madeBy(a.Replications, a.Seed, o.Version)), X: chart.Axis{Title: "setting", Unit: "cartons/h"},
		Y: chart.Axis{Title: "good output", Unit: "cartons a shift"}, Series: []chart.Series{s}, Band: layout.Confidence(a.Confidence) + " interval of the mean"}
	for _, row := range a.Rows {
		if !row.Good.Assessed() {
			out.Series[0].Low, out.Series[0].High, out.Band = nil, nil, ""
		}
	}
	vertical := func(label string, at float64) {
		if at > 0 && !math.IsInf(at, 0) {
			out.References = append(out.References, chart.Reference{Label: label, At: at, Vertical: true})
		}
	}
	vertical("recommended "+layout.Exactly(chosen.Setting), chosen.Setting)
	if a.Today != chosen.Setting {
		vertical("today "+layout.Exactly(a.Today), a.Today)
	}
	if a.Mechanics > 0 {
		vertical("the mechanics allow "+layout.Fixed(math.Floor(a.Mechanics), 0), a.Mechanics)
	}
	if a.Target > 0 {
		out.References = append(out.References, chart.Reference{Label: "target " + layout.Exactly(a.Target), At: a.Target})
	}
	return out
}

// fasterInShort says what five percent more speed does, in a few words.
func fasterInShort(a *decisions.Pace) string {
	if a.Next.Refused != "" {
		return "is beyond a limit"
	}
	return gainWords(a.Next)
}

// MarginChart draws how far each parameter may go, in percent of today's value, the tightest first.
func MarginChart(m *decisions.Margins, o Origin) chart.Chart {
	out := chart.Ranges{Caption: finding(marginAnswer(m)[0], m.Title, madeBy(m.Replications, m.Seed, o.Version)), X: chart.Axis{Title: "change until the limit", Unit: "% of today's value"},
		References: []chart.Reference{{Label: "today", Vertical: true}}}
	for i := range m.List {
		one := &m.List[i]
		today := one.Today.Number()
		if !one.Found || today == 0 {
			continue
		}
		percent := func(x float64) float64 { return 100 * (x - today) / math.Abs(today) }
		out.Rows = append(out.Rows, chart.RangeRow{Name: one.Path, At: percent(one.Limit.Number()), Low: percent(one.At.Low), High: percent(one.At.High),
			Words: fmt.Sprintf("%s (from %s)", farWords(one), one.Today), Strong: i == 0})
	}
	return out
}

// SizingChart draws what each candidate costs a year, and says how surely it makes the demand.
func SizingChart(z *decisions.Sizing, o Origin) chart.Chart {
	out := chart.Ranges{Caption: finding(sizingAnswer(z)[0], z.Title, "Right: chance of making the demand; open bars: not sure to. "+madeBy(z.Spec.Replications, z.Seed, o.Version)),
		X: chart.Axis{Title: "cost a year", Unit: currencyOf(z)}, Bars: true}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		out.Rows = append(out.Rows, chart.RangeRow{Name: c.Name + refusedMark(beyondWords(c)), At: c.AnnualCost.Mean, Low: c.AnnualCost.Low, High: c.AnnualCost.High,
			Words: "demand made: " + oddsPercent(c.Chance.Mean) + " %", Strong: i == z.Best, Hollow: c.Verdict != decisions.Makes || beyondWords(c) != ""})
	}
	return out
}

// mostWorths is how many causes a chart shows.
const mostWorths = 12

// WorthChart draws what fixing each cause of loss would bring.
func WorthChart(x *decisions.Explanation, f *scenarios.Forecast) chart.Chart {
	return worthChart(x, f, mostWorths)
}

// worthChart draws so many causes, the first of the explanation.
func worthChart(x *decisions.Explanation, f *scenarios.Forecast, most int) chart.Chart {
	out := chart.Ranges{X: chart.Axis{Title: "what fixing it brings", Unit: "good cartons a shift"}, References: []chart.Reference{{Label: "nothing", Vertical: true}}}
	for _, w := range x.Worths[:min(most, len(x.Worths))] {
		words := layout.None
		if shows(w.Brings) {
			words = layout.Mean(w.Brings)
		}
		out.Rows = append(out.Rows, chart.RangeRow{Name: w.Where + ": " + w.Cause, At: w.Brings.Mean, Low: w.Brings.Low, High: w.Brings.High, Words: words, Hollow: !shows(w.Brings)})
	}
	sentence := "No cause of loss is shown to be worth fixing"
	if s := worthSection(x); len(s.Text) > 0 && strings.HasPrefix(s.Text[0], "Worth most") {
		sentence = s.Text[0]
	}
	out.Caption = finding(sentence, f.Title, madeBy(x.Replications, f.Seed, f.Version))
	return out
}
