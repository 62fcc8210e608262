package main

import (
	"context"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// sweepFlags are the flags of the sweep command.
type sweepFlags struct {
	vary   []string
	figure string
}

// sweepCommand runs a line over a range of one parameter, or a grid of two.
func (p *program) sweepCommand() *cobra.Command {
	var flags sweepFlags
	return command(p, decision[*decisions.Sweep]{
		use:   "sweep FILE --vary PATH=FROM..TO/N",
		short: "Vary one or two parameters; find the knee",
		long: "sweep runs the same shifts of the line at every value of a parameter, or at every point of a grid of two, and shows any " +
			"figure of a run. For one parameter it finds the knee: where the curve bends, and who becomes critical there.",
		example: "  dwellcast sweep line.yaml --vary sealer.dwell=0.6s..1.6s/11\n" +
			"  dwellcast sweep line.yaml --vary sealer.dwell=1.1s..1.5s/9 --figure robot.starved --format csv\n" +
			"  dwellcast sweep line.yaml --vary sealer.dwell=1.1s..1.5s/9 --vary \"setting=1300cartons/h..1600cartons/h/7\" --chart grid.svg",
		shifts: "100 at each point", flags: flags.add, ask: flags.ask,
		draw: func(s *decisions.Sweep, origin reports.Origin) drawer { return reports.SweepChart(s, origin) },
	})
}

func (f *sweepFlags) add(set *pflag.FlagSet) {
	set.StringArrayVar(&f.vary, "vary", nil, "`path=from..to/n`, such as sealer.dwell=0.6s..1.6s/11; twice for a grid")
	set.StringVar(&f.figure, "figure", "good_rate", "`figure` to show: "+
		"good_rate, good_per_shift, target_chance, stops_per_hour, crew_load, sealer.starved, sealer.bottleneck_share, sealer.rejected, ...")
}

func (f *sweepFlags) ask(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Sweep], error) {
	spec := decisions.SweepSpec{Replications: o.Replications, Confidence: o.Confidence}
	var err error
	if spec.Vary, err = varies(f.vary); err != nil {
		return nil, err
	}
	file, err := common.open(path)
	if err != nil {
		return nil, err
	}
	if spec.Figure, err = decisions.ParseFigure(f.figure, file); err != nil {
		return nil, err
	}
	return &question[*decisions.Sweep]{
		rests: []*document.Node{file.Document},
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Sweep, error) {
			spec.Progress = tell
			return decisions.RunSweep(ctx, lab, file, seed, spec)
		},
		report: reports.Sweep,
	}, nil
}

func varies(texts []string) ([]decisions.Vary, error) {
	var list []decisions.Vary
	for _, text := range texts {
		v, err := decisions.ParseVary(text)
		if err != nil {
			return nil, err
		}
		list = append(list, v)
	}
	return list, nil
}
