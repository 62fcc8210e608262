package reports

import (
	"fmt"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/quantity"
)

// overturnedBy says in an answer which inputs would overturn it at an end of their range; nothing of a file without ranges.
func overturnedBy(r *decisions.Ranges) []string {
	if len(r.Overturns) == 0 {
		return nil
	}
	var names []string
	for _, o := range r.Overturns {
		if name := shortName(o.Input); len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	alone := ""
	if len(names) > 1 {
		alone = ", each alone"
	}
	return []string{fmt.Sprintf("Overturned at an end of the range of %s%s (%d of the %d inputs with a range)", someOf(names, 4), alone, len(names), r.Inputs)}
}

// rangeSection is what would overturn an answer, and to what.
func rangeSection(r *decisions.Ranges, currency string) layout.Section {
	if len(r.Overturns) == 0 {
		return layout.Section{}
	}
	t := &layout.Table{Columns: []layout.Column{layout.Words("input"), layout.Told("likely", "likely"), layout.Words("at"), layout.Told("then", "then"),
		layout.Hidden("how", "how"), layout.Hidden("refused", "refused"), layout.Hidden("setting", "setting"), layout.Hidden("gain", "gain"), layout.Hidden("candidate", "candidate")}}
	for _, o := range r.Overturns {
		setting, gain := layout.Blank, layout.Blank
		if o.Setting > 0 {
			setting, gain = layout.Exact(o.Setting).In("cartons/h"), layout.Estimate(o.Gain).In(cartonsAShift)
		}
		t.Add(layout.Word(shortName(o.Input)), layout.Word(inCurrency(o.Value, currency)), layout.Word(inCurrency(o.At, currency)), layout.Word(overturnWords(&o)),
			layout.Word(o.How.String()), layout.Word(o.Why), setting, gain, layout.Word(o.Candidate))
	}
	return layout.Section{Key: "overturned_by", Heading: "What would overturn it", Table: t, Notes: []string{
		fmt.Sprintf("Each input moved alone to the ends of its range, the others likely, on the same luck; %s of each line", quantity.FormatCount(int64(r.Replications), "shift"))}}
}

// overturnWords say what becomes of the answer.
func overturnWords(o *decisions.Overturn) string {
	instead := ""
	if o.Candidate != "" {
		instead = "take " + o.Candidate
	}
	switch o.How {
	case decisions.Forbidden:
		return join("beyond a limit ("+o.Why+")", instead)
	case decisions.Fails:
		return join("falls short", instead)
	case decisions.Reaches:
		return join("makes what is wanted", instead)
	}
	if o.Setting > 0 {
		return fmt.Sprintf("%s makes %s cartons a shift more%s", quantity.FormatRate(o.Setting), layout.Mean(o.Gain), bounds(o.Gain, "", ""))
	}
	return instead
}

func join(words, more string) string {
	if more == "" {
		return words
	}
	return words + "; " + more
}

// rangeNote says that ranges were looked at and overturn nothing.
func rangeNote(r *decisions.Ranges) []string {
	if r.Inputs == 0 || len(r.Overturns) > 0 {
		return nil
	}
	return []string{fmt.Sprintf("Of the inputs that carry a range (%d), none overturns this, each moved alone to its ends (%s of each line)", r.Inputs,
		quantity.FormatCount(int64(r.Replications), "shift"))}
}

type jsonRanges struct {
	Inputs       int            `json:"inputs_with_a_range"`
	Replications int            `json:"shifts_of_each_line"`
	OverturnedBy []jsonOverturn `json:"overturned_by"`
}

type jsonOverturn struct {
	Input     string        `json:"input"`
	Likely    string        `json:"likely"`
	At        string        `json:"at"`
	How       string        `json:"how"` // forbidden, outdone, fails or reaches
	Refused   string        `json:"refused,omitempty"`
	Setting   number        `json:"setting_per_hour,omitempty"`
	Gain      *jsonInterval `json:"gain_per_shift,omitempty"`
	Candidate string        `json:"candidate,omitempty"` // that would be taken instead
}

func rangesJSON(r *decisions.Ranges) jsonRanges {
	out := jsonRanges{r.Inputs, r.Replications, []jsonOverturn{}}
	for _, o := range r.Overturns {
		j := jsonOverturn{Input: o.Name(), Likely: o.Value, At: o.At, How: o.How.String(), Refused: o.Why, Setting: number(o.Setting), Candidate: o.Candidate}
		if o.Setting > 0 {
			gain := jsonOf(o.Gain)
			j.Gain = &gain
		}
		out.OverturnedBy = append(out.OverturnedBy, j)
	}
	return out
}
