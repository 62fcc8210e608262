package main

import (
	"errors"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// sweepFlags are the flags of the sweep command.
type sweepFlags struct {
	studyFlags
	vary   []string
	figure string
	chart  string
}

// sweepCommand runs a line over a range of one parameter, or a grid of two.
func (p *program) sweepCommand() *cobra.Command {
	var flags sweepFlags
	cmd := &cobra.Command{
		Use:   "sweep FILE --vary PATH=FROM..TO/N",
		Short: "Vary one or two parameters; find the knee",
		Long: "sweep runs the same shifts of the line at every value of a parameter, or at every point of a grid of two, and shows any\n" +
			"figure of a run. For one parameter it finds the knee: where the curve bends, and who becomes critical there.",
		Example: "  dwellcast sweep line.yaml --vary sealer.dwell=0.6s..1.6s/11\n" +
			"  dwellcast sweep line.yaml --vary sealer.dwell=1.1s..1.5s/9 --figure robot.starved --format csv\n" +
			"  dwellcast sweep line.yaml --vary sealer.dwell=1.1s..1.5s/9 --vary \"setting=1300cartons/h..1600cartons/h/7\" --chart grid.svg",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error { return p.sweep(cmd, args[0], &flags) },
	}
	flags.add(cmd, "100 at each point")
	cmd.Flags().StringArrayVar(&flags.vary, "vary", nil, "`path=from..to/n`, such as sealer.dwell=0.6s..1.6s/11; twice for a grid")
	cmd.Flags().StringVar(&flags.figure, "figure", "good_rate", "`figure` to show: "+
		"good_rate, good_per_shift, target_chance, stops_per_hour, crew_load, sealer.starved, sealer.bottleneck_share, sealer.rejected, ...")
	cmd.Flags().StringVar(&flags.chart, "chart", "", "`file` to draw to, .svg, .png or .pdf")
	return cmd
}

func (p *program) sweep(cmd *cobra.Command, path string, flags *sweepFlags) error {
	options, err := flags.options()
	if err != nil {
		return err
	}
	out, picture, err := flags.outputs()
	if err != nil {
		return err
	}
	spec := decisions.SweepSpec{Replications: flags.replications, Confidence: options.Confidence}
	if spec.Vary, err = varies(flags.vary); err != nil {
		return err
	}
	file, err := flags.open(path)
	if err != nil {
		return err
	}
	if spec.Figure, err = decisions.ParseFigure(flags.figure, file); err != nil {
		return mistaken(err)
	}
	lab, err := flags.lab(studyText(cmd, file, append(flags.vary, flags.figure)...), options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.RunSweep(cmd.Context(), lab, file, options.Seed, spec)
	bar.end()
	if err != nil {
		return flags.ended("sweep", lab, err)
	}
	origin := originOf(cmd, path)
	if err := picture.draw(func() drawer { return reports.SweepChart(answer, origin) }); err != nil {
		return err
	}
	return p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Sweep(w, answer, origin, out.format, style)
	})
}

// outputs checks where the report and the picture go.
func (f *sweepFlags) outputs() (output, picture, error) {
	out, err := newOutput(f.output, f.format)
	if err != nil {
		return out, picture{}, err
	}
	drawn, err := newPicture(f.chart)
	return out, drawn, err
}

func varies(texts []string) ([]decisions.Vary, error) {
	var list []decisions.Vary
	for _, text := range texts {
		v, err := decisions.ParseVary(text)
		if err != nil {
			return nil, mistaken(err)
		}
		list = append(list, v)
	}
	return list, nil
}

// mistaken makes a complaint of a wrong request; any other error is handed on.
func mistaken(err error) error {
	if m, ok := errors.AsType[*decisions.Mistake](err); ok {
		return &complaint{m, m.Hint, badInput}
	}
	return err
}

// studyText is all that decides which shifts a command runs, for the digest of its results.
func studyText(cmd *cobra.Command, file *scenarios.File, more ...string) string {
	words := []string{cmd.Name(), documentText(file), cmd.Flags().Lookup("shifts").Value.String(), cmd.Flags().Lookup("confidence").Value.String()}
	return strings.Join(append(words, more...), "\x00")
}
