package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// sizingAnswer says which candidate to take, or that none makes the demand and what comes nearest.
func sizingAnswer(z *decisions.Sizing) []string {
	wanted := fmt.Sprintf("%s good cartons a year%s", demandWords(z), ", wanted with "+percentWords(z.Spec.Chance))
	if z.Undecided >= 0 && z.Best >= 0 {
		return append([]string{openWords(z)}, takeWords(z, wanted)...)
	}
	if z.Best < 0 {
		r := z.Reach()
		c := r.Of
		words := []string{"No candidate is sure to make the demand: " + wanted}
		words = append(words, fmt.Sprintf("The best in reach is %s%s: %s thousand a year, %s %% of the demand, and a chance of %s %%%s", c.Name, reachWords(r),
			layout.Mean(inThousands(r.Year)), layout.Fixed(100*r.Year.Mean/z.Spec.Demand.Mean(), 1), oddsPercent(r.Chance.Mean), chanceBounds(r.Chance)))
		if c.Verdict == decisions.Open || z.Undecided >= 0 {
			words = append(words, fmt.Sprintf("These shifts leave open whether that is enough: give more --shifts than %d", z.Spec.Replications))
		}
		if c.LinesNeeded > 0 && c.LinesNeeded > c.Lines {
			words = append(words, fmt.Sprintf("%d lines of its kind would make it", c.LinesNeeded))
		}
		return words
	}
	return takeWords(z, wanted)
}

// openWords says which candidate would be taken if more shifts showed that it makes the demand.
func openWords(z *decisions.Sizing) string {
	c := &z.Candidates[z.Undecided]
	where, chance := "", c.Chance
	if c.Needed != nil && c.Needed.Open {
		where, chance = " at a setting of "+quantity.FormatRate(c.Needed.Setting), c.Needed.Chance
	}
	return fmt.Sprintf("Open (~): %s%s may make the demand and would be taken then; %s leave its chance at %s %%%s: give more", c.Name, where,
		quantity.FormatCount(int64(z.Spec.Replications), "shift"), oddsPercent(chance.Mean), chanceBounds(chance))
}

// takeWords recommend a candidate; that it is worth less than what is there comes first.
func takeWords(z *decisions.Sizing, wanted string) []string {
	c := &z.Candidates[z.Best]
	var words []string
	if z.Spec.Against != "" && c.NetPresentValue.High < 0 {
		words = append(words, fmt.Sprintf("Against %s the one to take loses money: a present value of %s %s; it is the least dear way to make the demand", z.Spec.Against,
			grouped(c.NetPresentValue.Mean), currencyOf(z)))
	}
	return append(words,
		fmt.Sprintf("Take: %s%s. It makes the demand with a chance of %s %%%s", c.Name, raisedWords(c), oddsPercent(c.Chance.Mean), chanceBounds(c.Chance)),
		fmt.Sprintf("Demand: %s", wanted),
		fmt.Sprintf("It makes %s thousand good cartons in an average year%s, with %s %% to spare", layout.Mean(inThousands(c.Year)), bounds(inThousands(c.Year), "", ""),
			layout.Fixed(100*c.Spare.Mean, 1)))
}

// reachWords says at which setting the best in reach is had.
func reachWords(r decisions.Reach) string {
	if r.Of.Needed == nil {
		return ""
	}
	return fmt.Sprintf(" at a setting of %s, of those up to %s", quantity.FormatRate(r.Setting), quantity.FormatRate(r.Of.Needed.Most))
}

func raisedWords(c *decisions.Sized) string {
	if c.Raised {
		return " at a setting of " + quantity.FormatRate(c.Setting)
	}
	return ""
}

func chanceBounds(iv interval) string {
	if !iv.Assessed() || oddsPercent(iv.Low) == oddsPercent(iv.High) {
		return ""
	}
	return fmt.Sprintf(" (%s to %s %%)", oddsPercent(iv.Low), oddsPercent(iv.High))
}

// demandWords is the demand, or its range.
func demandWords(z *decisions.Sizing) string {
	d := z.Spec.Demand
	if d.Fixed() {
		return grouped(d.Mean())
	}
	return fmt.Sprintf("%s on average, %s to %s in nine years of ten,", grouped(d.Mean()), grouped(d.Quantile(0.05)), grouped(d.Quantile(0.95)))
}

