package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// explain adds to a forecast what limits the line.
func (p *program) explain(cmd *cobra.Command, path string, flags *runFlags, file *scenarios.File, forecast *scenarios.Forecast,
	o scenarios.Options, out output, picture picture) error {
	q := askExplain(file, forecast, o)
	answer, err := decide(p, cmd, &flags.studyFlags, scenarios.Options{Seed: o.Seed, Workers: o.Workers, Confidence: o.Confidence}, q)
	if err != nil {
		return err
	}
	if err := picture.draw(func() drawer { return reports.WorthChart(answer, forecast) }); err != nil {
		return err
	}
	return deliver(p, q, answer, originOf(cmd, path), out)
}

// askExplain asks what limits the line of a forecast, to be told beside it.
func askExplain(file *scenarios.File, forecast *scenarios.Forecast, o scenarios.Options) *question[*decisions.Explanation] {
	spec := decisions.ExplainSpec{Replications: o.Replications, Confidence: o.Confidence}
	return &question[*decisions.Explanation]{
		rests: []*document.Node{file.Document},
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Explanation, error) {
			spec.Progress = tell
			return decisions.Explain(ctx, lab, file, seed, spec)
		},
		report: func(w io.Writer, x *decisions.Explanation, origin reports.Origin, format reports.Format, style reports.Style) error {
			return reports.ExplainedForecast(w, forecast, x, origin, format, style)
		},
		verdict: func(*decisions.Explanation) error { return verdict(forecast, o) },
	}
}
