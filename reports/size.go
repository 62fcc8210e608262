package reports

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Sizing writes which candidate makes the demand, and what each costs. Style matters to the table format only.
func Sizing(w io.Writer, z *decisions.Sizing, basis Basis, origin Origin, format Format, style Style) error {
	return report{
		page: func(Style) *layout.Page { return sizingPage(z, basis, origin) },
		json: func() error { return sizingJSON(w, z, basis, origin) },
		csv:  func() error { return sizingCSV(w, z) },
	}.write(w, format, style)
}

func sizingPage(z *decisions.Sizing, basis Basis, origin Origin) *layout.Page {
	n := notesOf(z.Warnings)
	p := &layout.Page{Title: titleOf(z.Title)}
	p.Add(n.answer(append(sizingAnswer(z), overturnedBy(&z.Ranges)...)))
	p.Add(layout.Section{Heading: "Why", Text: sizingReasons(z)})
	p.Add(outputSection(z))
	p.Add(moneySection(z))
	p.Add(rangeSection(&z.Ranges, z.Spec.Currency))
	p.Add(layout.Section{Heading: "The candidates", Table: candidateTable(z).laidOut()})
	p.Add(basis.section(z.Spec.Currency))
	p.Add(layout.Section{Heading: "Notes", Notes: slices.Concat(sizingNotes(z), rangeNote(&z.Ranges), n.rest())})
	p.Add(origin.foot(z.Spec.Replications, z.Seed, z.Spec.Confidence))
	return p
}

// outputSection says what each candidate makes in a year, and what it would need to make the demand.
func outputSection(z *decisions.Sizing) layout.Section {
	t := &table{columns: []column{left("candidate"), right("set-\nting"), right("net\nh"), right("good a\nyear"), right("interval"),
		right("chance\n%"), left("makes\nit"), right("needs\nsetting"), right("lines"), right("spare\n%")}}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		year := inThousands(c.Year)
		t.add(c.Name+refusedMark(beyondWords(c)), settingOf(c), layout.Fixed(c.NetHours, 0), layout.Mean(year), layout.Band(year), oddsPercent(c.Chance.Mean), verdictWord(c), neededWord(c),
			linesWord(c.LinesNeeded), layout.Fixed(100*c.Spare.Mean, 1))
	}
	level := layout.Confidence(z.Spec.Confidence)
	return layout.Section{Heading: "What they make, thousand good cartons a year", Table: t.laidOut(), Notes: []string{
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

func neededWord(c *decisions.Sized) string {
	switch {
	case c.Needed == nil:
		return "-"
	case !c.Needed.Found:
		return "none"
	}
	return layout.Exactly(c.Needed.Setting)
}

func linesWord(n int) string {
	if n == 0 {
		return ">100"
	}
	return strconv.Itoa(n)
}

// moneySection says what each candidate costs and brings.
func moneySection(z *decisions.Sizing) layout.Section {
	t := &table{columns: []column{left("candidate"), right("price"), right("cost a\nyear"), right("per 1000\ngood"), right("present\nvalue"),
		right("payback\ny"), right("disc.\ny"), right("IRR\n%"), left("dominated by")}}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		by := c.DominatedBy
		if by == "" {
			by = "-"
		}
		t.add(c.Name, priceOf(c), grouped(c.AnnualCost.Mean), layout.Fixed(c.CostPerThousand.Mean, 2), grouped(c.NetPresentValue.Mean),
			layout.Fixed(c.SimplePayback, 2), layout.Fixed(c.DiscountedPayback, 2), layout.Fixed(100*c.RateOfReturn, 1), by)
	}
	against := "against nothing"
	if z.Spec.Against != "" {
		against = "against " + z.Spec.Against
	}
	return layout.Section{Heading: "What they cost, " + currencyOf(z), Table: t.laidOut(), Notes: []string{
		"cost a year: price over its life at " + percentWords(z.Spec.Discount) + " a year, operating, crew and waste, as one yearly amount. per 1000 good: by the " +
			"cartons sold. present value, payback (simple, discounted) and internal rate of return: of what it costs and brings, " + against +
			". dominated: another makes no less and costs no more. ~: there is none"}}
}

func candidateTable(z *decisions.Sizing) *table {
	t := &table{columns: []column{left("candidate"), left("what it is"), right("lines"), right("shifts\na day"), right("attend-\nants"), right("life\ny")}}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		what := "the study's line as it is"
		if len(c.Changes) > 0 {
			what = strings.Join(c.Changes, "; ")
		}
		t.add(c.Name, what, strconv.Itoa(c.Lines), strconv.Itoa(c.Calendar.Shifts), layout.Exactly(c.Attendants), lifeOf(c))
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
func lifeOf(c *decisions.Sized) string {
	if c.Price == 0 && c.Salvage == 0 {
		return "-"
	}
	return strconv.Itoa(c.Life)
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
