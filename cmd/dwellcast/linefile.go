package main

import (
	"github.com/spf13/cobra"

	"dwellcast/scenarios"
)

// lineFlags are the flags of every command that reads a line file.
type lineFlags struct {
	outputFlags
	set []string
}

func (f *lineFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(&f.set, "set", nil, "change a quantity of the file, `path=value`, such as sealer.dwell=1.1s; may be repeated")
	f.outputFlags.add(cmd.Flags())
}

// open reads the line file with the changes that --set asks for.
func (f *lineFlags) open(path string) (*scenarios.File, error) {
	file, err := scenarios.Open(path, f.set)
	if err != nil {
		return nil, &complaint{err, "", badInput}
	}
	return file, nil
}
