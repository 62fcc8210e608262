package reports

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Sizing writes which candidate makes the demand, and what each costs. Style matters to the table format only.
func Sizing(w io.Writer, z *decisions.Sizing, basis Basis, origin Origin, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return sizingPage(z, basis, origin) },
		json:   func() error { return sizingJSON(w, z, basis, origin) },
		charts: func() []chart.Chart { return []chart.Chart{SizingChart(z, origin)} },
	}.write(w, format, style)
}

func sizingPage(z *decisions.Sizing, basis Basis, origin Origin) *layout.Page {
	n := notesOf(z.Warnings)
	p := &layout.Page{Title: titleOf(z.Title)}
	p.Add(demandFacts(z))
	p.Add(n.answer(sizingAnswer(z), overturnedBy(&z.Ranges)...))
	p.Add(layout.Section{Limits: true, Heading: "Why", Text: sizingReasons(z)})
	p.Add(outputSection(z))
	p.Add(moneySection(z))
	p.Add(rangeSection(&z.Ranges, z.Spec.Currency))
	p.Add(layout.Section{Key: "candidate", Heading: "The candidates", Table: candidateTable(z)})
	p.Add(basis.section(z.Spec.Currency))
	p.Add(layout.Section{Heading: "Notes", Notes: slices.Concat(sizingNotes(z), rangeNote(&z.Ranges), n.rest())})
	p.Add(origin.foot(z.Spec.Replications, z.Seed, z.Spec.Confidence))
	return p
}

// outputSection says what each candidate makes in a year, and what it would need to make the demand.
func outputSection(z *decisions.Sizing) layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Words("candidate"), layout.Figures("set-\nting", "setting"), layout.Figures("net\nh", "net_hours"),
		layout.Figures("good a\nyear", "good_per_year"), layout.Aside("interval"), layout.Figures("chance\n%", "chance"), layout.Told("makes\nit", "verdict"),
		layout.Figures("needs\nsetting", "needed_setting"), layout.Figures("lines", "lines_needed"), layout.Figures("spare\n%", "spare_share"),
		layout.Hidden("good a shift", "good_per_shift"), layout.Hidden("sd of a year", "good_per_year_sd"), layout.Hidden("sold", "sold_per_year"),
		layout.Hidden("waste", "waste_per_year"), layout.Hidden("refused", "refused")}}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		year := inThousands(c.Year)
		const aYear = "thousand cartons/year"
		t.Add(layout.Word(c.Name).Marked(refusedMark(beyondWords(c))), layout.Shown(settingOf(c), c.Setting).In("cartons/h"), layout.Number(c.NetHours, 0).In("h/year"),
			layout.Estimate(year).In(aYear), layout.Word(layout.Band(year)), layout.Value(oddsPercent(c.Chance.Mean), layout.InPercent(c.Chance)).In("%"),
			layout.Word(verdictWord(c)), neededCell(c), linesCell(c.LinesNeeded), layout.Estimate(layout.InPercent(c.Spare)).To(1).In("%"),
			layout.Estimate(c.PerShift).In(cartonsAShift), layout.Number(c.YearSD/1000, 1).In(aYear), layout.Estimate(inThousands(c.Sold)).In(aYear),
			layout.Estimate(inThousands(c.WasteCartons)).In(aYear), layout.Word(beyondWords(c)))
	}
	level := layout.Confidence(z.Spec.Confidence)
	return layout.Section{Key: "output", Heading: "What they make, thousand good cartons a year", Table: t, Notes: []string{
		"interval: of the average year, at " + level + ". chance: of making the demand in a year; makes it: with the wanted " + percentWords(z.Spec.Chance) +
			", ~ where these shifts leave it open. needs setting: the least that makes it, in cartons/h. lines: how many of the kind make it. spare: " +
			"share of the output beyond the expected demand" + raisedNote(z)}}
}

func raisedNote(z *decisions.Sizing) string {
	for i := range z.Candidates {
		if z.Candidates[i].Raised {
			return ". *: taken at the setting needed, its own falls short"
		}
	}
	return ""
}

func settingOf(c *decisions.Sized) string {
	switch {
	case c.Setting == 0:
		return "none"
	case c.Raised:
		return layout.Exactly(c.Setting) + "*"
	}
	return layout.Exactly(c.Setting)
}

func verdictWord(c *decisions.Sized) string {
	return map[decisions.Verdict]string{decisions.Makes: "yes", decisions.Short: "no", decisions.Open: layout.None}[c.Verdict]
}

func neededCell(c *decisions.Sized) layout.Cell {
	switch {
	case c.Needed == nil:
		return layout.Word("-")
	case !c.Needed.Found:
		return layout.Word("none")
	}
	return layout.Value(layout.Exactly(c.Needed.Setting), c.Needed.At).In("cartons/h")
}

