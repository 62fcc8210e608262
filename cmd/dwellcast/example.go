package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"dwellcast/reports"
	"dwellcast/scenarios"
)

const defaultExample = "oat-drink"

// exampleCommand writes an embedded line file.
func (p *program) exampleCommand() *cobra.Command {
	var list bool
	var path string
	cmd := &cobra.Command{
		Use:     "example [NAME]",
		Short:   "Write a complete, commented line or study file",
		Long:    "example writes a line file, or a study, that runs as it stands, of invented data, to start your own from.",
		Example: "  dwellcast example > line.yaml\n  dwellcast example --list",
		Args:    atMostOneName,
		RunE: func(cmd *cobra.Command, args []string) error {
			out, err := newOutput(path, string(reports.Table))
			if err != nil {
				return err
			}
			text := exampleList()
			if !list {
				if text, err = exampleText(append(args, defaultExample)[0]); err != nil {
					return err
				}
			}
			return p.send(out, func(w io.Writer, _ reports.Style) error {
				_, err := w.Write(text)
				return err
			})
		},
	}
	cmd.Flags().BoolVar(&list, "list", false, "list the names of all examples")
	cmd.Flags().StringVarP(&path, "output", "o", "", "`file` to write to, whole or not at all; - is standard output")
	return cmd
}

func atMostOneName(cmd *cobra.Command, args []string) error {
	if len(args) > 1 {
		return usage("dwellcast example --list shows the names", "%s takes one name, not %d", cmd.CommandPath(), len(args))
	}
	return nil
}

func exampleText(name string) ([]byte, error) {
	text, err := scenarios.Example(name)
	if err != nil {
		return nil, usage("dwellcast example --list shows the names", "%w", err)
	}
	return text, nil
}

// exampleList is a line for each example: its name, and its title.
func exampleList() []byte {
	var list strings.Builder
	for _, name := range append(scenarios.Examples(), scenarios.Studies()...) {
		fmt.Fprintf(&list, "%-14s %s\n", name, scenarios.ExampleTitle(name))
	}
	return []byte(list.String())
}
