package reports

import (
	"encoding/json"
	"io"
	"math"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// number is a figure in JSON: null where nothing could be assessed.
type number float64

// MarshalJSON writes twelve digits: those behind are not the same on every processor.
func (x number) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
		return []byte("null"), nil
	}
	return json.Marshal(layout.Portable(float64(x)))
}

// jsonInterval is an estimate with its bounds.
type jsonInterval struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
}

func jsonOf(iv interval) jsonInterval {
	return jsonInterval{number(iv.Mean), number(iv.Low), number(iv.High)}
}

// jsonWarning is a warning with the figure that it concerns.
type jsonWarning struct {
	About string `json:"about"`
	Text  string `json:"text"`
}

func jsonWarnings(warnings []scenarios.Warning) []jsonWarning {
	list := []jsonWarning{}
	for _, w := range warnings {
		list = append(list, jsonWarning{w.About, w.Text})
	}
	return list
}

// warningsAbout returns the texts of the warnings on one figure.
func warningsAbout(warnings []scenarios.Warning, about string) []string {
	var texts []string
	for _, w := range warnings {
		if w.About == about {
			texts = append(texts, w.Text)
		}
	}
	return texts
}

func writeJSON(w io.Writer, value any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(value)
}

// known is a figure, or null where it is not known or not asked for.
func known[N ~float64](is bool, x N) number {
	if !is {
		return number(math.NaN())
	}
	return number(x)
}
