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
)

// sizeFlags are the flags of the size command.
type sizeFlags struct {
	studyFlags
	sells string
}

// sizeCommand chooses among lines that could be had.
func (p *program) sizeCommand() *cobra.Command {
	var flags sizeFlags
	cmd := &cobra.Command{
		Use:   "size STUDY",
		Short: "Choose a line for a year's demand: what makes it, how surely, at what cost",
		Long: "size reads the section size: of a study: the demand of a year, the calendar, and the candidates with what they cost. It runs\n" +
			"the same shifts of each, says what it makes in a year and how surely that is enough, which setting it would need, and what\n" +
			"it costs, and recommends the cheapest that makes the demand as surely as wanted.\n" +
			"Exit status 3: no candidate is sure to make the demand.",
		Example: "  dwellcast size study.yaml\n  dwellcast size example:size-line\n  dwellcast size study.yaml --sells all --shifts 200",
		Args:    oneFile,
		RunE:    func(cmd *cobra.Command, args []string) error { return p.size(cmd, args[0], &flags) },
	}
	flags.add(cmd, "60")
	cmd.Flags().StringVar(&flags.sells, "sells", "", "`all`: every good carton can be sold; demand: no more than the demand; by default as the study says")
	return cmd
}

func (p *program) size(cmd *cobra.Command, path string, flags *sizeFlags) error {
	options, out, err := flags.begin()
	if err != nil {
		return err
	}
	study, spec, err := flags.study(path, options)
	if err != nil {
		return err
	}
	lab, err := flags.lab(studyText(cmd, study.Line, sizingText(study, spec)), options)
	if err != nil {
		return err
	}
	bar := newProgress(p.stderr, time.Now())
	spec.Progress = func(done, total int) { bar.tell(done, total, time.Now()) }
	answer, err := decisions.Size(cmd.Context(), lab, options.Seed, spec)
	bar.end()
	if err != nil {
		return flags.ended("size", lab, err)
	}
	answer.Title = study.Title
	origin := originOf(cmd, path)
	if err := p.send(out, func(w io.Writer, style reports.Style) error {
		return reports.Sizing(w, answer, basisOf(study, spec), origin, out.format, style)
	}); err != nil {
		return err
	}
	return sizingVerdict(answer)
}

// study reads the study and its section.
func (f *sizeFlags) study(path string, o scenarios.Options) (*scenarios.Study, decisions.SizeSpec, error) {
	spec := decisions.SizeSpec{Replications: o.Replications, Confidence: o.Confidence}
	switch {
	case o.Replications == 1:
		return nil, spec, usage("give 2 or more", "one shift of each line tells nothing of the spread")
	case f.sells != "" && f.sells != "all" && f.sells != "demand":
		return nil, spec, usage("give all or demand", "--sells is %q", f.sells)
	}
	in, err := scenarios.Load(path)
	if err != nil {
		return nil, spec, &complaint{err, "", badInput}
	}
	if !in.IsStudy() {
		if _, err := scenarios.Open(path, nil); err == nil && path != "-" {
			return nil, spec, usage("dwellcast example size-line > study.yaml writes a study to start from", "%s is a line, not a study", path)
		}
	}
	study, err := in.Study(f.set, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&spec)})
	if err != nil {
		return nil, spec, &complaint{err, "", badInput}
	}
	if !study.Document.Has("size") {
		return nil, spec, usage("dwellcast example size-line > study.yaml writes one to start from", "%s has no section of candidates, size", path)
	}
	if f.sells != "" {
		spec.SellsAll = f.sells == "all"
	}
	return study, spec, nil
}

// sizingText is what decides which shifts are run, beside the line.
func sizingText(study *scenarios.Study, spec decisions.SizeSpec) string {
	words := []string{studyDocument(study), fmt.Sprint(spec.Replications, spec.SellsAll)}
	for _, c := range spec.Candidates {
		words = append(words, c.Name, documentText(c.File))
	}
	return strings.Join(words, "\x00")
}

// sizingVerdict is what the exit status tells of a sizing that was made.
func sizingVerdict(z *decisions.Sizing) error {
	if z.Best >= 0 {
		return nil
	}
	c := z.Reach().Of
	hint := fmt.Sprintf("the best in reach is %s; add a candidate, more shifts or days, or ask for a lower chance", c.Name)
	if c.Verdict == decisions.Open {
		hint = "these shifts leave it open: give more --shifts"
	}
	return &complaint{errors.New("no candidate is sure to make the demand"), hint, notMet}
}
