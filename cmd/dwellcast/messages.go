package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/quantity"
)

// Rules for messages: they go to standard error, begin with "dwellcast: ", start in lower case and have no period at the end. A
// hint that says what to do next follows on a line of its own, indented. Nothing else is printed there but progress.

// complaint is an error with a hint and the exit status it leads to.
type complaint struct {
	err    error
	hint   string
	status int
}

// Error is the message without its hint.
func (c *complaint) Error() string { return c.err.Error() }

// Unwrap returns the error that the complaint is about.
func (c *complaint) Unwrap() error { return c.err }

// usage is a complaint about how the program was called.
func usage(hint, format string, values ...any) error {
	return &complaint{fmt.Errorf(format, values...), hint, badInput}
}

// complain prints an error by the rules above, at the width of the terminal.
func complain(w io.Writer, err error) {
	width := columnsOf(w)
	for line := range strings.Lines(err.Error()) {
		line = strings.TrimRight(line, "\n")
		if strings.HasPrefix(line, " ") {
			say(w, "    ", line, width)
		} else {
			say(w, prefix, line, width)
		}
	}
	if c, ok := errors.AsType[*complaint](err); ok && c.hint != "" {
		say(w, "    ", c.hint, width)
	}
}

// prefix begins a message.
const prefix = "dwellcast: "

// say prints a line of a message behind a beginning; one that is longer than width goes on below it. A width of 0 sets no bounds.
func say(w io.Writer, beginning, line string, width int) {
	lines := []string{layout.Printable(strings.TrimLeft(line, " "))}
	if room := max(width, leastColumns) - len(beginning); width > 0 && utf8.RuneCountInString(lines[0]) > room {
		lines = layout.Wrap(lines[0], room)
	}
	for i, text := range lines {
		if i > 0 {
			text = strings.Repeat(" ", len(beginning)) + text
		} else {
			text = beginning + text
		}
		_, _ = fmt.Fprintln(w, text)
	}
}

// leastColumns is the narrowest width that messages are broken to.
const leastColumns = 40

// needCommand is the answer to no command at all.
func needCommand(cmd *cobra.Command) error {
	return usage("try: dwellcast example > line.yaml; dwellcast --help lists all commands", "no command given")
}

// unknownCommand answers a command that there is none of with the nearest that there is.
func unknownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	hint := "dwellcast --help lists all commands"
	if near := quantity.Nearest(args[0], names); near != "" {
		hint = "did you mean " + near + "?"
	}
	return usage(hint, "unknown command %q", args[0])
}

// formerFlags are names that flags had once, with today's.
var formerFlags = map[string]string{"replications": "shifts"}

// flagComplaint answers a wrong flag, with the nearest one where its name is unknown.
func flagComplaint(cmd *cobra.Command, err error) error {
	if err == nil {
		return nil
	}
	hint := cmd.CommandPath() + " --help lists all flags"
	if unknown, ok := errors.AsType[*pflag.NotExistError](err); ok {
		var names []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		if new, old := formerFlags[unknown.GetSpecifiedName()]; old {
			hint = "write --" + new
		} else if near := quantity.Nearest(unknown.GetSpecifiedName(), names); near != "" {
			hint = "did you mean --" + near + "?"
		}
	}
	return &complaint{err, hint, badInput}
}

// oneFile demands exactly one file name.
func oneFile(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return usage("give one, - for standard input, or example:oat-drink", "%s needs a line file", cmd.CommandPath())
	case len(args) > 1:
		return usage("quote a name that has spaces in it", "%s takes one line file, not %d", cmd.CommandPath(), len(args))
	}
	return nil
}
