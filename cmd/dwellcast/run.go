package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"sync"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"dwellcast/scenarios"
)

// Exit statuses.
const (
	done     = 0
	failed   = 1
	badInput = 2 // bad input or usage
	notMet   = 3 // a criterion was not met, or could not be assessed
)

// patience is how long work may take to end cleanly after an interrupt; what waits for input never would.
const patience = 800 * time.Millisecond

// program is what every command works with.
type program struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	// keeping is held from when results are being kept after an interrupt: the program does not end before they are.
	keeping sync.Mutex
}

// run carries out the command in args and returns the exit status. A first interrupt ends the work cleanly.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) (status int) {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	p := &program{stdin: stdin, stdout: stdout, stderr: stderr}
	ended := make(chan struct{})
	defer close(ended) // before stop, which ends ctx too
	context.AfterFunc(ctx, func() {
		stop() // so that a second one ends the program at once
		select {
		case <-ended:
		case <-time.After(patience):
			p.keeping.Lock()
			complain(stderr, errors.New("interrupted"))
			os.Exit(failed)
		}
	})
	defer func() {
		if value := recover(); value != nil {
			status = p.report(defect(value, debug.Stack()))
		}
	}()
	root := p.root()
	root.SetArgs(append([]string{}, args...)) // not nil, which would stand for those of the process
	if err := root.ExecuteContext(ctx); err != nil {
		return p.report(err)
	}
	return done
}

// traceVariable names the file that the place of a defect is written to.
const traceVariable = "DWELLCAST_TRACE"

// defect is the answer to a mistake of the program itself.
func defect(value any, stack []byte) error {
	hint := "please report it, with the file and the command; " + traceVariable + "=FILE keeps the place in a file"
	if path := os.Getenv(traceVariable); path != "" {
		text := fmt.Sprintf("dwellcast %s: %v\n%s", scenarios.Version, value, stack)
		if err := replaceFile(path, []byte(text)); err == nil {
			hint = "please report it with " + path
		}
	}
	return &complaint{fmt.Errorf("a mistake of the program itself: %v", value), hint, failed}
}

// report prints a message and returns the exit status that goes with the error.
func (p *program) report(err error) int {
	complain(p.stderr, err)
	if c, ok := errors.AsType[*complaint](err); ok {
		return c.status
	}
	return failed
}

// root is the command without a name, and the list of all others.
func (p *program) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "dwellcast",
		Short: "Forecast the throughput of a carton erect-fill-seal-offload line",
		Long: "dwellcast reads one plain file that says what a carton line is, simulates it, and answers with numbers and their " +
			"uncertainty: will it make the demand, what limits it, and why that setting.",
		Example:       "  dwellcast example > line.yaml\n  dwellcast check line.yaml\n  dwellcast run line.yaml",
		SilenceErrors: true, SilenceUsage: true,
		Args: unknownCommand, PersistentPreRunE: apart,
		RunE: func(cmd *cobra.Command, _ []string) error { return needCommand(cmd) },
	}
	root.SetIn(p.stdin)
	root.SetOut(p.stdout)
	root.SetErr(p.stderr)
	root.SetHelpFunc(p.help)
	root.SetFlagErrorFunc(flagComplaint)
	root.SuggestionsMinimumDistance = 2
	root.AddCommand(p.exampleCommand(), p.checkCommand(), p.runCommand(), p.versionCommand())
	root.AddCommand(p.sweepCommand(), p.paceCommand(), p.marginCommand(), p.timingCommand())
	root.AddCommand(p.compareCommand(), p.sizeCommand(), p.tornadoCommand())
	root.AddCommand(p.acceptCommand(), p.fitCommand(), p.reportCommand())
	root.InitDefaultCompletionCmd("completion")
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Args = unknownCommand
			c.RunE = func(cmd *cobra.Command, _ []string) error {
				return usage("give bash, fish, powershell or zsh", "%s needs a shell", cmd.CommandPath())
			}
		}
	}
	return root
}
