package reports

import (
	"io"
	"strings"

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
		Bend: bends[s.Bend], Target: number(s.Target),
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

// sweepCSV puts one point in a row: the section is "point", the name the figure, and the item the values.
func sweepCSV(w io.Writer, s *decisions.Sweep) error {
	out := newSheet()
	unit := s.Figure.Unit
	if s.Figure.Share() {
		unit = "1"
	}
	for _, p := range s.Points {
		item := strings.Join(valueTexts(p), "; ")
		out.interval("point", s.Figure.Name, item, p.Figure, unit)
		out.text("bottleneck", p.Holder.Name, item, layout.Digits(p.HolderShare), "1")
		out.refused("point", item, p.Refused)
	}
	if k := s.Knee; k != nil {
		across := s.Vary[0].Values[0].Unit()
		out.interval("knee", s.Vary[0].Path, "at", k.At, across)
		out.interval("knee", s.Vary[0].Path, "slope_before", k.Before, unit+" per "+across)
		out.interval("knee", s.Vary[0].Path, "slope_after", k.After, unit+" per "+across)
	}
	out.warnings(s.Warnings)
	return out.writeTo(w)
}
