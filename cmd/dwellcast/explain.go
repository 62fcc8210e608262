package main

import (
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// explain adds to the forecast of a run what limits the line.
func (p *program) explain(cmd *cobra.Command, path string, flags *runFlags, file *scenarios.File, forecast *scenarios.Forecast,
	o scenarios.Options, out output) error {
	study := studyFlags{resume: flags.resume}
	spec := decisions.ExplainSpec{Replications: flags.replications, Confidence: o.Confidence}
	if flags.replications == 1 {
		return usage("give 2 or more", "one shift explains nothing")
	}
	lab, err := study.lab(studyText(cmd, file, fmt.Sprint(spec.Replications)), scenarios.Options{Seed: o.Seed, Workers: o.Workers, Confidence: o.Confidence})
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.Explain(cmd.Context(), lab, file, o.Seed, spec)
	bar.end()
	if err != nil {
		return study.ended("run", lab, mistaken(err))
	}
	forecast.Version = scenarios.Version
	origin := originOf(cmd, path)
	if err := p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.ExplainedForecast(w, forecast, answer, origin, out.format, style)
	}); err != nil {
		return err
	}
	return verdict(forecast, o)
}
