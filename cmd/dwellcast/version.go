package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"

	"dwellcast/scenarios"
)

// versionCommand says which program this is, so that a result can be repeated.
func (p *program) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the version",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintln(p.stdout, "dwellcast "+scenarios.Version+revision())
			return err
		},
	}
}

func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return usage("leave it out", "%s takes no %q", cmd.CommandPath(), args[0])
	}
	return nil
}

// revision is the commit that the program was built from, where the build noted it.
func revision() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	for _, setting := range info.Settings {
		if setting.Key == "vcs.revision" {
			return " (" + setting.Value[:min(12, len(setting.Value))] + ")"
		}
	}
	return ""
}
