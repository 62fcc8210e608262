package reports

import (
	"io"

	"dwellcast/scenarios/decisions"
)

// tornadoSchema is the number of the layout below.
const tornadoSchema = 1

type jsonTornado struct {
	jsonDecision
	Figure   string           `json:"figure"`
	About    string           `json:"about"` // whose figure it is; empty for the line's
	Unit     string           `json:"unit"`
	Base     jsonInterval     `json:"base"`
	Decision string           `json:"decision"`
	Refused  string           `json:"refused,omitempty"` // the limit that the line breaks as it is
	Swings   []jsonSwing      `json:"swings"`            // the widest first
	Fixed    []jsonAssumption `json:"without_range"`
	Warnings []jsonWarning    `json:"warnings"`
}

type jsonSwing struct {
	Path   string   `json:"path"`
	Of     []string `json:"of"` // lines that it belongs to; empty for all, or for the study
	Source string   `json:"source"`
	Value  string   `json:"value"`
	Width  number   `json:"swing"`
	Moves  bool     `json:"moves_decision"`
	Low    jsonEnd  `json:"low"`
	High   jsonEnd  `json:"high"`
}

type jsonEnd struct {
	Value    string       `json:"value"`
	Figure   jsonInterval `json:"figure"`
	Change   jsonInterval `json:"change"`
	Shows    bool         `json:"change_shows"`
	Decision string       `json:"decision"`
	Moves    bool         `json:"moves_decision"`
	Refused  string       `json:"refused,omitempty"` // the limit that the line breaks there
}

func jsonEndOf(e decisions.End) jsonEnd {
	return jsonEnd{e.Text, jsonOf(e.Figure), jsonOf(e.Change), e.Shows, e.Decision, e.Moves, e.Refused}
}

func tornadoJSON(w io.Writer, t *decisions.Tornado, o Origin) error {
	out := jsonTornado{
		jsonDecision: o.json(tornadoSchema, t.Title, t.Seed, t.Spec.Replications, t.Spec.Confidence),
		Figure:       t.Figure, About: t.About, Unit: tornadoUnit(t), Base: jsonOf(t.Base.Figure), Decision: t.Base.Decision, Refused: t.Base.Refused,
		Fixed: []jsonAssumption{}, Warnings: jsonWarnings(t.Warnings),
	}
	for _, s := range t.Swings {
		out.Swings = append(out.Swings, jsonSwing{s.Path, append([]string{}, s.Of...), s.Source, s.Value, number(s.Width()), s.Moves(),
			jsonEndOf(s.Low), jsonEndOf(s.High)})
	}
	for _, i := range t.Fixed {
		out.Fixed = append(out.Fixed, jsonAssumption{i.Path, i.Value, i.Low, i.High, i.Source})
	}
	return writeJSON(w, out)
}
