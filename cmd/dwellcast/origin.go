package main

import (
	"slices"

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

// argsOf puts the arguments together that give the same answer again: those left out say how it is made or shown.
func argsOf(cmd *cobra.Command, study string) []string {
	args := []string{cmd.Name(), study}
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if slices.Contains([]string{"resume", "workers", "output", "format", "chart"}, f.Name) {
			return
		}
		if f.Value.Type() == "bool" {
			args = append(args, "--"+f.Name+map[bool]string{false: "=false"}[f.Value.String() == "true"])
			return
		}
		values := []string{f.Value.String()}
		if list, ok := f.Value.(pflag.SliceValue); ok {
			values = list.GetSlice()
		}
		for _, value := range values {
			args = append(args, "--"+f.Name, value)
		}
	})
	return args
}

// documentText is the line file with its changes.
func documentText(file *scenarios.File) string {
	text, err := document.Render(file.Document)
	if err != nil {
		return file.Name
	}
	return text
}
