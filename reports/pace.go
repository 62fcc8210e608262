package reports

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// Pace writes which setting to run at, and why. Style matters to the table format only.
func Pace(w io.Writer, a *decisions.Pace, origin Origin, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return pacePage(a, origin) },
		json:   func() error { return paceJSON(w, a, origin) },
		charts: func() []chart.Chart { return []chart.Chart{PaceChart(a, origin)} },
	}.write(w, format, style)
}

func pacePage(a *decisions.Pace, origin Origin) *layout.Page {
	n := notesOf(a.Warnings)
	p := &layout.Page{Title: titleOf(a.Title)}
	p.Add(choiceFacts(a))
	p.Add(n.answer(paceAnswer(a), overturnedBy(&a.Ranges)...))
	p.Add(layout.Section{Key: "next_five_percent", Limits: true, Heading: "Why not faster", Text: whyNotFaster(a), Table: fasterTable(a.Next)})
	if a.Now != nil {
		p.Add(layout.Section{Key: "against_today", Heading: "Against today", Text: []string{againstToday(a)}, Table: fasterTable(a.Now)})
	}
	p.Add(settingSection(a))
	p.Add(bandSection(a))
	p.Add(rangeSection(&a.Ranges, ""))
	p.Add(layout.Section{Heading: "Notes", Notes: append(paceNotes(a), n.rest()...)})
	p.Add(origin.foot(a.Replications, a.Seed, a.Confidence))
	return p
}

func recommended(c *decisions.Choice) *decisions.SettingRow { return &c.Rows[c.Recommended] }

func best(c *decisions.Choice) *decisions.SettingRow { return &c.Rows[c.Best] }

// paceAnswer is the recommendation, what it makes, and how sure the choice is.
func paceAnswer(a *decisions.Pace) []string {
	r, top := recommended(&a.Choice), best(&a.Choice)
	var text []string
	if a.Target > 0 && a.Makes < 0 {
		text = append(text, targetOutOfReach(a))
	}
	text = append(text, fmt.Sprintf("Run at %s: %s good cartons an hour, %s a shift%s", quantity.FormatRate(r.Setting), layout.Mean(r.Rate), layout.Mean(r.Good), todayWords(a)))
	if a.Target > 0 {
		text = append(text, fmt.Sprintf("Target of %s a shift: made in %s of shifts at this setting%s", layout.Exactly(a.Target), chanceWords(r.Chance), bounds(layout.InPercent(r.Chance), "", " %")))
	}
	if a.Target > 0 && a.Makes >= 0 && a.Makes < a.Recommended {
		slowest := &a.Rows[a.Makes]
		text = append(text, fmt.Sprintf("On average the target is made from %s on, the slowest setting that does: %s a shift%s", quantity.FormatRate(slowest.Setting), layout.Mean(slowest.Good), bounds(slowest.Good, "", "")))
	}
	zone := fmt.Sprintf("%s cartons a shift, %s of output", layout.Fixed(a.Delta, 0), quantity.FormatRatio(a.Zone))
	switch {
	case r == top:
		text = append(text, fmt.Sprintf("No other setting makes more, and none slower is shown to come within %s", zone))
	default:
		text = append(text, fmt.Sprintf("It is the slowest setting shown to be within %s of the best, which is %s with %s cartons a shift more%s; slower is kinder to machine and crew",
			zone, quantity.FormatRate(top.Setting), layout.Mean(r.Behind), bounds(r.Behind, "", "")))
	}
	return text
}

// targetOutOfReach says that no setting makes the target, or that these shifts leave it open.
func targetOutOfReach(a *decisions.Pace) string {
	top := best(&a.Choice)
	if a.MayMake {
		return fmt.Sprintf("Whether any setting makes the target of %s a shift is open (~): the best makes %s%s", layout.Exactly(a.Target), layout.Mean(top.Good), bounds(top.Good, "", ""))
	}
	return fmt.Sprintf("No setting looked at makes the target of %s a shift: the best makes %s%s", layout.Exactly(a.Target), layout.Mean(top.Good), bounds(top.Good, "", ""))
}

func todayWords(a *decisions.Pace) string {
	if a.Now == nil {
		return "; that is today's setting"
	}
	return "; today's setting is " + quantity.FormatRate(a.Today)
}

func chanceWords(iv interval) string {
	chance := layout.InPercent(iv)
	return layout.Fixed(chance.Mean, min(layout.Decimals(chance.HalfWidth()), 1)) + " %"
}

// oddsOf is a chance of shifts with its interval.
func oddsOf(chance interval) string {
	return chanceWords(chance) + " of shifts" + bounds(layout.InPercent(chance), "", " %")
}

