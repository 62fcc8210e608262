package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// sweepSchema is the number of the layout below.
const sweepSchema = 2

// jsonDecision opens the JSON of every decision.
type jsonDecision struct {
	Schema        int     `json:"schema"`
	Command       string  `json:"command"`
	Study         string  `json:"study"`
	CommandLine   string  `json:"command_line"`
	Version       string  `json:"version"`
	Title         string  `json:"title"`
	Seed          uint64  `json:"seed"`
	Replications  int     `json:"shifts"`
	Confidence    float64 `json:"confidence"`
	SafetyCaution string  `json:"caution"`
}

func (o Origin) json(schema int, title string, seed uint64, replications int, conf float64) jsonDecision {
	return jsonDecision{schema, o.Command, o.Study, o.Line, o.Version, title, seed, replications, conf, caution}
}

type jsonSweep struct {
	jsonDecision
	Figure   string        `json:"figure"`
	Unit     string        `json:"unit"`
	Vary     []jsonVary    `json:"vary"`
	Points   []jsonPoint   `json:"points"`
	Bend     string        `json:"bend"`
	Knee     *jsonKnee     `json:"knee"` // null where there is none
	Today    string        `json:"today,omitempty"`
	Target   number        `json:"target"` // null where there is none
	Exact    bool          `json:"exact"`
	Warnings []jsonWarning `json:"warnings"`
}

type jsonVary struct {
	Path string `json:"path"`
	Unit string `json:"unit"`
}

type jsonPoint struct {
	Values []string `json:"values"`
	jsonInterval
	Bottleneck string `json:"bottleneck"`
	Share      number `json:"bottleneck_share"`
	Refused    string `json:"refused,omitempty"` // the limit that the line breaks there
}

type jsonKnee struct {
	At     jsonInterval `json:"at"`
	Before jsonInterval `json:"slope_before"`
	After  jsonInterval `json:"slope_after"`
	Level  number       `json:"level"`
	Exact  bool         `json:"exact"`
	From   string       `json:"bottleneck_before"`
	To     string       `json:"bottleneck_after"`
}

// bends name the values of decisions.Bend.
var bends = map[decisions.Bend]string{
	decisions.NotSought: "not sought", decisions.TooFew: "too few points", decisions.Level: "level", decisions.Straight: "straight", decisions.Smooth: "smooth",
	decisions.Stepped: "step", decisions.TooCoarse: "too coarse", decisions.Unclear: "undecided", decisions.Kneed: "knee",
}

func sweepJSON(w io.Writer, s *decisions.Sweep, o Origin) error {
	out := jsonSweep{
		jsonDecision: o.json(sweepSchema, s.Title, s.Seed, s.Replications, s.Confidence),
		Figure:       s.Figure.Name, Unit: s.Figure.Unit, Exact: s.Fixed, Warnings: jsonWarnings(s.Warnings),
		Bend: bends[s.Bend], Target: known(s.Target > 0, s.Target),
	}
	if s.Today != nil {
		out.Today = s.Today.String()
	}
	if s.Figure.Share() {
		out.Unit = "1"
	}
	for _, v := range s.Vary {
		out.Vary = append(out.Vary, jsonVary{v.Path, v.Values[0].Unit()})
	}
	for _, p := range s.Points {
		out.Points = append(out.Points, jsonPoint{valueTexts(p), jsonOf(p.Figure), p.Holder.Name, number(p.HolderShare), p.Refused})
	}
	if k := s.Knee; k != nil {
		out.Knee = &jsonKnee{jsonOf(k.At), jsonOf(k.Before), jsonOf(k.After), number(k.Level), k.Exact, k.From.Name, k.To.Name}
	}
	return writeJSON(w, out)
}

func valueTexts(p decisions.Point) []string {
	var texts []string
	for _, v := range p.Values {
		texts = append(texts, v.String())
	}
	return texts
}

// kneeFacts say where a curve bends, for data; nothing where it does not.
func kneeFacts(s *decisions.Sweep) layout.Section {
	k := s.Knee
	if k == nil {
		return layout.Section{}
	}
	across := s.Vary[0].Values[0].Unit()
	_, unit := figureScale(s.Figure)
	return layout.Facts("knee", s.Vary[0].Path,
		fact("at", layout.Estimate(k.At).In(across)),
		fact("slope_before", layout.Estimate(shownFigure(s.Figure, k.Before)).In(unit+" per "+across)),
		fact("slope_after", layout.Estimate(shownFigure(s.Figure, k.After)).In(unit+" per "+across)))
}
