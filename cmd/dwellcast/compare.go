package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// compareFlags are the flags of the compare command.
type compareFlags struct {
	studyFlags
	cases               []string
	precision, smallest string
	ceiling             int
}

// compareCommand holds cases against a base.
func (p *program) compareCommand() *cobra.Command {
	var flags compareFlags
	cmd := &cobra.Command{
		Use:   "compare FILE",
		Short: "Hold what-ifs against a base: the difference, its odds and its reason",
		Long: "compare reads a study (a line and its cases), or a line file with cases from --case, and runs the same shifts of each. It\n" +
			"shows what each case makes, its difference from the base with an interval, how likely it is to beat it, and what moved.\n" +
			"Exit status 3: the wanted precision was not reached.",
		Example: "  dwellcast compare study.yaml\n" +
			"  dwellcast compare line.yaml --case \"long dwell: sealer.dwell=1.3s; sealer.close=0.3s\" --case \"crew of 2: crew.attendants=2\"\n" +
			"  dwellcast compare study.yaml --precision 0.2% --ceiling 10000",
		Args: oneFile,
		RunE: func(cmd *cobra.Command, args []string) error { return p.compare(cmd, args[0], &flags) },
	}
	flags.add(cmd, "up to 200 at first")
	cmd.Flags().StringArrayVar(&flags.cases, "case", nil, "a case, `\"name: path=value; ...\"`; drop PATH takes out, PATH+=VALUE adds; may be repeated")
	cmd.Flags().StringVar(&flags.precision, "precision", "", "add shifts of a case until the half-width of its difference is this `share` of the base's output")
	cmd.Flags().IntVar(&flags.ceiling, "ceiling", 0, "most `number` of shifts of each line; 0 takes 5000")
	cmd.Flags().StringVar(&flags.smallest, "smallest", "", "smallest difference worth knowing of, a `share` of the base's output such as 0.5%")
	return cmd
}

func (p *program) compare(cmd *cobra.Command, path string, flags *compareFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	study, spec, err := flags.study(path)
	if err != nil {
		return err
	}
	spec.Confidence = options.Confidence
	if err := flags.into(&spec); err != nil {
		return err
	}
	lab, err := flags.lab(studyText(cmd, study.Line, comparisonText(study, spec)), options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.Compare(cmd.Context(), lab, study.Line, study.Cases, options.Seed, spec)
	bar.end()
	if err != nil {
		return flags.ended("compare", lab, mistaken(err))
	}
	answer.Title = study.Title
	origin := originOf(cmd, path)
	if err := p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Comparison(w, answer, origin, out.format, style)
	}); err != nil {
		return err
	}
	return comparisonVerdict(answer)
}

// study reads the study, or the line, and the cases of the command line.
func (f *compareFlags) study(path string) (*scenarios.Study, decisions.CompareSpec, error) {
	var spec decisions.CompareSpec
	study := &scenarios.Study{Name: path}
	in, err := scenarios.Load(path)
	switch {
	case err != nil:
	case in.IsStudy():
		study, err = in.Study(f.set, map[string]scenarios.SectionReader{"compare": compareSection(&spec)})
	default:
		if study.Line, err = in.Line(f.set); err == nil {
			study.Title = study.Line.Line.Title
		}
	}
	if err != nil {
		return nil, spec, &complaint{err, "", badInput}
	}
	var p document.Problems
	names := map[string]bool{}
	for _, c := range study.Cases {
		names[c.Name] = true
	}
	for _, text := range f.cases {
		c, err := scenarios.ParseCase(study.Line, text)
		if list, ok := errors.AsType[document.ProblemList](err); ok {
			for _, problem := range list {
				p.Report(problem)
			}
			continue
		}
		if names[c.Name] {
			p.Report(document.Problem{At: document.Position{Override: "--case"}, Text: c.Name, Message: "is the name of two cases", Hint: "give each its own"})
		}
		names[c.Name] = true
		study.Cases = append(study.Cases, c)
	}
	if err := p.Err(); err != nil {
		return nil, spec, &complaint{err, "", badInput}
	}
	return study, spec, nil
}

// into lets the flags override what the study says.
func (f *compareFlags) into(spec *decisions.CompareSpec) error {
	var err error
	if f.precision != "" {
		if spec.Precision, err = share("--precision", f.precision, 1e-5, 0.5); err != nil {
			return err
		}
	}
	if f.smallest != "" {
		if spec.Smallest, err = share("--smallest", f.smallest, 1e-5, 0.5); err != nil {
			return err
		}
	}
	if f.replications > 0 {
		spec.Replications = f.replications
	}
	if f.ceiling > 0 {
		spec.Ceiling = f.ceiling
	}
	switch {
	case f.ceiling < 0 || f.ceiling > scenarios.MaxReplications:
		return usage(fmt.Sprintf("give 2 to %d, or 0 for the default", scenarios.MaxReplications), "--ceiling is %d", f.ceiling)
	case f.replications == 1:
		return usage("give 2 or more", "one shift of each line tells nothing of a difference")
	case spec.Ceiling > 0 && spec.Replications > spec.Ceiling:
		return usage("give fewer --shifts, or a higher --ceiling", "%d shifts are more than the ceiling of %d", spec.Replications, spec.Ceiling)
	}
	return nil
}

// comparisonText is what decides which shifts are run, beside the line.
func comparisonText(study *scenarios.Study, spec decisions.CompareSpec) string {
	words := []string{fmt.Sprint(spec.Replications, spec.Ceiling, spec.Precision, spec.Confidence)}
	for _, c := range study.Cases {
		words = append(words, c.Name, documentText(c.File))
	}
	return strings.Join(words, "\x00")
}

// comparisonVerdict is what the exit status tells of a comparison that was made.
func comparisonVerdict(c *decisions.Comparison) error {
	for _, r := range c.Cases {
		if !r.Met {
			return &complaint{fmt.Errorf("the wanted precision of %s was not reached for %q in %s", quantity.FormatRatio(c.Spec.Precision), r.Name,
				quantity.FormatCount(int64(r.Replications), "shift")), "give --ceiling more, or ask for a wider one", notMet}
		}
	}
	return nil
}
