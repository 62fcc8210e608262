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
	Mechanics    number `json:"mechanics_per_hour"` // 0 where the file describes times alone
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
		Today:        number(a.Today), TodayRefused: a.TodayRefused, Skipped: []jsonSkipped{}, Target: number(a.Target), Zone: number(a.Zone), Ceiling: number(a.Ceiling), CeilingWhy: a.CeilingWhy,
		Mechanics: number(a.Mechanics), MechanicsWhy: a.MechanicsWhy,
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

// paceCSV holds, per setting, its figures, and the choice under each power of speed.
func paceCSV(w io.Writer, a *decisions.Pace) error {
	s := newSheet()
	choiceCSV(s, "0", &a.Choice)
	for i := range a.Rows {
		settingCSV(s, &a.Rows[i])
	}
	s.interval("next_five_percent", layout.Exactly(a.Next.To.Setting), "gain", a.Next.Gain, "cartons/shift")
	if a.Now != nil {
		s.interval("against_today", layout.Exactly(a.Now.To.Setting), "gain", a.Now.Gain, "cartons/shift")
	}
	for i := range a.Band {
		if a.Band[i].Failed == "" {
			choiceCSV(s, layout.Digits(a.Band[i].Exponent), &a.Band[i].Choice)
		}
	}
	s.refused("today", layout.Exactly(a.Today), a.TodayRefused)
	s.refused("next_five_percent", layout.Exactly(a.Next.To.Setting), a.Next.Refused)
	for _, skipped := range a.Skipped {
		s.refused("setting", layout.Exactly(skipped.Setting), skipped.Refused)
	}
	s.overturns(&a.Ranges)
	s.warnings(a.Warnings)
	return s.writeTo(w)
}

func choiceCSV(s *sheet, exponent string, c *decisions.Choice) {
	s.figure("choice", exponent, "recommended", recommended(c).Setting, "cartons/h")
	s.figure("choice", exponent, "best", best(c).Setting, "cartons/h")
	s.figure("choice", exponent, "zone", c.Delta, "cartons/shift")
}

func settingCSV(s *sheet, row *decisions.SettingRow) {
	name := layout.Exactly(row.Setting)
	s.interval("setting", name, "good_per_shift", row.Good, "cartons/shift")
	s.interval("setting", name, "good_rate", row.Rate, "cartons/h")
	s.interval("setting", name, "behind_best", row.Behind, "cartons/shift")
	if row.Chance.N > 0 {
		s.interval("setting", name, "target_chance", row.Chance, "1")
	}
	s.figure("setting", name, "rejects", row.Rejects, "cartons/shift")
	s.interval("setting", name, "stops", row.Stops, "1/h")
	s.interval("setting", name, "crew_load", row.Load, "1")
	s.text("setting", name, "bottleneck", row.Holder.Name, "")
}