// whyNotFaster says what limits above the recommended setting, and what the next five percent would do.
func whyNotFaster(a *decisions.Pace) []string {
	next := a.Next
	var text []string
	top := best(&a.Choice)
	if highest := &a.Rows[len(a.Rows)-1]; top != highest && highest.Behind.Low > 0 {
		text = append(text, fmt.Sprintf("Output is highest at %s and falls beyond: at %s it is %s less", quantity.FormatRate(top.Setting), quantity.FormatRate(highest.Setting), layout.Mean(highest.Behind)))
	}
	if !math.IsInf(a.Follows, 1) && a.Mechanics == 0 { // with cams, what a station needs goes with the setting itself
		text = append(text, fmt.Sprintf("Beyond %s %s can't follow: the line then runs at its pace, whatever the setting", quantity.FormatRate(math.Floor(a.Follows)), a.FollowsName))
	}
	if a.Mechanics > 0 {
		text = append(text, fmt.Sprintf("The mechanics allow %s (%s)", quantity.FormatRate(math.Floor(a.Mechanics)), a.MechanicsWhy))
	}
	text = append(text, fmt.Sprintf("Five percent more speed, %s, %s%s", quantity.FormatRate(next.To.Setting), gainWords(next), forbidden(a)))
	if words := grownWords(next); words != "" {
		text = append(text, "What grows with it, cartons a shift: "+words)
	}
	return text
}

// forbidden says that five percent more speed is beyond a limit.
func forbidden(a *decisions.Pace) string {
	if a.Next.Refused != "" {
		return "; but it is beyond a limit (" + a.Next.Refused + ")"
	}
	return ""
}

// gainWords says what a change brings, or that no difference shows.
func gainWords(f *decisions.Faster) string {
	switch {
	case !f.Gain.Assessed():
		return "was not assessed"
	case f.Gain.Contains(0) && f.Gain.HalfWidth() > 0:
		return "shows no difference (~): " + signed(f.Gain) + " good cartons a shift" + bounds(f.Gain, "", "")
	case f.Gain.Mean > 0:
		return "brings " + layout.Mean(f.Gain) + " good cartons a shift" + bounds(f.Gain, "", "")
	case f.Gain.Mean < 0:
		lost := interval{Mean: -f.Gain.Mean, Low: -f.Gain.High, High: -f.Gain.Low, N: f.Gain.N, Confidence: f.Gain.Confidence}
		return "costs " + layout.Mean(lost) + " good cartons a shift" + bounds(lost, "", "")
	}
	return "makes no difference"
}

// signed is a difference with its sign.
func signed(iv interval) string {
	if text := layout.Mean(iv); iv.Mean > 0 {
		return "+" + text
	}
	return layout.Mean(iv)
}

func grownWords(f *decisions.Faster) string {
	var words []string
	for _, loss := range f.Grown[:min(3, len(f.Grown))] {
		words = append(words, fmt.Sprintf("%s %s (%s to %s)", loss.Where, loss.Cause, layout.Fixed(loss.Before, 0), layout.Fixed(loss.After, 0)))
	}
	return strings.Join(words, "; ")
}

func againstToday(a *decisions.Pace) string {
	return fmt.Sprintf("From %s to %s %s", quantity.FormatRate(a.Today), quantity.FormatRate(recommended(&a.Choice).Setting), gainWords(a.Now))
}

// fasterTable sets two settings beside each other.
func fasterTable(f *decisions.Faster) *layout.Table {
	from, to := quantity.FormatRate(f.From.Setting), quantity.FormatRate(f.To.Setting)
	t := &layout.Table{Columns: []layout.Column{layout.Words("a shift"), layout.Figures(from, from), layout.Figures(to, to), layout.Hidden("refused", "refused")}}
	percents := func(share interval) layout.Cell {
		c := layout.Percent(share)
		return layout.Value(c.Text()+" %", layout.InPercent(share)).In("%")
	}
	t.Add(layout.Word("good cartons"), layout.Estimate(f.From.Good).In("cartons"), layout.Estimate(f.To.Good).In("cartons"))
	t.Add(layout.Word("rejects"), layout.Number(f.From.Rejects, 1).In("cartons"), layout.Number(f.To.Rejects, 1).In("cartons"))
	t.Add(layout.Word("stops an hour"), layout.Estimate(f.From.Stops).In("1/h"), layout.Estimate(f.To.Stops).In("1/h"))
	t.Add(layout.Word("attendants busy"), percents(f.From.Load), percents(f.To.Load))
	if f.From.Chance.N > 0 {
		t.Add(layout.Word("chance of target"), percents(f.From.Chance), percents(f.To.Chance))
	}
	t.Spare(layout.Word("gain"), layout.Blank, layout.Estimate(f.Gain).In("cartons"), layout.Word(f.Refused))
	return t
}
