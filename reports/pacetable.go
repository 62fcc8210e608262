package reports

import (
	"fmt"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// settingSection is what every setting gives.
func settingSection(a *decisions.Pace) layout.Section {
	setting, chance := layout.Words("cartons/h"), layout.Figures("target", "target_chance")
	setting.Right, chance.Hidden = true, a.Target == 0
	t := &layout.Table{Columns: []layout.Column{layout.Told("", "mark"), setting, layout.Figures("good", "good_per_shift"), layout.Figures("behind", "behind_best"),
		layout.Aside("±"), chance, layout.Figures("rejects", "rejects"), layout.Figures("stops/h", "stops"), layout.Figures("crew", "crew_load"),
		layout.Told("bottleneck", "bottleneck"), layout.Hidden("good rate", "good_rate"), layout.Hidden("refused", "refused")}}
	for i := range a.Rows {
		row := &a.Rows[i]
		made := layout.Blank
		if a.Target > 0 {
			made = layout.Percents(row.Chance, 0)
		}
		t.Add(layout.Word(markOf(a, i)), layout.Word(layout.Exactly(row.Setting)), layout.Estimate(row.Good).To(0).In(cartonsAShift),
			layout.Value(behindWords(row, i == a.Best), row.Behind).In(cartonsAShift), layout.HalfWidth(row.Behind), made, layout.Number(row.Rejects, 1).In(cartonsAShift),
			layout.Estimate(row.Stops).To(1).In("1/h"), layout.Percents(row.Load, 0), layout.Word(strings.TrimPrefix(row.Holder.Name, "the ")),
			layout.Estimate(row.Rate).In("cartons/h"))
	}
	for _, s := range a.Skipped {
		t.Spare(layout.Blank, layout.Word(layout.Exactly(s.Setting)), layout.Blank, layout.Blank, layout.Blank, layout.Blank, layout.Blank, layout.Blank, layout.Blank,
			layout.Blank, layout.Blank, layout.Word(s.Refused))
	}
	return layout.Section{Key: "setting", Heading: "Setting by setting, cartons a shift", Table: t, Notes: []string{"> recommended, * best, = within the zone of the best, . today; behind: how far behind the best, ~ where no difference shows; target: chance of making it; crew: attendants busy"}}
}

// markOf marks the rows that a reader looks for.
func markOf(a *decisions.Pace, i int) string {
	mark := ""
	if i == a.Recommended {
		mark += ">"
	}
	if i == a.Best {
		mark += "*"
	}
	if mark == "" && a.Rows[i].Within {
		mark = "="
	}
	if a.Rows[i].Setting == a.Today {
		mark += "."
	}
	return mark
}

func behindWords(row *decisions.SettingRow, isBest bool) string {
	switch {
	case isBest:
		return "best"
	case row.Behind.Assessed() && row.Behind.HalfWidth() > 0 && row.Behind.Contains(0):
		return layout.None
	}
	return layout.Fixed(row.Behind.Mean, 0)
}

// bandSection is what becomes of the answer if stops, misses and rejects grow with speed though the file does not say so.
func bandSection(a *decisions.Pace) layout.Section {
	if len(a.Untabled) == 0 {
		return layout.Section{}
	}
	t := &layout.Table{Columns: []layout.Column{layout.Words("they grow"), layout.Figures("run at", "recommended"), layout.Figures("good", "good_per_shift"),
		layout.Figures("best", "best"), layout.Figures("good", "best_good_per_shift")}}
	t.Add(bandCells("not at all", &a.Choice)...)
	for i := range a.Band {
		b := &a.Band[i]
		if b.Failed != "" {
			t.Add(layout.Word(exponentWords(b.Exponent)), layout.Unseen(), layout.Unseen(), layout.Unseen(), layout.Unseen())
			continue
		}
		t.Add(bandCells(exponentWords(b.Exponent), &b.Choice)...)
	}
	return layout.Section{Key: "growth", Heading: "If stops grow with speed", Text: []string{restsOnWords(a)}, Table: t}
}

func bandCells(grow string, c *decisions.Choice) []layout.Cell {
	r, top := recommended(c), best(c)
	return []layout.Cell{layout.Word(grow), layout.Exact(r.Setting).In("cartons/h"), layout.Estimate(r.Good).To(0).In(cartonsAShift),
		layout.Exact(top.Setting).In("cartons/h"), layout.Estimate(top.Good).To(0).In(cartonsAShift)}
}

func exponentWords(exponent float64) string {
	switch exponent {
	case 1:
		return "in proportion to speed"
	case 2:
		return "with the square of speed"
	}
	return fmt.Sprintf("with speed to the power of %.4g", exponent)
}

// restsOnWords says on what the answer rests.
func restsOnWords(a *decisions.Pace) string {
	causes := quantity.FormatCount(int64(len(a.Untabled)), "cause")
	if len(a.Tables) == 0 {
		return fmt.Sprintf("The file does not say how stops, misses and rejects go with speed (no by_setting): the answer above takes all %s for independent of it. "+
			"If they grew from what they are at %s:", causes, quantity.FormatRate(a.Today))
	}
	return fmt.Sprintf("The file says how %s with speed (by_setting); it takes %s for independent of it: %s. If these grew from what they are at %s:",
		goes(a.Tables), causes, someOf(a.Untabled, 4), quantity.FormatRate(a.Today))
}

func goes(paths []string) string {
	if len(paths) == 1 {
		return paths[0] + " goes"
	}
	return someOf(paths, 4) + " go"
}

// someOf lists a few names and says how many more there are.
func someOf(names []string, most int) string {
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// skippedNotes name the settings that were left out, those together that are for the same reason.
func skippedNotes(skipped []decisions.SkippedSetting) []string {
	var notes []string
	for len(skipped) > 0 {
		n := 1
		for n < len(skipped) && skipped[n].Refused == skipped[0].Refused {
			n++
		}
		at := quantity.FormatRate(skipped[0].Setting)
		if n > 1 {
			at = fmt.Sprintf("%s from %s to %s", quantity.FormatCount(int64(n), "setting"), at, quantity.FormatRate(skipped[n-1].Setting))
		}
		notes = append(notes, fmt.Sprintf("Left out: %s, beyond a limit (%s)", at, skipped[0].Refused))
		skipped = skipped[n:]
	}
	return notes
}

// paceNotes are the caveats.
func paceNotes(a *decisions.Pace) []string {
	notes := []string{fmt.Sprintf("Settings up to %s were looked at, %s", quantity.FormatRate(a.Ceiling), a.CeilingWhy)}
	if a.Guaranteed {
		notes = append(notes, fmt.Sprintf("The best setting was selected by the procedure KN (Kim and Nelson 2001): where the best lies %s cartons a shift above all others, "+
			"it is found with a probability of at least %s", layout.Fixed(a.Delta, 0), layout.Confidence(a.Confidence)))
	} else {
		notes = append(notes, "The selection did not come to an end with the shifts allowed: the best setting is the highest mean so far, without a guarantee; "+
			"give more --shifts or a wider --zone")
	}
	if a.Best == len(a.Rows)-1 && best(&a.Choice).Setting < a.Follows {
		notes = append(notes, "The best is the highest setting looked at: give a higher --to to look further")
	}
	if a.Recommended == 0 {
		notes = append(notes, "The recommended setting is the lowest looked at: give a lower --from to look further")
	}
	if a.TodayRefused != "" {
		notes = append(notes, fmt.Sprintf("Today's setting of %s is beyond a limit: %s", quantity.FormatRate(a.Today), a.TodayRefused))
	}
	notes = append(notes, skippedNotes(a.Skipped)...)
	for _, b := range a.Band {
		if b.Failed != "" {
			notes = append(notes, fmt.Sprintf("Growth %s can't be shown: a chance %s", exponentWords(b.Exponent), b.Failed))
		}
	}
	return append(notes, rangeNote(&a.Ranges)...)
}
