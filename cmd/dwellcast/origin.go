package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
)

// originOf says which command read which file, for the foot of its report.
func originOf(cmd *cobra.Command, study string) reports.Origin {
	return reports.Origin{Command: cmd.Name(), Study: study, Line: reports.CommandLine(argsOf(cmd, study)), Version: scenarios.Version}
}

// shown are the flags that say how an answer is made or shown, and not what it is.
var shown = []string{"resume", "workers", "output", "format", "decimal", "brief", "chart"}

// argsOf puts the arguments together that give the same answer again.
func argsOf(cmd *cobra.Command, study string) []string {
	args := []string{cmd.Name()}
	if study != "" {
		args = append(args, study)
	}
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if slices.Contains(shown, f.Name) {
			return
		}
		if f.Value.Type() == "bool" {
			args = append(args, "--"+f.Name+map[bool]string{false: "=false"}[f.Value.String() == "true"])
			return
		}
		for _, value := range valuesOf(f) {
			args = append(args, "--"+f.Name, value)
		}
	})
	return args
}

// valuesOf are the values of a flag, several where it may be repeated.
func valuesOf(f *pflag.Flag) []string {
	if list, ok := f.Value.(pflag.SliceValue); ok {
		return list.GetSlice()
	}
	return []string{f.Value.String()}
}

// studyText is all that decides which shifts a command runs, for the digest of its results: its flags, those at their defaults too, and
// the documents that it rests on.
func studyText(cmd *cobra.Command, rests []*document.Node) (string, error) {
	words := []string{cmd.Name()}
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if !slices.Contains(shown, f.Name) {
			words = append(append(words, f.Name), valuesOf(f)...)
		}
	})
	for _, root := range rests {
		text, err := document.Render(root)
		if err != nil {
			return "", err
		}
		words = append(words, text)
	}
	return strings.Join(words, "\x00"), nil
}

// restsOf are the documents of a study: itself, unless it is a line alone, the line, and the line of each case.
func restsOf(study *scenarios.Study) []*document.Node {
	list := []*document.Node{study.Line.Document}
	if study.Document != nil {
		list = append(list, study.Document)
	}
	for _, c := range study.Cases {
		list = append(list, c.File.Document)
	}
	return list
}
