package reports

import (
	"io"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// jsonBudget is a time budget in JSON: times in seconds, rates in cartons/h, null for a rate without limit.
type jsonBudget struct {
	Schema         int              `json:"schema"`
	Title          string           `json:"title"`
	Setting        float64          `json:"setting_per_hour"`
	Lanes          int              `json:"lanes"`
	PaceSeconds    float64          `json:"pace_seconds"`
	Rate           number           `json:"undisturbed_rate"`
	Limit          jsonLimit        `json:"limit"`
	Ceiling        number           `json:"setting_ceiling"`
	Next           string           `json:"next_to_limit"`
	Sections       []jsonSection    `json:"sections"`
	CrewLoad       number           `json:"crew_load"`
	CrewSeconds    number           `json:"crew_seconds_per_hour"`
	Calls          []jsonCall       `json:"calls"`
	PlannedSeconds float64          `json:"planned_seconds"`
	RestsOn        []jsonAssumption `json:"assumptions"`
	Warnings       []jsonWarning    `json:"warnings"`
	SafetyCaution  string           `json:"caution"`
}

type jsonLimit struct {
	By      string `json:"by"`
	Station string `json:"station,omitempty"`
}

type jsonSection struct {
	Conveyor          *int              `json:"conveyor"` // null for a station on its own
	Paced             bool              `json:"paced"`
	Cartons           int               `json:"cartons_per_cycle"`
	IndexSeconds      float64           `json:"index_seconds"`
	RevolutionSeconds number            `json:"revolution_seconds"`
	AtCamZero         bool              `json:"released_at_cam_zero"`
	CycleSeconds      float64           `json:"cycle_seconds"`
	ExpectedSeconds   float64           `json:"expected_cycle_seconds"`
	Rate              number            `json:"rate"`
	Stations          []jsonStationTime `json:"stations"`
}

type jsonStationTime struct {
	Name          string     `json:"name"`
	Kind          string     `json:"kind"`
	ActSeconds    float64    `json:"act_seconds"`
	NeedsSeconds  float64    `json:"needs_seconds"`
	CycleSeconds  float64    `json:"cycle_seconds"`
	SlackSeconds  float64    `json:"slack_seconds"`
	Critical      bool       `json:"critical"`
	ReliefSeconds float64    `json:"relief_seconds"`
	Ceiling       number     `json:"setting_ceiling"`
	Parts         []jsonPart `json:"parts"`
}

type jsonPart struct {
	Name         string  `json:"name"`
	MeanSeconds  float64 `json:"mean_seconds"`
	LowSeconds   float64 `json:"low_seconds"`
	HighSeconds  float64 `json:"high_seconds"`
	Drawn        bool    `json:"drawn"`
	TurnsSeconds *number `json:"critical_changes_at_seconds"` // null where no value would do
}

type jsonCall struct {
	Where          string `json:"where"`
	What           string `json:"what"`
	Reload         bool   `json:"reload"`
	Attended       bool   `json:"attended"`
	PerHour        number `json:"per_hour"`
	TakesSeconds   number `json:"takes_seconds"`
	SecondsPerHour number `json:"seconds_per_hour"`
}

var limitNames = map[scenarios.LimitKind]string{
	scenarios.BySetting: "setting", scenarios.ByStation: "station", scenarios.ByMaster: "master",
	scenarios.ByCamZero: "cam zero", scenarios.ByNothing: "nothing",
}

func budgetJSON(w io.Writer, b *scenarios.Budget) error {
	out := jsonBudget{
		Schema: 1, Title: b.Line.Title, Setting: b.Line.Setting, Lanes: b.Line.Lanes, PaceSeconds: b.Pace.Seconds(),
		Rate: number(b.Rate), Limit: jsonLimit{By: limitNames[b.Limit.Kind]}, Ceiling: number(b.Ceiling),
		Sections: []jsonSection{}, CrewLoad: number(b.Crew.Load), CrewSeconds: number(b.Crew.Seconds), Calls: []jsonCall{},
		PlannedSeconds: b.PlannedTime.Seconds(), RestsOn: Basis(b.Assumptions).json(), Warnings: jsonWarnings(b.Warnings), SafetyCaution: caution,
	}
	if b.Limit.Station >= 0 {
		out.Limit.Station = nameOf(b, b.Limit.Station)
	}
	if b.Next >= 0 {
		out.Next = nameOf(b, b.Next)
	}
	for _, s := range b.Sections {
		out.Sections = append(out.Sections, sectionJSON(b, s))
	}
	for _, call := range b.Crew.Calls {
		out.Calls = append(out.Calls, jsonCall{nameOf(b, call.Station), call.What, call.Reload, call.Attended,
			number(call.PerHour), number(call.Takes.Seconds()), number(call.Seconds())})
	}
	return writeJSON(w, out)
}

func sectionJSON(b *scenarios.Budget, s scenarios.SectionBudget) jsonSection {
	out := jsonSection{
		Paced: s.Paced, Cartons: s.Cartons, IndexSeconds: s.Index.Seconds(), RevolutionSeconds: known(s.Revolution > 0, s.Revolution.Seconds()),
		AtCamZero: s.Conveyor >= 0 && s.Release == stations.AtCamZero, CycleSeconds: s.Cycle.Seconds(),
		ExpectedSeconds: s.Expected.Seconds(), Rate: number(s.Rate), Stations: []jsonStationTime{},
	}
	if s.Conveyor >= 0 {
		out.Conveyor = &s.Conveyor
	}
	for _, st := range s.Stations {
		out.Stations = append(out.Stations, stationTimeJSON(b, st))
	}
	return out
}

func stationTimeJSON(b *scenarios.Budget, st scenarios.StationBudget) jsonStationTime {
	out := jsonStationTime{
		Name: nameOf(b, st.Station), Kind: b.Line.Stations[st.Station].Kind.String(), ActSeconds: st.Act.Seconds(),
		NeedsSeconds: st.Needs.Seconds(), CycleSeconds: st.Cycle.Seconds(), SlackSeconds: st.Slack.Seconds(),
		Critical: st.Critical, ReliefSeconds: st.Relief.Seconds(), Ceiling: number(st.Ceiling), Parts: []jsonPart{},
	}
	for _, p := range st.Parts {
		part := jsonPart{p.Name, p.Mean.Seconds(), p.Low.Seconds(), p.High.Seconds(), p.Drawn, nil}
		if p.Turns > 0 {
			turns := number(p.Turns.Seconds())
			part.TurnsSeconds = &turns
		}
		out.Parts = append(out.Parts, part)
	}
	return out
}
