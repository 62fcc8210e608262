package main

import (
	"context"
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// paceFlags are the flags of the pace command.
type paceFlags struct {
	from, to, zone, target string
	settings               int
}

// paceCommand recommends a setting.
func (p *program) paceCommand() *cobra.Command {
	var flags paceFlags
	return command(p, decision[*decisions.Pace]{
		use:   "pace FILE",
		short: "Recommend a speed setting, with the reason",
		long: "pace runs the same shifts of the line at many settings, selects the best with a guarantee, and recommends the slowest " +
			"setting whose output is as good. It says what limits beyond that, and what five percent more speed would bring or cost. " +
			"Stops, misses and rejects grow with speed as the tables by_setting of the line file say; for causes without a table it " +
			"shows what becomes of the answer if they grow in proportion to speed, or with its square.",
		example: "  dwellcast pace line.yaml\n  dwellcast pace line.yaml --from 1200cartons/h --to 1600cartons/h --settings 17\n" +
			"  dwellcast pace line.yaml --zone 1% --target \"9800 cartons\"",
		shifts: "100 at each setting", flags: flags.add, ask: flags.ask,
		draw: func(answer *decisions.Pace, origin reports.Origin) drawer { return reports.PaceChart(answer, origin) },
	})
}

func (f *paceFlags) add(set *pflag.FlagSet) {
	set.StringVar(&f.from, "from", "", "lowest `setting` to look at; by default 70 % of what the line can follow")
	set.StringVar(&f.to, "to", "", "highest `setting` to look at; by default a quarter beyond what the line can follow")
	set.IntVar(&f.settings, "settings", 0, "`number` of settings; 0 takes about 16 at a round step, and some more about the answer")
	set.StringVar(&f.zone, "zone", "0.5%", "`share` of output below which a difference does not matter")
	set.StringVar(&f.target, "target", "", "good `cartons` per shift that are wanted; by default the file's target")
}

func (f *paceFlags) ask(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Pace], error) {
	file, err := common.open(path)
	if err != nil {
		return nil, err
	}
	spec, err := f.spec(file, o)
	if err != nil {
		return nil, err
	}
	return &question[*decisions.Pace]{
		rests: []*document.Node{file.Document},
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Pace, error) {
			spec.Progress = tell
			return decisions.RunPace(ctx, lab, file, seed, spec)
		},
		report: reports.Pace, verdict: paceVerdict,
	}, nil
}

// paceVerdict is what the exit status tells of a recommendation.
func paceVerdict(a *decisions.Pace) error {
	if a.Target > 0 && a.Makes < 0 {
		return &complaint{errors.New("no setting is sure to make the target"), "the report says how near the best comes", notMet}
	}
	if !a.Guaranteed {
		return &complaint{errors.New("the selection did not come to its end with the shifts allowed"), "give more --shifts, or a wider --zone", notMet}
	}
	return nil
}

// spec checks the flags.
func (f *paceFlags) spec(file *scenarios.File, o scenarios.Options) (decisions.PaceSpec, error) {
	s := decisions.PaceSpec{Settings: f.settings, Replications: o.Replications, Confidence: o.Confidence}
	if f.settings != 0 && (f.settings < 2 || f.settings > 500) {
		return s, usage("give 2 to 500, or 0 for about 16", "--settings is %d", f.settings)
	}
	var err error
	if s.From, err = rate("--from", f.from); err != nil {
		return s, err
	}
	if s.To, err = rate("--to", f.to); err != nil {
		return s, err
	}
	if s.Zone, err = share("--zone", f.zone, 1e-5, 0.2); err != nil {
		return s, err
	}
	s.Target, err = perShift("--target", f.target, file)
	return s, err
}
