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

// marginFlags are the flags of the margin command.
type marginFlags struct {
	studyFlags
	vary                 []string
	keep, target, chance string
}

// marginCommand finds how far parameters may go.
func (p *program) marginCommand() *cobra.Command {
	var flags marginFlags
	cmd := &cobra.Command{
		Use:   "margin FILE --vary PATH",
		Short: "Find how far a parameter may go before output falls",
		Long: "margin moves a parameter until good output falls below a share of today's, or below a target, and says how far that is.\n" +
			"Several parameters give a list of what to watch at commissioning, the tightest first; without --vary it takes all\n" +
			"that carry a source or a range in the file. The direction is found by itself.\n" +
			"Exit status 3: the line as it is does not make the target.",
		Example: "  dwellcast margin line.yaml --vary sealer.dwell --keep 98%\n" +
			"  dwellcast margin line.yaml --vary sealer.dwell --vary robot.cycle --target 9500cartons --chance 90%",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error { return p.margin(cmd, args[0], &flags) },
	}
	flags.add(cmd, "100 of each line")
	cmd.Flags().StringArrayVar(&flags.vary, "vary", nil, "`path` of a parameter, such as sealer.dwell; may be repeated")
	cmd.Flags().StringVar(&flags.keep, "keep", "", "`share` of today's good output to keep; 98% unless a target is given")
	cmd.Flags().StringVar(&flags.target, "target", "", "good `cartons` per shift to make, such as 9500cartons")
	cmd.Flags().StringVar(&flags.chance, "chance", "", "`share` of shifts that must make the target; without it, the average must")
	return cmd
}

func (p *program) margin(cmd *cobra.Command, path string, flags *marginFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	file, err := flags.open(path)
	if err != nil {
		return err
	}
	spec, err := flags.spec(file, options)
	if err != nil {
		return err
	}
	lab, err := flags.lab(studyText(cmd, file, append([]string{flags.keep, flags.target, flags.chance}, spec.Paths...)...), options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.FindMargins(cmd.Context(), lab, file, options.Seed, spec)
	bar.end()
	if err != nil {
		return flags.ended("margin", lab, err)
	}
	origin := originOf(cmd, path)
	if err := p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Margin(w, answer, origin, out.format, style)
	}); err != nil {
		return err
	}
	if !answer.Met {
		return &complaint{errors.New("the line as it is does not make the target"), "the report says what would have to change, or what is in reach", notMet}
	}
	return nil
}

// usualKeep is the share of today's output that is to be kept where nothing is said.
const usualKeep = "98%"

// spec checks the flags.
func (f *marginFlags) spec(file *scenarios.File, o scenarios.Options) (decisions.MarginSpec, error) {
	s := decisions.MarginSpec{Paths: f.vary, Replications: f.replications, Confidence: o.Confidence}
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
