package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// paceSchema is the number of the layout below.
const paceSchema = 1

type jsonPace struct {
	jsonDecision
	Today        number `json:"today_per_hour"`
	TodayRefused string `json:"today_refused,omitempty"` // the limit that today's setting breaks
	Target       number `json:"target_per_shift"`
	Zone         number `json:"zone"`
	Ceiling      number `json:"ceiling_per_hour"`
	CeilingWhy   string `json:"ceiling_why"`
	Mechanics    number `json:"mechanics_per_hour"` // null where the file describes times alone; 0 where they allow no setting
	MechanicsWhy string `json:"mechanics_limit"`
	Follows      number `json:"follows_per_hour"` // null where nothing takes time
	FollowsName  string `json:"follows_limited_by"`
	jsonChoice
	Skipped  []jsonSkipped `json:"left_out"` // settings that a limit forbids
	Next     jsonFaster    `json:"next_five_percent"`
	Now      *jsonFaster   `json:"against_today"` // null where today's setting is recommended
	Tables   []string      `json:"by_setting"`
	Untabled []string      `json:"independent_of_setting"`
	Band     []jsonBand    `json:"band"`
	Ranges   jsonRanges    `json:"ranges"`
	Warnings []jsonWarning `json:"warnings"`
}

type jsonSkipped struct {
	Setting number `json:"setting_per_hour"`
	Refused string `json:"refused"`
}

type jsonChoice struct {
	Recommended number        `json:"recommended_per_hour"`
	Best        number        `json:"best_per_hour"`
	Delta       number        `json:"zone_cartons"`
	Guaranteed  bool          `json:"guaranteed"`
	Settings    []jsonSetting `json:"settings"`
}

type jsonSetting struct {
	Setting      number        `json:"setting_per_hour"`
	Replications int           `json:"shifts"`
	Good         jsonInterval  `json:"good_per_shift"`
	Rate         jsonInterval  `json:"good_rate"`
	Behind       *jsonInterval `json:"behind_best,omitempty"`
	Chance       *jsonInterval `json:"target_chance,omitempty"`
	Rejects      number        `json:"rejects_per_shift"`
	Stops        jsonInterval  `json:"stops_per_hour"`
	Load         jsonInterval  `json:"crew_load"`
	Bottleneck   string        `json:"bottleneck"`
	Share        number        `json:"bottleneck_share"`
	Within       bool          `json:"within_zone"`
	Dropped      bool          `json:"dropped"`
}

type jsonFaster struct {
	From  jsonSetting      `json:"from"`
	To    jsonSetting      `json:"to"`
	Gain  jsonInterval     `json:"gain_per_shift"`
	Grown []jsonLossChange `json:"losses_grown"`
	// Refused is the limit that the second breaks.
	Refused string `json:"refused,omitempty"`
}

type jsonLossChange struct {
	Where  string `json:"where"`
	Cause  string `json:"cause"`
	Before number `json:"before"`
	After  number `json:"after"`
}

type jsonBand struct {
	Exponent number `json:"exponent"`
	Failed   string `json:"failed,omitempty"`
	jsonChoice
}

func paceJSON(w io.Writer, a *decisions.Pace, o Origin) error {
	out := jsonPace{
		jsonDecision: o.json(paceSchema, a.Title, a.Seed, a.Replications, a.Confidence),
		Today:        number(a.Today), TodayRefused: a.TodayRefused, Skipped: []jsonSkipped{}, Target: known(a.Target > 0, a.Target), Zone: number(a.Zone), Ceiling: number(a.Ceiling), CeilingWhy: a.CeilingWhy,
		Mechanics: known(a.MechanicsWhy != "", a.Mechanics), MechanicsWhy: a.MechanicsWhy,
		Follows: number(a.Follows), FollowsName: a.FollowsName, jsonChoice: choiceJSON(&a.Choice), Next: fasterJSON(a.Next),
		Tables: orEmpty(a.Tables), Untabled: orEmpty(a.Untabled), Band: []jsonBand{}, Ranges: rangesJSON(&a.Ranges), Warnings: jsonWarnings(a.Warnings),
	}
	for _, skipped := range a.Skipped {
		out.Skipped = append(out.Skipped, jsonSkipped{number(skipped.Setting), skipped.Refused})
	}
	if a.Now != nil {
		now := fasterJSON(a.Now)
		out.Now = &now
	}
	for i := range a.Band {
		b := jsonBand{Exponent: number(a.Band[i].Exponent), Failed: a.Band[i].Failed}
		if b.Failed == "" {
			b.jsonChoice = choiceJSON(&a.Band[i].Choice)
		}
		out.Band = append(out.Band, b)
	}
	return writeJSON(w, out)
}

func orEmpty(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func choiceJSON(c *decisions.Choice) jsonChoice {
	out := jsonChoice{Recommended: number(recommended(c).Setting), Best: number(best(c).Setting), Delta: number(c.Delta), Guaranteed: c.Guaranteed}
	for i := range c.Rows {
		setting := settingJSON(&c.Rows[i])
		behind := jsonOf(c.Rows[i].Behind)
		setting.Behind = &behind
		out.Settings = append(out.Settings, setting)
	}
	return out
}

func settingJSON(row *decisions.SettingRow) jsonSetting {
	out := jsonSetting{
		Setting: number(row.Setting), Replications: row.Replications, Good: jsonOf(row.Good), Rate: jsonOf(row.Rate),
		Rejects: number(row.Rejects), Stops: jsonOf(row.Stops), Load: jsonOf(row.Load), Bottleneck: row.Holder.Name,
		Share: number(row.HolderShare), Within: row.Within, Dropped: row.Dropped,
	}
	if row.Chance.N > 0 {
		chance := jsonOf(row.Chance)
		out.Chance = &chance
	}
	return out
}

func fasterJSON(f *decisions.Faster) jsonFaster {
	out := jsonFaster{From: settingJSON(&f.From), To: settingJSON(&f.To), Gain: jsonOf(f.Gain), Grown: []jsonLossChange{}, Refused: f.Refused}
	for _, loss := range f.Grown {
		out.Grown = append(out.Grown, jsonLossChange{loss.Where, loss.Cause, number(loss.Before), number(loss.After)})
	}
	return out
}

// choiceFacts are the choice, for data.
func choiceFacts(a *decisions.Pace) layout.Section {
	return layout.Facts("choice", "",
		fact("recommended", layout.Exact(recommended(&a.Choice).Setting).In("cartons/h")),
		fact("best", layout.Exact(best(&a.Choice).Setting).In("cartons/h")),
		fact("zone", layout.Number(a.Delta, 0).In(cartonsAShift)),
		fact("today", layout.Exact(a.Today).In("cartons/h")),
		fact("today_refused", layout.Word(a.TodayRefused)))
}
