package decisions

import (
	"cmp"
	"context"
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// TornadoSpec says how a tornado is made.
type TornadoSpec struct {
	// Replications is how many shifts of every line are run, at least 2; 0 takes 60.
	Replications int
	// Confidence of the intervals; 0 means 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many askings are done.
	Progress func(done, total int)
}

func (s TornadoSpec) withDefaults() TornadoSpec {
	if s.Replications <= 0 {
		s.Replications = 60
	}
	s.Replications = max(s.Replications, 2)
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

// Tornado is what each input that carries a range does to a figure and to the decision, while the others stay at their likely
// values. All ends meet the same luck.
type Tornado struct {
	Title string
	Seed  uint64
	Spec  TornadoSpec
	// Figure names what the bars show, About whose it is, Unit its unit; empty for money.
	Figure, About, Unit string
	Currency            string
	Base                Outcome
	// Swings, the widest first.
	Swings []Swing
	// Fixed are the inputs that carry a source and no range.
	Fixed    []Input
	Warnings []scenarios.Warning
}

// Outcome is the figure, and what would be decided.
type Outcome struct {
	Figure stats.Interval
	// Decision in words; empty where nothing is decided.
	Decision string
	// Refused says which limit the line that the figure is of breaks; empty where it keeps all.
	Refused string

	shifts []float64 // the figure shift by shift, where it is a mean of them
}

// Swing is an input with what happens at its ends.
type Swing struct {
	Input
	Low, High End
}

// End is one end of an input's range; without a value there it is the base.
type End struct {
	Text string
	Outcome
	// Change of the figure from the base, with its paired interval where the figure is a mean of shifts.
	Change stats.Interval
	// Shows says that a change shows, and Moves that another decision is made.
	Shows, Moves bool
}

// Width is how far the figure moves between the ends and the base.
func (s Swing) Width() float64 {
	return max(s.Low.Change.Mean, s.High.Change.Mean, 0) - min(s.Low.Change.Mean, s.High.Change.Mean, 0)
}

// Moves says that an end leads to another decision.
func (s Swing) Moves() bool { return s.Low.Moves || s.High.Moves }

// Question is what a tornado asks again and again, with one input at one end; nil asks for the base.
type Question struct {
	Figure, About, Unit, Currency string
	Inputs                        []Input
	Warnings                      []scenarios.Warning
	Ask                           func(change *Input, value string) (Outcome, error)
}

// RunTornado asks a question with each input at its ends.
func RunTornado(ctx context.Context, q *Question, seed uint64, spec TornadoSpec) (*Tornado, error) {
	t := &Tornado{Seed: seed, Spec: spec, Figure: q.Figure, About: q.About, Unit: q.Unit, Currency: q.Currency, Warnings: q.Warnings}
	var ranged []Input
	for _, i := range q.Inputs {
		if i.Ranged() {
			ranged = append(ranged, i)
		} else {
			t.Fixed = append(t.Fixed, i)
		}
	}
	if len(ranged) == 0 {
		return nil, mistake("write them in the file, such as dwell: {low: 0.8 s, likely: 0.95 s, high: 1.2 s, source: guess}", "no quantity carries a low or a high value")
	}
	var err error
	if t.Base, err = q.Ask(nil, ""); err != nil {
		return nil, err
	}
	for k := range ranged {
		s := Swing{Input: ranged[k]}
		if s.Low, err = t.end(q, &ranged[k], ranged[k].Low); err != nil {
			return nil, err
		}
		if s.High, err = t.end(q, &ranged[k], ranged[k].High); err != nil {
			return nil, err
		}
		t.Swings = append(t.Swings, s)
		if ctx.Err() != nil {
			return nil, ErrInterrupted
		}
		if spec.Progress != nil {
			spec.Progress(k+1, len(ranged))
		}
	}
	slices.SortStableFunc(t.Swings, func(a, b Swing) int { return cmp.Compare(b.Width(), a.Width()) })
	return t, nil
}

// end asks with an input at one end.
func (t *Tornado) end(q *Question, input *Input, value string) (End, error) {
	if value == "" {
		return End{Text: input.Value, Outcome: t.Base}, nil
	}
	outcome, err := q.Ask(input, value)
	if err != nil {
		return End{}, err
	}
	e := End{Text: value, Outcome: outcome, Moves: outcome.Decision != t.Base.Decision}
	if outcome.shifts != nil {
		e.Change = stats.PairedInterval(outcome.shifts, t.Base.shifts, t.Spec.Confidence)
		e.Shows = e.Change.Assessed() && !e.Change.Contains(0)
		return e, nil
	}
	d := outcome.Figure.Mean - t.Base.Figure.Mean
	e.Change = stats.Interval{Mean: d, Low: math.Inf(-1), High: math.Inf(1), N: outcome.Figure.N, Confidence: t.Spec.Confidence}
	e.Shows = math.Abs(d) > 1e-9*math.Abs(t.Base.Figure.Mean)
	return e, nil
}