// sizingReasons say why the recommended one, and why not another.
func sizingReasons(z *decisions.Sizing) []string {
	var words, short, open []string
	for i := range z.Candidates {
		c := &z.Candidates[i]
		switch c.Verdict {
		case decisions.Short:
			short = append(short, fmt.Sprintf("%s (%s %%%s)", c.Name, oddsPercent(c.Chance.Mean), shortWords(c)))
		case decisions.Open:
			open = append(open, fmt.Sprintf("%s (%s %%%s)", c.Name, oddsPercent(c.Chance.Mean), strings.TrimSuffix(strings.Replace(chanceBounds(c.Chance), " (", ", ", 1), ")")))
		}
	}
	if z.Best >= 0 {
		words = append(words, priceWords(z))
	}
	words = appendList(words, "Short of the demand: ", short)
	return appendList(words, "Not settled by these shifts: ", open)
}

// priceWords say why the recommended candidate is the cheapest.
func priceWords(z *decisions.Sizing) string {
	c := &z.Candidates[z.Best]
	figure, what, behind := func(k *decisions.Sized) float64 { return k.AnnualCost.Mean }, "costs least", "more"
	if z.ByWorth() {
		figure, what, behind = func(k *decisions.Sized) float64 { return k.AnnualWorth.Mean }, "brings most", "less"
	}
	amount := fmt.Sprintf("%s %s a year, %s a thousand cartons", grouped(figure(c)), currencyOf(z), layout.Fixed(c.CostPerThousand.Mean, 2))
	if z.Next < 0 {
		return fmt.Sprintf("%s is the only one that makes it: %s", c.Name, amount)
	}
	next := &z.Candidates[z.Next]
	return fmt.Sprintf("%s %s of those that make it: %s; next comes %s with %s %s", c.Name, what, amount, next.Name,
		grouped(math.Abs(figure(c)-figure(next))), behind)
}

// shortWords says what would bring a candidate there.
func shortWords(c *decisions.Sized) string {
	switch {
	case c.Needed != nil && c.Needed.Open:
		return fmt.Sprintf("; at %s these shifts leave it open", quantity.FormatRate(c.Needed.Setting))
	case c.Needed != nil && !c.Needed.Found:
		return fmt.Sprintf(", and at no setting up to %s", quantity.FormatRate(c.Needed.Most))
	case c.Needed == nil && c.LinesNeeded > c.Lines:
		return fmt.Sprintf(", %d lines would", c.LinesNeeded)
	}
	return ""
}

// sizingNotes are the caveats.
func sizingNotes(z *decisions.Sizing) []string {
	notes := []string{"A year is the sum of independent shifts, so that years differ little; what differs from year to year beyond the line file " +
		"(material, people, wear) is not in the chance. Run tornado on this study for what the assumptions do"}
	lives := map[int]bool{}
	seen := map[string]bool{}
	add := func(text string) {
		if !seen[text] {
			seen[text] = true
			notes = append(notes, text)
		}
	}
	for i := range z.Candidates {
		c := &z.Candidates[i]
		if c.Price > 0 {
			lives[c.Life] = true
		}
		if len(c.Beyond) > 0 {
			add(fmt.Sprintf("(!) %s: beyond a limit at its setting of %s, so no choice as it stands: %s", c.Name, quantity.FormatRate(c.Setting), beyondWords(c)))
		}
		if c.Needed != nil && !c.Needed.Found {
			add(fmt.Sprintf("%s: settings were looked at up to %s (%s)", c.Name, quantity.FormatRate(c.Needed.Most), c.Needed.MostWhy))
		}
		if c.RampUp.Takes > 0 {
			add(fmt.Sprintf("%s: in its first year it makes %s of a full year's output, since it has to come up to speed; the chance is of a full year",
				c.Name, percentWords(math.Round(1000*c.RampUp.Share(1))/1000)))
		}
		if c.YearShifts*float64(c.Lines) < 30 {
			add(fmt.Sprintf("%s: a year of only %s shifts; the sum of so few is not quite normal", c.Name, layout.Fixed(c.YearShifts, 0)))
		}
	}
	if len(lives) > 1 {
		add("The lives differ: yearly amounts compare them as if each were renewed by its like, present values do not")
	}
	return notes
}

// beyondWords are the limits that a candidate breaks at its setting; empty where it keeps all.
func beyondWords(c *decisions.Sized) string {
	var words []string
	for _, l := range c.Beyond {
		words = append(words, l.Where+": "+l.Allows(motion.CartonsPerHour(c.Setting)))
	}
	return strings.Join(words, "; ")
}
