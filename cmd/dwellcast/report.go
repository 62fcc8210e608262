package main

import (
	"context"
	"encoding/base64"
	"errors"
	"net/http"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// reportFlags are the flags of the report command.
type reportFlags struct {
	title, author, date, logo string
}

// reportCommand says on two pages what is known of a line.
func (p *program) reportCommand() *cobra.Command {
	var flags reportFlags
	return command(p, decision[*reports.Summary]{
		use:   "report FILE -o report.html",
		short: "Two pages for whoever decides: the answer, the line, what limits, which setting; all tables behind",
		long: "report runs a line, explains what limits it, finds the setting to run at, and holds the cases of a study against it. It says so " +
			"on two printed pages, with the tables, the timing chart and the file itself behind them, in one HTML file that asks for nothing " +
			"from anywhere.",
		example: "  dwellcast report line.yaml -o report.html\n  dwellcast report study.yaml -o report.html --author \"Line engineering\" --date 2026-11-27",
		shifts:  "30", flags: flags.add,
		ask: func(path string, common *studyFlags, o scenarios.Options) (*question[*reports.Summary], error) {
			return p.askReport(path, common, o, &flags)
		},
	})
}

func (f *reportFlags) add(set *pflag.FlagSet) {
	set.StringVar(&f.title, "title", "", "`title` of the report; else that of the file")
	set.StringVar(&f.author, "author", "", "`name` of who answers for it")
	set.StringVar(&f.date, "date", "", "`date` to print")
	set.StringVar(&f.logo, "logo", "", "`file` of a picture for its head, .png, .jpg or .svg, at most 100 kB")
}

// askReport reads the file and the flags.
func (p *program) askReport(path string, common *studyFlags, o scenarios.Options, f *reportFlags) (*question[*reports.Summary], error) {
	if format, err := formatOf(common.output, common.format); err == nil && format == reports.JSON {
		return nil, usage("end the file in .html, .md or .xlsx", "%w", reports.ErrRead)
	}
	logo, err := logoOf(f.logo)
	if err != nil {
		return nil, err
	}
	var compare decisions.CompareSpec
	study, err := common.study(path, map[string]scenarios.SectionReader{"compare": compareSection(&compare)})
	if err != nil {
		return nil, err
	}
	if err := p.withinCeiling(study.Line, false); err != nil {
		return nil, err
	}
	if o.Replications == 0 {
		o.Replications = 30
	}
	out := &reports.Summary{Title: f.title, Author: f.author, Date: f.date, Logo: logo}
	if out.Text, err = document.Render(study.Line.Document); err != nil {
		return nil, err
	}
	return &question[*reports.Summary]{
		rests: restsOf(study),
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*reports.Summary, error) {
			o.Seed, o.Progress = seed, nil
			return out, summarise(ctx, lab, study, compare, o, tell, out)
		},
		report: reports.Report,
	}, nil
}

// summarise runs all that a summary holds.
func summarise(ctx context.Context, lab *scenarios.Lab, study *scenarios.Study, compare decisions.CompareSpec, o scenarios.Options, tell func(done, total int), out *reports.Summary) error {
	file := study.Line
	var err error
	if out.Forecast, err = scenarios.Run(ctx, file, o); err != nil {
		return err
	}
	out.Forecast.Version = scenarios.Version
	out.Budget = scenarios.Check(file)
	if timing, err := scenarios.TimingOf(file); err == nil {
		out.Timing = timing
	} else if !errors.Is(err, scenarios.ErrNoSetting) {
		return err
	}
	if out.Explains, err = decisions.Explain(ctx, lab, file, o.Seed, decisions.ExplainSpec{Replications: o.Replications, Confidence: o.Confidence, Progress: tell}); err != nil {
		return err
	}
	if file.Line.Setting > 0 {
		if out.Pace, err = decisions.RunPace(ctx, lab, file, o.Seed, decisions.PaceSpec{Replications: o.Replications, Confidence: o.Confidence, Progress: tell}); err != nil {
			return err
		}
	}
	if len(study.Cases) > 0 {
		compare.Replications, compare.Confidence, compare.Progress = o.Replications, o.Confidence, tell
		out.Compares, err = decisions.Compare(ctx, lab, file, study.Cases, o.Seed, compare)
	}
	return err
}

// logoOf reads a picture as a data URI; empty for no file.
func logoOf(path string) (string, error) {
	if path == "" {
		return "", nil
	}
	const hint = "give a .png, .jpg or .svg of at most 100 kB"
	picture, err := os.ReadFile(path)
	if err != nil {
		return "", usage("check the name and the folder", "can't read %s: %w", path, plain(err))
	}
	kind := http.DetectContentType(picture)
	if strings.HasSuffix(strings.ToLower(path), ".svg") {
		kind = "image/svg+xml"
	}
	if len(picture) > 100_000 || kind != "image/png" && kind != "image/jpeg" && kind != "image/svg+xml" {
		return "", usage(hint, "%s is no logo", path)
	}
	return "data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(picture), nil
}
