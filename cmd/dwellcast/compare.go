package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// compareFlags are the flags of the compare command.
type compareFlags struct {
	cases               []string
	precision, smallest string
	ceiling             int
}

// compareCommand holds cases against a base.
func (p *program) compareCommand() *cobra.Command {
	var flags compareFlags
	return command(p, decision[*decisions.Comparison]{
		use:   "compare FILE",
		short: "Hold what-ifs against a base: the difference, its odds and its reason",
		long: "compare reads a study (a line and its cases), or a line file with cases from --case, and runs the same shifts of each. It " +
			"shows what each case makes, its difference from the base with an interval, how likely it is to beat it, and what moved.\n" +
			"Exit status 3: the wanted precision was not reached.",
		example: "  dwellcast compare study.yaml\n" +
			"  dwellcast compare line.yaml --case \"long dwell: sealer.dwell=1.3s; sealer.close=0.3s\" --case \"crew of 2: crew.attendants=2\"\n" +
			"  dwellcast compare study.yaml --precision 0.2% --ceiling 10000",
		shifts: "up to 200 at first", flags: flags.add, ask: flags.ask,
		draw: func(answer *decisions.Comparison, origin reports.Origin) drawer {
			return reports.ComparisonChart(answer, origin)
		},
	})
}

func (f *compareFlags) add(set *pflag.FlagSet) {
	set.StringArrayVar(&f.cases, "case", nil, "a case, `\"name: path=value; ...\"`; drop PATH takes out, PATH+=VALUE adds; may be repeated")
	set.StringVar(&f.precision, "precision", "", "add shifts of a case until the half-width of its difference is this `share` of the base's output")
	set.IntVar(&f.ceiling, "ceiling", 0, "most `number` of shifts of each line; 0 takes 5000")
	set.StringVar(&f.smallest, "smallest", "", "smallest difference worth knowing of, a `share` of the base's output such as 0.5%")
}

func (f *compareFlags) ask(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Comparison], error) {
	study, spec, err := f.study(path, common)
	if err != nil {
		return nil, err
	}
	spec.Confidence = o.Confidence
	if err := f.into(&spec, o); err != nil {
		return nil, err
	}
	return &question[*decisions.Comparison]{
		rests: restsOf(study),
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Comparison, error) {
			spec.Progress = tell
			answer, err := decisions.Compare(ctx, lab, study.Line, study.Cases, seed, spec)
			if err == nil {
				answer.Title = study.Title
			}
			return answer, err
		},
		report: reports.Comparison, verdict: comparisonVerdict,
	}, nil
}

// study reads the study, or the line, and the cases of the command line.
func (f *compareFlags) study(path string, common *studyFlags) (*scenarios.Study, decisions.CompareSpec, error) {
	var spec decisions.CompareSpec
	study, err := common.study(path, map[string]scenarios.SectionReader{"compare": compareSection(&spec)})
	if err != nil {
		return nil, spec, err
	}
	var p document.Problems
	names := map[string]bool{}
	for _, c := range study.Cases {
		names[c.Name] = true
	}
	for _, text := range f.cases {
		c, err := scenarios.ParseCase(study.Line, text)
		if list, ok := errors.AsType[document.ProblemList](err); ok {
			for _, problem := range list {
				p.Report(problem)
			}
			continue
		}
		if names[c.Name] {
			p.Report(document.Problem{At: document.Position{Override: "--case"}, Text: c.Name, Message: "is the name of two cases", Hint: "give each its own"})
		}
		names[c.Name] = true
		study.Cases = append(study.Cases, c)
	}
	return study, spec, p.Err()
}

// into lets the flags override what the study says.
func (f *compareFlags) into(spec *decisions.CompareSpec, o scenarios.Options) error {
	var err error
	if f.precision != "" {
		if spec.Precision, err = share("--precision", f.precision, 1e-5, 0.5); err != nil {
			return err
		}
	}
	if f.smallest != "" {
		if spec.Smallest, err = share("--smallest", f.smallest, 1e-5, 0.5); err != nil {
			return err
		}
	}
	if o.Replications > 0 {
		spec.Replications = o.Replications
	}
	if f.ceiling > 0 {
		spec.Ceiling = f.ceiling
	}
	switch {
	case f.ceiling < 0 || f.ceiling > scenarios.MaxReplications:
		return usage(fmt.Sprintf("give 2 to %d, or 0 for the default", scenarios.MaxReplications), "--ceiling is %d", f.ceiling)
	case o.Replications == 1:
		return usage("give 2 or more", "one shift of each line tells nothing of a difference")
	case spec.Ceiling > 0 && spec.Replications > spec.Ceiling:
		return usage("give fewer --shifts, or a higher --ceiling", "%d shifts are more than the ceiling of %d", spec.Replications, spec.Ceiling)
	}
	return nil
}

// comparisonVerdict is what the exit status tells of a comparison that was made.
func comparisonVerdict(c *decisions.Comparison) error {
	for _, r := range c.Cases {
		if !r.Met {
			return &complaint{fmt.Errorf("the wanted precision of %s was not reached for %q in %s", quantity.FormatRatio(c.Spec.Precision), r.Name,
				quantity.FormatCount(int64(r.Replications), "shift")), "give --ceiling more, or ask for a wider one", notMet}
		}
	}
	return nil
}
