package reports

import (
	"io"

	"dwellcast/scenarios/decisions"
)

// comparisonSchema is the number of the layout below.
const comparisonSchema = 1

type jsonComparison struct {
	jsonDecision
	Smallest  float64       `json:"smallest"`
	Precision float64       `json:"precision"` // 0 for none
	Ceiling   int           `json:"ceiling"`
	Base      jsonBase      `json:"base"`
	Cases     []jsonCase    `json:"cases"`
	Warnings  []jsonWarning `json:"warnings"`
}

type jsonBase struct {
	Replications int          `json:"shifts"`
	GoodPerShift jsonInterval `json:"good_per_shift"`
	GoodRate     jsonInterval `json:"good_rate"`
}

// jsonCase holds a case; differences are in good cartons per shift, case less base. ideal_change + the sum of moves[].cartons =
// difference.mean.
type jsonCase struct {
	Name          string       `json:"name"`
	Changes       []string     `json:"changes"`
	Refused       string       `json:"refused,omitempty"` // the limit that it breaks
	Replications  int          `json:"shifts"`
	GoodPerShift  jsonInterval `json:"good_per_shift"`
	GoodRate      jsonInterval `json:"good_rate"`
	BasePerShift  jsonInterval `json:"base_good_per_shift"`
	Difference    jsonInterval `json:"difference"`
	Confidence    number       `json:"difference_confidence"`
	Alone         jsonInterval `json:"difference_alone"`
	P             number       `json:"p"`
	AdjustedP     number       `json:"p_holm"`
	Shows         bool         `json:"difference_shows"`
	Better        jsonInterval `json:"shifts_better"`
	Equal         number       `json:"shifts_equal"`
	Odds          number       `json:"probability_better"`
	SD            number       `json:"difference_sd"`
	Independent   number       `json:"difference_sd_without_common_numbers"`
	Smallest      number       `json:"smallest_cartons"`
	Needed        *int         `json:"shifts_to_show_smallest"` // null where out of reach
	Met           bool         `json:"precision_met"`
	BottleneckWas jsonHolder   `json:"bottleneck_base"`
	BottleneckIs  jsonHolder   `json:"bottleneck_case"`
	Ideal         number       `json:"ideal_change"`
	Moves         []jsonMove   `json:"moves"`
}

type jsonHolder struct {
	Name  string `json:"name"`
	Share number `json:"share"`
}

type jsonMove struct {
	Where   string `json:"where"`
	Cause   string `json:"cause"`
	Cartons number `json:"cartons"`
}

func comparisonJSON(w io.Writer, c *decisions.Comparison, o Origin) error {
	out := jsonComparison{
		jsonDecision: o.json(comparisonSchema, c.Title, c.Seed, mostShifts(c), c.Spec.Confidence),
		Smallest:     c.Spec.Smallest, Precision: c.Spec.Precision, Ceiling: c.Spec.Ceiling,
		Base:     jsonBase{c.Base.Replications, jsonOf(c.Base.GoodPerShift.Interval), jsonOf(c.Base.GoodRate)},
		Warnings: jsonWarnings(c.Warnings),
	}
	for _, r := range c.Cases {
		k := jsonCase{
			Name: r.Name, Changes: r.Changes, Refused: r.Refused, Replications: r.Replications,
			GoodPerShift: jsonOf(r.Case.GoodPerShift.Interval), GoodRate: jsonOf(r.Case.GoodRate), BasePerShift: jsonOf(r.Base.GoodPerShift.Interval),
			Difference: jsonOf(r.Difference), Confidence: number(r.Difference.Confidence), Alone: jsonOf(r.Alone),
			P: number(r.P), AdjustedP: number(r.AdjustedP), Shows: r.Shows, Better: jsonOf(r.Better), Equal: number(r.Equal), Odds: number(r.Odds),
			SD: number(r.SD), Independent: number(r.Independent), Smallest: number(r.SmallestCartons), Met: r.Met,
			BottleneckWas: jsonHolder{r.From.Name, number(r.FromShare)}, BottleneckIs: jsonHolder{r.To.Name, number(r.ToShare)},
			Ideal: number(r.Ideal), Moves: []jsonMove{},
		}
		if r.Needed > 0 {
			k.Needed = &r.Needed
		}
		for _, m := range r.Moves {
			k.Moves = append(k.Moves, jsonMove{m.Where, m.Cause, number(m.Cartons)})
		}
		out.Cases = append(out.Cases, k)
	}
	return writeJSON(w, out)
}
