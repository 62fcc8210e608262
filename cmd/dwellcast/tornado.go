package main

import (
	"context"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// tornadoCommand says which assumption moves an answer. It is a command of its own and not a flag of others, since it runs every
// line again for each end of each range, and answers a question of its own: what to find out before deciding.
func (p *program) tornadoCommand() *cobra.Command {
	return command(p, decision[*decisions.Tornado]{
		use:   "tornado FILE",
		short: "Show which assumption moves the answer: each input at the ends of its range",
		long: "tornado takes every quantity that carries a range, such as dwell: {low: 1.1 s, likely: 1.2 s, high: 1.4 s, source: guess}, " +
			"moves it alone to both ends, and shows what becomes of the answer: the good rate of a line; of a study with candidates " +
			"(size:) which to take, and of one with cases which brings most.",
		example: "  dwellcast tornado line.yaml\n  dwellcast tornado example:size-line --chart tornado.svg",
		shifts:  "60", ask: askTornado,
		draw: func(t *decisions.Tornado, origin reports.Origin) drawer { return reports.TornadoChart(t, origin) },
	})
}

func askTornado(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Tornado], error) {
	if o.Replications == 1 {
		return nil, usage("give 2 or more", "one shift of each line tells nothing of the spread")
	}
	a := &asked{spec: decisions.TornadoSpec{Replications: o.Replications, Confidence: o.Confidence}}
	var err error
	if a.study, err = common.study(path, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&a.size)}); err != nil {
		return nil, err
	}
	return &question[*decisions.Tornado]{
		rests: append(restsOf(a.study), candidateLines(a.size)...), counts: "inputs",
		answer: a.run, report: reports.Tornado,
	}, nil
}

// asked is what a tornado is to be made of: a line, a study with candidates, or one with cases.
type asked struct {
	spec  decisions.TornadoSpec
	study *scenarios.Study
	size  decisions.SizeSpec
}

func (a *asked) run(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Tornado, error) {
	var question *decisions.Question
	var err error
	spec := a.spec
	spec.Progress = tell
	switch {
	case a.study.Document == nil:
		question, spec = decisions.LineQuestion(ctx, lab, a.study.Line, spec)
	case len(a.size.Candidates) > 0:
		question, spec, err = decisions.SizeQuestion(ctx, lab, a.study, a.size, seed, spec)
	default:
		question, spec, err = decisions.CaseQuestion(ctx, lab, a.study, spec)
	}
	if err != nil {
		return nil, err
	}
	answer, err := decisions.RunTornado(ctx, question, seed, spec)
	if err == nil {
		answer.Title = a.study.Title
	}
	return answer, err
}
