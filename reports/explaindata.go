package reports

import (
	"bytes"
	"encoding/json"
	"io"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// jsonExplanation is what --explain adds to the JSON of a run, under the key explanation.
type jsonExplanation struct {
	Command      string           `json:"command"`
	Study        string           `json:"study"`
	CommandLine  string           `json:"command_line"`
	Replications int              `json:"shifts"`
	Step         float64          `json:"step"`
	Elasticities []jsonElasticity `json:"elasticities"`
	Sum          jsonSides        `json:"elasticity_sum"`
	Shift        jsonSides        `json:"elasticity_shift_length"`
	Apart        bool             `json:"sum_differs_from_shift_length"`
	ByPeriods    string           `json:"bottleneck_by_active_period"`
	BySpeed      string           `json:"bottleneck_by_elasticity"`
	Agreement    string           `json:"agreement"`
	Worths       []jsonWorth      `json:"causes"`
	Together     jsonInterval     `json:"all_causes"`
	Interaction  jsonInterval     `json:"interaction"`
	Warnings     []jsonWarning    `json:"warnings"`
}

// jsonSides is the percent of output for one percent of speed: what faster brings, what slower costs, and their mean, which is the
// elasticity where there is no kink.
type jsonSides struct {
	Faster jsonInterval `json:"faster_brings"`
	Slower jsonInterval `json:"slower_costs"`
	Middle jsonInterval `json:"elasticity"`
	Kink   bool         `json:"kink"`
}

func sidesJSON(s decisions.Sides) jsonSides {
	return jsonSides{jsonOf(s.Faster), jsonOf(s.Slower), jsonOf(s.Middle), s.Kink}
}

type jsonElasticity struct {
	Name string `json:"name"`
	jsonSides
	Share *jsonInterval `json:"active_period_share"` // null where the method has none
}

type jsonWorth struct {
	Where   string       `json:"where"`
	Cause   string       `json:"cause"`
	Without string       `json:"without"`
	Charged number       `json:"charged"`
	Brings  jsonInterval `json:"brings"`
}

// agreements name the values of decisions.Agreement.
var agreements = map[decisions.Agreement]string{decisions.Agree: "agree", decisions.Undecided: "undecided", decisions.Disagree: "disagree"}

// rowName is what has an elasticity; empty for none.
func rowName(row *decisions.Elasticity) string {
	if row == nil {
		return ""
	}
	return row.Name
}

func explanationJSON(x *decisions.Explanation, o Origin) jsonExplanation {
	out := jsonExplanation{
		Command: o.Command, Study: o.Study, CommandLine: o.Line, Replications: x.Replications, Step: x.Step,
		Elasticities: []jsonElasticity{}, Sum: sidesJSON(x.Sum), Shift: sidesJSON(x.Shift), Apart: x.Apart,
		ByPeriods: rowName(x.ByPeriods), BySpeed: rowName(x.BySpeed), Agreement: agreements[x.Agreement],
		Worths: []jsonWorth{}, Together: jsonOf(x.Together), Interaction: jsonOf(x.Interaction), Warnings: jsonWarnings(x.Warnings),
	}
	for _, row := range x.Elasticities {
		e := jsonElasticity{Name: row.Name, jsonSides: sidesJSON(row.Sides)}
		if !row.Holder.Nobody() {
			share := jsonOf(row.PeriodShare)
			e.Share = &share
		}
		out.Elasticities = append(out.Elasticities, e)
	}
	for _, w := range x.Worths {
		out.Worths = append(out.Worths, jsonWorth{w.Where, w.Cause, w.Without, number(w.Charged), jsonOf(w.Brings)})
	}
	return out
}

// explainedJSON is the JSON of the run with one key more.
func explainedJSON(w io.Writer, f *scenarios.Forecast, x *decisions.Explanation, o Origin) error {
	var run, more bytes.Buffer
	if err := forecastJSON(&run, f); err != nil {
		return err
	}
	if err := writeJSON(&more, map[string]jsonExplanation{"explanation": explanationJSON(x, o)}); err != nil {
		return err
	}
	whole := bytes.TrimSuffix(bytes.TrimSpace(run.Bytes()), []byte("}"))
	whole = append(append(bytes.TrimSpace(whole), ','), bytes.TrimPrefix(bytes.TrimSpace(more.Bytes()), []byte("{"))...)
	var tidy bytes.Buffer
	if err := json.Indent(&tidy, whole, "", "  "); err != nil {
		return err
	}
	tidy.WriteByte('\n')
	_, err := w.Write(tidy.Bytes())
	return err
}
