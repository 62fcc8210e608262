package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"dwellcast/reports/layout"
)

// help says what a command is for and how it is called, at the width of the terminal.
func (p *program) help(cmd *cobra.Command, _ []string) {
	width := styleOf(p.stdout).Columns()
	var out strings.Builder
	for line := range strings.Lines(orShort(cmd)) {
		out.WriteString(filled(strings.TrimRight(line, "\n"), width) + "\n")
	}
	fmt.Fprintf(&out, "\nUsage:\n  %s\n", cmd.UseLine())
	if cmd.HasExample() {
		out.WriteString("\nExamples:\n")
		for line := range strings.Lines(cmd.Example) {
			out.WriteString(broken(strings.TrimRight(line, "\n"), width) + "\n")
		}
	}
	if cmd.HasAvailableSubCommands() {
		out.WriteString("\nCommands:\n" + commandList(cmd, width))
	}
	if cmd.HasAvailableFlags() {
		out.WriteString("\nFlags:\n" + cmd.Flags().FlagUsagesWrapped(width))
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintf(&out, "\n%s COMMAND --help says more of a command.\n", cmd.CommandPath())
	}
	_, _ = io.WriteString(p.stdout, out.String())
}

func orShort(cmd *cobra.Command) string {
	if cmd.Long != "" {
		return cmd.Long
	}
	return cmd.Short + "."
}

// filled breaks a paragraph into lines of a width; one that is set in, such as a command to type, stays as it is.
func filled(paragraph string, width int) string {
	if strings.HasPrefix(paragraph, " ") || strings.HasPrefix(paragraph, "\t") {
		return paragraph
	}
	return strings.Join(layout.Wrap(paragraph, width), "\n")
}

// broken breaks a command line before its flags, so that a shell still reads it as one.
func broken(line string, width int) string {
	parts := strings.Split(line, " --")
	out, at := parts[0], len(parts[0])
	for _, part := range parts[1:] {
		if at+len(" --"+part) > width-2 {
			out, at = out+" \\\n    ", 4
		}
		out, at = out+" --"+part, at+len(" --"+part)
	}
	return out
}

// commandList names the commands with what they are for.
func commandList(cmd *cobra.Command, width int) string {
	const indent = 14
	var out strings.Builder
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() || c.Name() == "help" {
			words := strings.Join(layout.Wrap(c.Short, width-indent), "\n"+strings.Repeat(" ", indent))
			fmt.Fprintf(&out, "  %-*s%s\n", indent-2, c.Name(), words)
		}
	}
	return out.String()
}
