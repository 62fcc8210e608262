package decisions

import (
	"context"

	"dwellcast/scenarios"
)

// CompareSpec says how far a comparison goes.
type CompareSpec struct {
	// Replications is how many shifts of every line are run at first, at least 2; 0 takes up to 200, fewer of a slow line.
	Replications int
	// Precision is the wanted half-width of each difference, taken by itself, as a share of the base's output; 0 asks for none.
	// Shifts of a case are then doubled until it is met or Ceiling is reached.
	Precision float64
	// Ceiling is the most shifts of one line; 0 takes 5000.
	Ceiling int
	// Smallest is the smallest difference worth knowing of, as a share of the base's output; 0 takes 0.5 %.
	Smallest float64
	// Confidence of the intervals; 0 means 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// leastStage is the fewest shifts on which a wanted precision is judged: from five, the interval would hold the truth too rarely.
const leastStage = 50

// Power is the chance with which a difference of the smallest size is to be found, where numbers of replications are named.
const Power = 0.8

// Comparison is a base and what each case would change about it, on the same luck shift by shift.
type Comparison struct {
	Title string
	Seed  uint64
	// Base is the forecast of the base on the first replications; a case that took more has its own.
	Base  *scenarios.Forecast
	Spec  CompareSpec
	Cases []CaseResult
	// BaseRefused says which limit the base breaks; empty where it keeps all.
	BaseRefused string
	// Warnings are about the base's file, and lines that make nothing.
	Warnings []scenarios.Warning
}

// WithDefaults fills in what was not asked for.
func (s CompareSpec) WithDefaults(base *scenarios.File) CompareSpec {
	if s.Replications <= 0 {
		s.Replications = min(scenarios.DefaultReplications(base.Line), 200)
	}
	s.Replications = max(s.Replications, 2)
	if s.Ceiling <= 0 {
		s.Ceiling = 5000
	}
	s.Ceiling = max(s.Ceiling, s.Replications)
	if s.Precision > 0 { // fewer tell too little of the spread for a rule that stops by it
		s.Replications = max(s.Replications, min(leastStage, s.Ceiling))
	}
	if s.Smallest == 0 {
		s.Smallest = 0.005
	}
	if s.Confidence == 0 {
		s.Confidence = 0.95
	}
	return s
}

// Compare holds the cases against the base. The numbers of a case depend on the base and on itself alone; only its adjusted
// interval and p value depend on how many others there are.
func Compare(ctx context.Context, lab *scenarios.Lab, base *scenarios.File, cases []scenarios.Case, seed uint64, spec CompareSpec) (*Comparison, error) {
	if len(cases) == 0 {
		return nil, mistake(`write cases: in the study, or give --case "long dwell: sealer.dwell=1.3s"`, "no cases to compare with the base")
	}
	base = base.Shiftwise()
	spec = spec.WithDefaults(base)
	c := &comparing{ctx: ctx, lab: lab, base: base, spec: spec, answer: &Comparison{
		Title: base.Line.Title, Seed: seed, Spec: spec, Cases: make([]CaseResult, len(cases)), Warnings: base.Cautions(),
		BaseRefused: scenarios.Refusal(base),
	}}
	for i, k := range cases {
		c.answer.Cases[i] = CaseResult{Name: k.Name, Changes: k.Changes, Refused: scenarios.Refusal(k.File), file: k.File.Shiftwise()}
	}
	if err := c.run(); err != nil {
		return nil, err
	}
	c.answer.adjust()
	c.answer.warnOfNothing()
	return c.answer, nil
}

// comparing is a comparison under way.
type comparing struct {
	ctx         context.Context
	lab         *scenarios.Lab
	base        *scenarios.File
	spec        CompareSpec
	answer      *Comparison
	done, total int
}

// run runs all lines for the first replications, and then again and again those cases that are not known well enough yet.
func (c *comparing) run() error {
	for n := c.spec.Replications; ; n = min(2*n, c.spec.Ceiling) {
		open := c.open()
		if len(open) == 0 {
			return nil
		}
		c.total += n * (len(open) + 1)
		base, err := c.baseOf(n)
		if err != nil {
			return err
		}
		if c.answer.Base == nil {
			c.answer.Base = base.Forecast()
		}
		for _, result := range open {
			shifts, err := c.lab.Shifts(result.file)
			if err != nil {
				return err
			}
			if err := c.extend(shifts, n); err != nil {
				return err
			}
			result.assess(c.spec, base, shifts, n)
		}
	}
}

// open lists the cases that need shifts, or more of them.
func (c *comparing) open() []*CaseResult {
	var open []*CaseResult
	for i := range c.answer.Cases {
		if r := &c.answer.Cases[i]; r.Replications == 0 || !r.Met && r.Replications < c.spec.Ceiling {
			open = append(open, r)
		}
	}
	return open
}

// warnOfNothing says which of the lines make not one good carton.
func (c *Comparison) warnOfNothing() {
	warn := func(name string) {
		c.Warnings = append(c.Warnings, scenarios.Warning{About: "good_rate", Text: "not one good carton comes out of " + name + ": dwellcast run says where they go"})
	}
	if c.Base.MakesNothing() {
		warn("the base")
	}
	for i := range c.Cases {
		if r := &c.Cases[i]; r.Case.MakesNothing() {
			warn(r.Name)
		}
	}
}
