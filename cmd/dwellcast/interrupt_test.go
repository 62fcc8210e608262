package main

import (
	"bytes"
	"context"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"testing"
	"time"

	"dwellcast/scenarios"
)

// An interrupt ends the work cleanly: the report says so, and the exit status is 1.
func TestInterrupt(t *testing.T) {
	caught := make(chan os.Signal, 1)
	signal.Notify(caught, syscall.SIGINT) // so that a signal sent too early or too late does no harm
	defer signal.Stop(caught)
	over := make(chan struct{})
	go func() {
		for {
			select {
			case <-over:
				return
			case <-time.After(20 * time.Millisecond):
				_ = syscall.Kill(os.Getpid(), syscall.SIGINT)
			}
		}
	}()
	var out, errs bytes.Buffer
	status := run([]string{"run", "example:bench-line", "--shifts", "100000"}, strings.NewReader(""), &out, &errs)
	close(over)
	if status != failed {
		t.Errorf("exit status %d, want %d", status, failed)
	}
	if !strings.Contains(errs.String(), "dwellcast: interrupted") {
		t.Errorf("standard error holds %q", errs.String())
	}
	if out.Len() > 0 && !strings.Contains(out.String(), "INTERRUPTED") {
		t.Errorf("the report does not say that it was interrupted:\n%s", out.String())
	}
}

// What is known when the work ends early is printed.
func TestInterruptKeepsWhatIsKnown(t *testing.T) {
	file, err := scenarios.Open("example:bench-line", nil)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	var out, errs bytes.Buffer
	p := &program{stdin: strings.NewReader(""), stdout: &out, stderr: &errs}
	options := scenarios.Options{Replications: 1000, Seed: 1, Workers: 1, Confidence: 0.95}
	options.Progress = func(done, _ int) {
		if done >= 16 {
			cancel()
		}
	}
	forecast, err := scenarios.Run(ctx, file, options)
	if err != nil {
		t.Fatal(err)
	}
	err = p.deliver(forecast, options, output{format: "table"})
	if status := p.report(err); status != failed {
		t.Errorf("exit status %d, want %d", status, failed)
	}
	for _, want := range []string{"INTERRUPTED: these figures rest on the", "good cartons an hour"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the report lacks %q:\n%s", want, out.String())
		}
	}
}
