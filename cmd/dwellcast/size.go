package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// sizeFlags are the flags of the size command.
type sizeFlags struct{ sells string }

// sizeCommand chooses among lines that could be had.
func (p *program) sizeCommand() *cobra.Command {
	var flags sizeFlags
	return command(p, decision[*decisions.Sizing]{
		use:   "size STUDY",
		short: "Choose a line for a year's demand: what makes it, how surely, at what cost",
		long: "size reads the section size: of a study: the demand of a year, the calendar, and the candidates with what they cost. It runs " +
			"the same shifts of each, says what it makes in a year and how surely that is enough, which setting it would need, and what " +
			"it costs, and recommends the cheapest that makes the demand as surely as wanted.\n" +
			"Exit status 3: no candidate is sure to make the demand.",
		example: "  dwellcast size study.yaml\n  dwellcast size example:size-line\n  dwellcast size study.yaml --sells all --shifts 200",
		shifts:  "60", flags: flags.add, ask: flags.ask,
		draw: func(answer *decisions.Sizing, origin reports.Origin) drawer {
			return reports.SizingChart(answer, origin)
		},
	})
}

func (f *sizeFlags) add(set *pflag.FlagSet) {
	set.StringVar(&f.sells, "sells", "", "`all`: every good carton can be sold; demand: no more than the demand; by default as the study says")
}

func (f *sizeFlags) ask(path string, common *studyFlags, o scenarios.Options) (*question[*decisions.Sizing], error) {
	study, spec, err := f.study(path, common, o)
	if err != nil {
		return nil, err
	}
	return &question[*decisions.Sizing]{
		rests: append(restsOf(study), candidateLines(spec)...),
		answer: func(ctx context.Context, lab *scenarios.Lab, seed uint64, tell func(done, total int)) (*decisions.Sizing, error) {
			spec.Progress = tell
			return decisions.SizeStudy(ctx, lab, study, seed, spec)
		},
		report: func(w io.Writer, z *decisions.Sizing, origin reports.Origin, format reports.Format, style reports.Style) error {
			return reports.Sizing(w, z, basisOf(study, spec), origin, format, style)
		},
		verdict: sizingVerdict,
	}, nil
}

// study reads the study and its section.
func (f *sizeFlags) study(path string, common *studyFlags, o scenarios.Options) (*scenarios.Study, decisions.SizeSpec, error) {
	spec := decisions.SizeSpec{Replications: o.Replications, Confidence: o.Confidence}
	switch {
	case o.Replications == 1:
		return nil, spec, usage("give 2 or more", "one shift of each line tells nothing of the spread")
	case f.sells != "" && f.sells != "all" && f.sells != "demand":
		return nil, spec, usage("give all or demand", "--sells is %q", f.sells)
	}
	study, err := common.study(path, map[string]scenarios.SectionReader{"size": decisions.SizeSection(&spec)})
	switch {
	case err != nil:
		return nil, spec, err
	case study.Document == nil:
		return nil, spec, usage("dwellcast example size-line > study.yaml writes a study to start from", "%s is a line, not a study", path)
	case !study.Document.Has("size"):
		return nil, spec, usage("dwellcast example size-line > study.yaml writes one to start from", "%s has no section of candidates, size", path)
	}
	if f.sells != "" {
		spec.SellsAll = f.sells == "all"
	}
	return study, spec, nil
}

// candidateLines are the lines of the candidates.
func candidateLines(spec decisions.SizeSpec) []*document.Node {
	var list []*document.Node
	for _, c := range spec.Candidates {
		list = append(list, c.File.Document)
	}
	return list
}

// sizingVerdict is what the exit status tells of a sizing that was made.
func sizingVerdict(z *decisions.Sizing) error {
	if z.Best >= 0 && z.Undecided >= 0 {
		return &complaint{fmt.Errorf("open: %s may make the demand and would be taken then", z.Candidates[z.Undecided].Name), "give more --shifts", notMet}
	}
	if z.Best >= 0 {
		return nil
	}
	c := z.Reach().Of
	hint := fmt.Sprintf("the best in reach is %s; add a candidate, more shifts or days, or ask for a lower chance", c.Name)
	if c.Verdict == decisions.Open || z.Undecided >= 0 {
		hint = "these shifts leave it open: give more --shifts"
	}
	return &complaint{errors.New("no candidate is sure to make the demand"), hint, notMet}
}
