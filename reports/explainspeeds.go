package reports

import (
	"fmt"
	"math"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// speedSection shows what speed brings, either way, beside the active-period shares.
func speedSection(x *decisions.Explanation) layout.Section {
	s := layout.Section{Key: "elasticity", Heading: "Explained: the percent of output that one percent of speed brings, or costs", Text: speedWords(x)}
	t := &layout.Table{Columns: []layout.Column{layout.Words("all times of"), layout.Figures("faster\nbrings", "faster_brings"), layout.Aside("±"),
		layout.Figures("slower\ncosts", "slower_costs"), layout.Aside("±"), layout.Hidden("both sides", "mean"), layout.Told("", "kink"),
		layout.Figures("active-\nperiod %", "active_period_share")}}
	for _, row := range x.Elasticities {
		share := layout.Blank
		if !row.Holder.Nobody() {
			share = layout.Estimate(layout.InPercent(row.PeriodShare)).To(1).In("%")
		}
		t.Add(append(sideCells(row.Name, row.Sides), share)...)
	}
	t.Foot = append(sideCells("sum", x.Sum), layout.Blank)
	t.Spare(append(sideCells("length of the shift", x.Shift), layout.Blank)...)
	s.Table = t
	s.Notes = []string{fmt.Sprintf("All times of it %s shorter, and %s longer, on the same shifts. One percent more of the shift, with what is planned in it, brings %s %%, and "+
		"one percent less costs %s %%, as all together made faster or slower do. Chances that go by the setting, and a master that follows it, are kept. "+
		"~: no effect shows%s", quantity.FormatRatio(x.Step), quantity.FormatRatio(x.Step), sideOf(x.Shift.Faster), sideOf(x.Shift.Slower), kinkNote(x))}
	return s
}

func sideCells(name string, s decisions.Sides) []layout.Cell {
	kink := layout.Blank
	if s.Kink {
		kink = layout.Word("kink")
	}
	return []layout.Cell{layout.Word(name), layout.Value(sideOf(s.Faster), s.Faster), layout.Word(sideWidth(s.Faster)), layout.Value(sideOf(s.Slower), s.Slower),
		layout.Word(sideWidth(s.Slower)), layout.Value(sideOf(s.Middle), s.Middle), kink}
}

// kinkNote says what a kink is, where there is one.
func kinkNote(x *decisions.Explanation) string {
	if len(kinks(x)) == 0 {
		return ""
	}
	return fmt.Sprintf(". kink: the two sides differ by more than chance and whole cartons explain, so that another limit takes over here, or within %s", quantity.FormatRatio(x.Step))
}

// sideOf is an elasticity to the digits that its interval supports; two where it has no spread.
func sideOf(iv interval) string {
	if !iv.Assessed() || iv.HalfWidth() > 0 && iv.Contains(0) {
		return layout.None
	}
	return layout.Fixed(iv.Mean, sideDecimals(iv))
}

func sideWidth(iv interval) string {
	switch {
	case !iv.Assessed():
		return layout.None
	case iv.HalfWidth() == 0:
		return "0"
	}
	return layout.Fixed(iv.HalfWidth(), sideDecimals(iv))
}

// sideDecimals is decimals with at least two and up to four.
func sideDecimals(iv interval) int {
	if iv.HalfWidth() == 0 {
		return 2
	}
	return min(max(int(-math.Floor(math.Log10(iv.HalfWidth()/2))), 2), 4)
}

// speedWords is the answer: what to make faster, whether the active periods say the same, and where limits meet.
func speedWords(x *decisions.Explanation) []string {
	words := []string{fasterWords(x)}
	if x.BySpeed != nil {
		words = append(words, agreementWords(x)...)
	}
	if list := kinks(x); len(list) > 0 {
		words = append(words, kinkWords(list))
	}
	if x.Apart {
		words = append(words, apartWords(x))
	}
	return words
}

func fasterWords(x *decisions.Explanation) string {
	if x.BySpeed == nil {
		return "No single thing is shown to bring more output by being faster (~)"
	}
	brings := x.BySpeed.Faster
	return fmt.Sprintf("Most is to be had from %s: one percent faster brings %s %% more output%s", withArticle(*x.BySpeed), sideOf(brings), sideBounds(brings))
}

// sideBounds puts the bounds of an elasticity into brackets, where it has any.
func sideBounds(iv interval) string {
	if !iv.Assessed() || iv.HalfWidth() == 0 {
		return ""
	}
	d := sideDecimals(iv)
	return fmt.Sprintf(" (%s to %s)", layout.Fixed(iv.Low, d), layout.Fixed(iv.High, d))
}

// agreementWords say whether the active periods name the same.
func agreementWords(x *decisions.Explanation) []string {
	switch x.Agreement {
	case decisions.Disagree:
		return []string{fmt.Sprintf("The active periods name %s instead (%s %% %s), of which one percent faster brings %s: it is last, or "+
			"busy, most often, but output gains less by its speed. Go by what being faster brings", withArticle(*x.ByPeriods), layout.Fixed(100*x.ByPeriods.PeriodShare.Mean, 0), sharesOf(x.Base), sideWords(x.ByPeriods.Faster))}
	case decisions.Undecided:
		return []string{fmt.Sprintf("The active periods name %s (%s %% %s); no difference shows (~) between what the two bring",
			withArticle(*x.ByPeriods), layout.Fixed(100*x.ByPeriods.PeriodShare.Mean, 0), sharesOf(x.Base))}
	}
	if x.ByPeriods == nil {
		return nil
	}
	return []string{"The active periods name the same"}
}

// kinks are the rows whose two sides differ.
func kinks(x *decisions.Explanation) []decisions.Elasticity {
	var list []decisions.Elasticity
	for _, row := range x.Elasticities {
		if row.Kink {
			list = append(list, row)
		}
	}
	return list
}

// kinkWords name what stands at a kink, with both sides.
func kinkWords(list []decisions.Elasticity) string {
	var parts []string
	for _, row := range list {
		parts = append(parts, fmt.Sprintf("%s (faster brings %s, slower costs %s)", withArticle(row), sideWords(row.Faster), sideWords(row.Slower)))
	}
	return "Limits meet at a kink: " + strings.Join(parts, ", ")
}

// sideWords is an elasticity in a sentence.
func sideWords(iv interval) string {
	switch text := sideOf(iv); {
	case text == layout.None:
		return "nothing that shows (~)"
	case iv.HalfWidth() == 0 && iv.Mean == 0:
		return "nothing"
	default:
		return text + " %"
	}
}

// apartWords warn that the rows do not sum to the whole.
func apartWords(x *decisions.Explanation) string {
	return fmt.Sprintf("The rows do not sum to what all together do: all one percent faster bring %s, and %s row by row; all slower cost %s, and %s "+
		"row by row. What meets at a kink must be made faster together", sideWords(x.Shift.Faster), sideWords(x.Sum.Faster), sideWords(x.Shift.Slower), sideWords(x.Sum.Slower))
}

// withArticle puts an article before our own words; names out of a file stay as they are.
func withArticle(row decisions.Elasticity) string {
	if row.Ours {
		return "the " + row.Name
	}
	return row.Name
}
