package main

import (
	_ "embed"
	"io"
	"runtime/debug"

	"github.com/spf13/cobra"

	"dwellcast/scenarios"
)

// notices are the licences of the libraries that the program carries.
//
//go:embed notices.txt
var notices string

// versionCommand says which program this is, so that a result can be repeated, and under which licences its parts are.
func (p *program) versionCommand() *cobra.Command {
	var licences bool
	cmd := &cobra.Command{
		Use:   "version",
		Short: "Print the version, or the licences of the libraries inside",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			text := "dwellcast " + scenarios.Version + revision() + "\n"
			if licences {
				text = notices
			}
			_, err := io.WriteString(p.stdout, text)
			return err
		},
	}
	cmd.Flags().BoolVar(&licences, "licences", false, "print the licences of the libraries that the program carries")
	return cmd
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