func linesCell(n int) layout.Cell {
	if n == 0 {
		return layout.Word(">100")
	}
	return layout.Count(n)
}

// moneySection says what each candidate costs and brings.
func moneySection(z *decisions.Sizing) layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Words("candidate"), layout.Figures("price", "price"), layout.Figures("cost a\nyear", "equivalent_annual_cost"),
		layout.Figures("per 1000\ngood", "cost_per_thousand_good"), layout.Figures("present\nvalue", "net_present_value"), layout.Figures("payback\ny", "simple_payback"),
		layout.Figures("disc.\ny", "discounted_payback"), layout.Figures("IRR\n%", "internal_rate_of_return"), layout.Told("dominated by", "dominated_by"),
		layout.Hidden("worth a year", "equivalent_annual_worth")}}
	money := currencyOf(z)
	for i := range z.Candidates {
		c := &z.Candidates[i]
		by := c.DominatedBy
		if by == "" {
			by = "-"
		}
		t.Add(layout.Word(c.Name), layout.Shown(priceOf(c), float64(c.Lines)*c.Price).In(money), layout.Value(grouped(c.AnnualCost.Mean), c.AnnualCost).In(money+"/year"),
			layout.Estimate(c.CostPerThousand).To(2).In(money), layout.Value(grouped(c.NetPresentValue.Mean), c.NetPresentValue).In(money),
			layout.Number(c.SimplePayback, 2).In("years"), layout.Number(c.DiscountedPayback, 2).In("years"), layout.Number(100*c.RateOfReturn, 1).In("%"), layout.Word(by),
			layout.Value(grouped(c.AnnualWorth.Mean), c.AnnualWorth).In(money+"/year"))
	}
	against := "against nothing"
	if z.Spec.Against != "" {
		against = "against " + z.Spec.Against
	}
	return layout.Section{Key: "cost", Heading: "What they cost, " + currencyOf(z), Table: t, Notes: []string{
		"cost a year: price over its life at " + percentWords(z.Spec.Discount) + " a year, operating, crew and waste, as one yearly amount. per 1000 good: by the " +
			"cartons sold. present value, payback (simple, discounted) and internal rate of return: of what it costs and brings, " + against +
			". dominated: another makes no less and costs no more. ~: there is none"}}
}

func candidateTable(z *decisions.Sizing) *layout.Table {
	t := &layout.Table{Columns: []layout.Column{layout.Words("candidate"), layout.Told("what it is", "changes"), layout.Figures("lines", "lines"),
		layout.Figures("shifts\na day", "shifts_per_day"), layout.Figures("attend-\nants", "attendants"), layout.Figures("life\ny", "life")}}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		what := "the study's line as it is"
		if len(c.Changes) > 0 {
			what = strings.Join(c.Changes, "; ")
		}
		t.Add(layout.Word(c.Name), layout.Word(what), layout.Count(c.Lines), layout.Count(c.Calendar.Shifts), layout.Exact(c.Attendants), lifeOf(c))
	}
	return t
}

// priceOf is what is paid at the start, for all lines of a candidate.
func priceOf(c *decisions.Sized) string {
	if c.Price == 0 {
		return "-"
	}
	return grouped(float64(c.Lines) * c.Price)
}

// lifeOf is the life of what is paid for.
func lifeOf(c *decisions.Sized) layout.Cell {
	if c.Price == 0 && c.Salvage == 0 {
		return layout.Word("-")
	}
	return layout.Count(c.Life).In("years")
}

// inThousands is an interval in thousands.
func inThousands(iv interval) interval {
	iv.Mean, iv.Low, iv.High = iv.Mean/1000, iv.Low/1000, iv.High/1000
	return iv
}

// grouped prints a whole number with its digits in threes.
func grouped(x float64) string {
	text := layout.Fixed(x, 0)
	if text == layout.None {
		return text
	}
	sign := ""
	if text[0] == '-' {
		sign, text = "-", text[1:]
	}
	for at := len(text) - 3; at > 0; at -= 3 {
		text = text[:at] + " " + text[at:]
	}
	return sign + text
}

// oddsPercent prints a probability in percent, never as certain.
func oddsPercent(p float64) string {
	switch {
	case math.IsNaN(p):
		return layout.None
	case p < 0.001:
		return "<0.1"
	case p > 0.999:
		return ">99.9"
	}
	return layout.Fixed(100*p, 1)
}

// percentWords prints a share that was given.
func percentWords(share float64) string { return fmt.Sprintf("%.4g %%", 100*share) }

func currencyOf(z *decisions.Sizing) string {
	if z.Spec.Currency == "" {
		return "money"
	}
	return z.Spec.Currency
}
