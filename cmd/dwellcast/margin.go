package main

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// marginFlags are the flags of the margin command.
type marginFlags struct {
	vary                 []string
	keep, target, chance string
}

// marginCommand finds how far parameters may go.
func (p *program) marginCommand() *cobra.Command {
	var flags marginFlags
	return command(p, decision[*decisions.Margins]{
		use:   "margin FILE --vary PATH",
		short: "Find how far a parameter may go before output falls",
		long: "margin moves a parameter until good output falls below a share of today's, or below a target, and says how far that is. " +
			"Several parameters give a list of what to watch at commissioning, the tightest first; without --vary it takes all " +
			"that carry a source or a range in the file. The direction is found by itself.\n" +
			"Exit status 3: the line as it is does not make the target.",
		example: "  dwellcast margin line.yaml --vary sealer.dwell --keep 98%\n" +
			"  dwellcast margin line.yaml --vary sealer.dwell --vary robot.cycle --target 9500cartons --chance 90%",
		shifts: "100 of each line", flags: flags.add, ask: flags.ask,
		draw: func(answer *decisions.Margins, origin reports.Origin) drawer {
			return reports.MarginChart(answer, origin)
		},
	})
}

func (f *marginFlags) add(set *pflag.FlagSet) {
	set.StringArrayVar(&f.vary, "vary", nil, "`path` of a parameter, such as sealer.dwell; may be repeated")
	set.StringVar(&f.keep, "keep", "", "`share` of today's good output to keep; 98% unless a target is given")
	set.StringVar(&f.target, "target", "", "good `cartons` per shift to make, such as 9500cartons")
	set.StringVar(&f.chance, "chance", "", "`share` of shifts that must make the target; without it, the average must")
}

func (f *marginFlags) ask(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Margins], error) {
	file, err := common.open(path)
	if err != nil {
		return nil, err
	}
	spec, err := f.spec(file, o)
	if err != nil {
		return nil, err
	}
	return &question[*decisions.Margins]{
		rests: []*document.Node{file.Document}, counts: "parameters",
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Margins, error) {
			spec.Progress = tell
			return decisions.FindMargins(ctx, lab, file, seed, spec)
		},
		report: reports.Margin, verdict: marginVerdict,
	}, nil
}

// marginVerdict is what the exit status tells of margins.
func marginVerdict(m *decisions.Margins) error {
	if !m.Met {
		return &complaint{errors.New("the line as it is does not make the target"), "the report says what would have to change, or what is in reach", notMet}
	}
	return nil
}

// usualKeep is the share of today's output that is to be kept where nothing is said.
const usualKeep = "98%"

// spec checks the flags.
func (f *marginFlags) spec(file *scenarios.File, o scenarios.Options) (decisions.MarginSpec, error) {
	s := decisions.MarginSpec{Paths: f.vary, Replications: o.Replications, Confidence: o.Confidence}
	keep := f.keep
	switch {
	case f.keep != "" && f.target != "":
		return s, usage("give one of them", "--keep stands beside --target")
	case f.chance != "" && f.target == "":
		return s, usage("add --target, such as --target 9500cartons", "--chance is the chance of a target, but there is none")
	case keep == "" && f.target == "":
		keep = usualKeep
	}
	var err error
	if keep != "" {
		if s.Keep, err = share("--keep", keep, 0.01, 0.9999); err != nil {
			return s, err
		}
	}
	if f.chance != "" {
		if s.Chance, err = share("--chance", f.chance, 0.01, 0.9999); err != nil {
			return s, err
		}
	}
	if s.Target, err = perShift("--target", f.target, file); err != nil {
		return s, err
	}
	if len(s.Paths) == 0 {
		s.Paths = assumedPaths(file)
	}
	for _, path := range s.Paths {
		if strings.Contains(path, "=") {
			return s, usage("give the path alone, such as --vary sealer.dwell", "--vary %s has a value", path)
		}
	}
	return s, nil
}

// assumedPaths are the parameters that carry a source or a range in the file.
func assumedPaths(file *scenarios.File) []string {
	var paths []string
	for _, assumption := range file.Assumptions {
		paths = append(paths, assumption.Path)
	}
	return paths
}
