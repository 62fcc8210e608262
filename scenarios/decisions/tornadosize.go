package decisions

import (
	"context"
	"fmt"

	"dwellcast/scenarios"
)

// SizeInputs lists what a sizing rests on: quantities of the candidates' lines and of the study.
func SizeInputs(s *scenarios.Study, spec SizeSpec) []Input {
	var names []string
	var files []*scenarios.File
	for _, c := range spec.Candidates {
		names, files = append(names, c.Name), append(files, c.File)
	}
	return InputsOf(names, files, s)
}

// SizeQuestion asks which candidate to take, and what the one recommended in the base costs a year, or brings where every carton
// can be sold. Every candidate stays at the setting that the base takes it at.
func SizeQuestion(ctx context.Context, lab *scenarios.Lab, s *scenarios.Study, size SizeSpec, seed uint64, spec TornadoSpec) (*Question, TornadoSpec, error) {
	spec = spec.withDefaults()
	size.Replications, size.Confidence = spec.Replications, spec.Confidence
	base, err := Size(ctx, lab, seed, size)
	if err != nil {
		return nil, spec, err
	}
	t := &sizeTornado{ctx: ctx, lab: lab, study: s, size: size, seed: seed, base: base, about: base.Best}
	if t.about < 0 {
		t.about = base.Reachable
	}
	size.AsSet = true
	t.size = size
	q := &Question{Figure: "equivalent annual cost", About: base.Candidates[t.about].Name, Currency: size.Currency,
		Inputs: SizeInputs(s, size), Warnings: base.Warnings, Ask: t.ask}
	if base.ByWorth() {
		q.Figure = "equivalent annual worth"
	}
	return q, spec, nil
}

// sizeTornado asks a sizing with one input changed.
type sizeTornado struct {
	ctx   context.Context
	lab   *scenarios.Lab
	study *scenarios.Study
	size  SizeSpec
	seed  uint64
	base  *Sizing
	about int
}

func (t *sizeTornado) ask(change *Input, value string) (Outcome, error) {
	answer, err := t.sized(change, value)
	if err != nil {
		return Outcome{}, err
	}
	c := &answer.Candidates[t.about]
	out := Outcome{Figure: c.AnnualCost, Decision: "none is sure to make the demand"}
	if t.base.ByWorth() {
		out.Figure = c.AnnualWorth
	}
	if len(c.Beyond) > 0 {
		out.Refused = scenarios.Refusal(c.File)
	}
	if answer.Best >= 0 {
		out.Decision = "take " + answer.Candidates[answer.Best].Name
	}
	return out, nil
}

// sized is the sizing with one input at an end of its range.
func (t *sizeTornado) sized(change *Input, value string) (*Sizing, error) {
	spec := t.size
	spec.Candidates = append([]SizeCandidate{}, t.size.Candidates...)
	if change != nil && !change.line {
		if err := t.reread(change, value, &spec); err != nil {
			return nil, err
		}
	}
	for k := range spec.Candidates {
		if err := t.prepare(&spec.Candidates[k], k, change, value); err != nil {
			return nil, err
		}
	}
	return Size(t.ctx, t.lab, t.seed, spec)
}

// reread reads the study again with one of its own values changed.
func (t *sizeTornado) reread(change *Input, value string, spec *SizeSpec) error {
	all := spec.SellsAll
	changed := SizeSpec{Replications: spec.Replications, Confidence: spec.Confidence, AsSet: true}
	if _, err := t.study.With([]string{change.Path + "=" + value}, nil, map[string]scenarios.SectionReader{"size": SizeSection(&changed)}); err != nil {
		return err
	}
	changed.SellsAll = all
	*spec = changed
	return nil
}

// prepare takes a candidate's line to the setting of the base, and to the end of an input.
func (t *sizeTornado) prepare(c *SizeCandidate, k int, change *Input, value string) error {
	var overrides []string
	if raised := &t.base.Candidates[k]; raised.Raised {
		overrides = append(overrides, fmt.Sprintf("setting=%.0f cartons/h", raised.Setting))
	}
	if change.belongsTo(k) {
		overrides = append(overrides, change.Path+"="+value)
	}
	if len(overrides) == 0 {
		return nil
	}
	f, err := c.File.With(overrides...)
	c.File = f
	return err
}
