package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// ExplainedForecast writes what a run says of a line, and then what limits it, by what would change if something were otherwise.
// Style matters to the table format only.
func ExplainedForecast(w io.Writer, f *scenarios.Forecast, x *decisions.Explanation, origin Origin, format Format, style Style) error {
	return report{
		page: func(style Style) *page { return explainedPage(f, x, origin, style) },
		json: func() error { return explainedJSON(w, f, x, origin) },
		csv:  func() error { return explainedCSV(w, f, x) },
	}.write(w, format, style)
}

// explainedPage puts the explanation before the foot of the forecast.
func explainedPage(f *scenarios.Forecast, x *decisions.Explanation, origin Origin, style Style) *page {
	p := forecastPage(f, style)
	foot := p.sections[len(p.sections)-1]
	p.sections = p.sections[:len(p.sections)-1]
	p.add(speedSection(x))
	p.add(worthSection(x))
	foot.notes = append([]string{fmt.Sprintf("Explained on %s of each line, in pairs with the same luck; repeat it: %s",
		quantity.FormatCount(int64(x.Replications), "shift"), origin.Line)}, foot.notes...)
	p.add(foot)
	return p
}

// speedSection shows the elasticities beside the active-period shares.
func speedSection(x *decisions.Explanation) section {
	s := section{heading: "Explained: the percent of output that one percent of speed brings", text: speedWords(x)}
	t := &table{columns: []column{left("made faster"), right("%"), right("interval"), right("active-\nperiod %"), left("")}}
	for _, row := range x.Elasticities {
		share := ""
		if row.Holder != "" {
			share = fixed(100*row.PeriodShare.Mean, 1)
		}
		bar := ""
		if elasticityOf(row.Of) != none {
			bar = strings.Repeat("#", length(max(row.Of.Mean, 0), 20))
		}
		t.add(row.Name, elasticityOf(row.Of), elasticityBand(row.Of), share, bar)
	}
	t.foot = []string{"sum", fixed(x.Sum.Mean, 2), elasticityBand(x.Sum), "", ""}
	s.table = t
	s.notes = []string{fmt.Sprintf("Faster: all times of it shortened, by %s and lengthened by as much (central differences). One percent more of the shift, with "+
		"what is planned in it, brings %s %%, as does all together made faster. Chances that go by the setting, and a master that follows it, are kept. ~: no effect shows",
		quantity.FormatRatio(x.Step), fixed(x.Shift.Mean, 2))}
	return s
}

func elasticityOf(iv interval) string {
	if !iv.Assessed() || iv.HalfWidth() > 0 && iv.Contains(0) {
		return none
	}
	return fixed(iv.Mean, elasticityDecimals(iv))
}

func elasticityBand(iv interval) string {
	switch {
	case !iv.Assessed():
		return none
	case iv.HalfWidth() == 0:
		return "no spread"
	}
	return fixed(iv.Low, elasticityDecimals(iv)) + " to " + fixed(iv.High, elasticityDecimals(iv))
}

// elasticityDecimals is decimals with at least two and up to four.
func elasticityDecimals(iv interval) int {
	if iv.HalfWidth() == 0 {
		return 2
	}
	return min(max(int(-math.Floor(math.Log10(iv.HalfWidth()/2))), 2), 4)
}

// speedWords is the answer: what to make faster, and whether the active periods say the same.
func speedWords(x *decisions.Explanation) []string {
	if x.BySpeed == "" {
		return []string{"Nothing is shown to bring more output by being faster (~)"}
	}
	first := fmt.Sprintf("Most is to be had from %s: one percent faster brings %s %% more output", withArticle(x.BySpeed), fixed(elasticityNamed(x, x.BySpeed), 2))
	switch x.Agreement {
	case decisions.Disagree:
		return []string{first, fmt.Sprintf("The active periods name %s instead (%s %% of the time), of which one percent brings only %s %%: it is last, or "+
			"busy, most often, but output hangs less on its speed. Go by the elasticity", withArticle(x.ByPeriods), fixed(100*shareNamed(x, x.ByPeriods), 0), fixed(elasticityNamed(x, x.ByPeriods), 2))}
	case decisions.Undecided:
		return []string{first, fmt.Sprintf("The active periods name %s (%s %% of the time); no difference shows (~) between the elasticities of the two",
			withArticle(x.ByPeriods), fixed(100*shareNamed(x, x.ByPeriods), 0))}
	}
	if x.ByPeriods == "" {
		return []string{first}
	}
	return []string{first, "The active periods name the same"}
}

// withArticle puts an article before our own words; names out of a file stay as they are.
func withArticle(name string) string {
	for _, own := range []string{"pace of", "conveyor (", "crew (", "buffer before"} {
		if strings.HasPrefix(name, own) {
			return "the " + name
		}
	}
	return name
}

func elasticityNamed(x *decisions.Explanation, name string) float64 {
	for _, row := range x.Elasticities {
		if row.Name == name {
			return row.Of.Mean
		}
	}
	return math.NaN()
}

func shareNamed(x *decisions.Explanation, name string) float64 {
	for _, row := range x.Elasticities {
		if row.Name == name {
			return row.PeriodShare.Mean
		}
	}
	return math.NaN()
}
