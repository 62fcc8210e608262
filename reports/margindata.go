package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// marginSchema is the number of the layout below.
const marginSchema = 1

type jsonMargins struct {
	jsonDecision
	Keep     number        `json:"keep"`             // null where a target is given
	Target   number        `json:"target_per_shift"` // null where a share is to be kept
	Chance   number        `json:"target_chance"`    // null for the average
	Today    jsonInterval  `json:"good_per_shift"`
	Made     *jsonInterval `json:"target_made,omitempty"`
	Met      bool          `json:"met"`
	Exact    bool          `json:"exact"`
	Margins  []jsonMargin  `json:"margins"`
	Warnings []jsonWarning `json:"warnings"`
}

type jsonMargin struct {
	Path      string        `json:"path"`
	Today     string        `json:"today"`
	Unit      string        `json:"unit"`
	Found     bool          `json:"found"`
	Limit     *jsonInterval `json:"limit"` // null where the threshold is out of reach; a bound is null where it is open
	Exact     bool          `json:"exact"`
	Step      number        `json:"step"` // the last digit of the limit, in its unit
	Direction string        `json:"direction,omitempty"`
	Change    number        `json:"change"`
	Reach     string        `json:"reach,omitempty"`
	Refused   string        `json:"refused,omitempty"` // the limit that the line breaks beyond
	AtReach   *jsonInterval `json:"good_per_shift_at_reach,omitempty"`
	MadeThere *jsonInterval `json:"target_made_at_reach,omitempty"`
}

func marginJSON(w io.Writer, m *decisions.Margins, o Origin) error {
	out := jsonMargins{
		jsonDecision: o.json(marginSchema, m.Title, m.Seed, m.Replications, m.Confidence),
		Keep:         known(m.Keep > 0, m.Keep), Target: known(m.Target > 0, m.Target), Chance: known(m.Chance > 0, m.Chance), Today: jsonOf(m.Today),
		Met: m.Met, Exact: m.Fixed, Warnings: jsonWarnings(m.Warnings),
	}
	if m.Target > 0 {
		out.Made = pointer(jsonOf(m.Made))
	}
	for i := range m.List {
		out.Margins = append(out.Margins, oneMarginJSON(m, &m.List[i]))
	}
	return writeJSON(w, out)
}

func oneMarginJSON(m *decisions.Margins, one *decisions.Margin) jsonMargin {
	out := jsonMargin{Path: one.Path, Today: one.Today.String(), Unit: one.Today.Unit(), Found: one.Found, Exact: one.Exact, Step: number(one.Step)}
	if one.Found {
		out.Limit, out.Direction, out.Change = pointer(jsonOf(one.At)), direction(one), number(one.Change)
		return out
	}
	out.Reach, out.Refused, out.AtReach = one.Reach.String(), one.Refused, pointer(jsonOf(one.Best))
	if m.Target > 0 {
		out.MadeThere = pointer(jsonOf(one.BestMade))
	}
	return out
}

func pointer[T any](value T) *T { return &value }

// todayFacts are what the line makes as it is, for data.
func todayFacts(m *decisions.Margins) layout.Section {
	facts := []layout.Fact{fact("good_per_shift", layout.Estimate(m.Today).In(cartonsAShift))}
	if m.Target > 0 {
		facts = append(facts, fact("target_made", layout.Percent(m.Made)))
	}
	return layout.Facts("today", "", facts...)
}
