package main

import (
	"io"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// tornadoFlags are the flags of the tornado command.
type tornadoFlags struct {
	studyFlags
	chart string
}

// tornadoCommand says which assumption moves an answer. It is a command of its own and not a flag of others, since it runs every
// line again for each end of each range, and answers a question of its own: what to find out before deciding.
func (p *program) tornadoCommand() *cobra.Command {
	var flags tornadoFlags
	cmd := &cobra.Command{
		Use:   "tornado FILE",
		Short: "Show which assumption moves the answer: each input at the ends of its range",
		Long: "tornado takes every quantity that carries a range, such as dwell: {low: 1.1 s, likely: 1.2 s, high: 1.4 s, source: guess},\n" +
			"moves it alone to both ends, and shows what becomes of the answer: the good rate of a line; of a study with candidates\n" +
			"(size:) which to take, and of one with cases which brings most.",
		Example: "  dwellcast tornado line.yaml\n  dwellcast tornado example:size-line --chart tornado.svg",
		Args:    oneFile,
		RunE:    func(cmd *cobra.Command, args []string) error { return p.tornado(cmd, args[0], &flags) },
	}
	flags.add(cmd, "60")
	cmd.Flags().StringVar(&flags.chart, "chart", "", "`file` to draw to, .svg, .png or .pdf")
	return cmd
}

func (p *program) tornado(cmd *cobra.Command, path string, flags *tornadoFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	if options.Replications == 1 {
		return usage("give 2 or more", "one shift of each line tells nothing of the spread")
	}
	drawn, err := newPicture(flags.chart)
	if err != nil {
		return err
	}
	asked, err := flags.asked(cmd, path, options)
	if err != nil {
		return err
	}
	lab, err := flags.lab(asked.text, options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	asked.spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := asked.run(cmd, lab, options.Seed)
	bar.end()
	if err != nil {
		return flags.ended("tornado", lab, err)
	}
	answer.Title = asked.title
	origin := originOf(cmd, path)
	if err := drawn.draw(func() drawer { return reports.TornadoChart(answer, origin) }); err != nil {
		return err
	}
	return p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Tornado(w, answer, origin, out.format, style)
	})
}

// asked is what a tornado is to be made of: a line, a study with candidates, or one with cases.
type asked struct {
	title, text string
	spec        decisions.TornadoSpec
	line        *scenarios.File
	study       *scenarios.Study
	size        decisions.SizeSpec
}

func (f *tornadoFlags) asked(cmd *cobra.Command, path string, o scenarios.Options) (*asked, error) {
	a := &asked{spec: decisions.TornadoSpec{Replications: o.Replications, Confidence: o.Confidence}}
	in, err := scenarios.Load(path)
	if err != nil {
		return nil, &complaint{err, "", badInput}
	}
	if !in.IsStudy() {
		file, err := in.Line(f.set)
		if err != nil {
			return nil, &complaint{err, "", badInput}
		}
		a.line, a.title, a.text = file, file.Line.Title, studyText(cmd, file)
		return a, nil
	}
	study, err := in.Study(f.set, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&a.size)})
	if err != nil {
		return nil, &complaint{err, "", badInput}
	}
	a.study, a.title = study, study.Title
	a.text = studyText(cmd, study.Line, sizingText(study, a.size), comparisonText(study, decisions.CompareSpec{}))
	return a, nil
}

func (a *asked) run(cmd *cobra.Command, lab *scenarios.Lab, seed uint64) (*decisions.Tornado, error) {
	var question *decisions.Question
	var err error
	spec, ctx := a.spec, cmd.Context()
	switch {
	case a.line != nil:
		question, spec = decisions.LineQuestion(ctx, lab, a.line, spec)
	case len(a.size.Candidates) > 0:
		question, spec, err = decisions.SizeQuestion(ctx, lab, a.study, a.size, seed, spec)
	default:
		question, spec, err = decisions.CaseQuestion(ctx, lab, a.study, spec)
	}
	if err != nil {
		return nil, err
	}
	return decisions.RunTornado(ctx, question, seed, spec)
}
