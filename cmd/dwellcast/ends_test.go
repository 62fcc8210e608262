package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// started is the program as another process, in a folder of its own.
func started(t *testing.T, stdin io.Reader, args ...string) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute) // far beyond what any of these may take
	t.Cleanup(cancel)
	cmd := exec.CommandContext(ctx, self, args...)
	cmd.Args[0] = "dwellcast" // by which the test binary knows that it is the program
	cmd.Dir = t.TempDir()
	var errs bytes.Buffer
	cmd.Stdin, cmd.Stderr = stdin, &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return cmd, &errs
}

// fed is a command that reads a line file from a pipe which stays open, up to when it has read what is in it.
func fed(t *testing.T, args ...string) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = write.Close() })
	cmd, errs := started(t, read, args...)
	_ = read.Close()
	if _, err := io.WriteString(write, strings.Repeat("# more than a pipe holds unread\n", 8192)); err != nil {
		t.Fatal(err)
	}
	return cmd, errs
}

// exitOf is the exit status, or the signal that ended a process.
func exitOf(cmd *exec.Cmd) (status int, by syscall.Signal) {
	err := cmd.Wait()
	exit, ok := errors.AsType[*exec.ExitError](err)
	if !ok {
		return 0, 0
	}
	if wait, ok := exit.Sys().(syscall.WaitStatus); ok && wait.Signaled() {
		return -1, wait.Signal()
	}
	return exit.ExitCode(), 0
}

// An interrupt ends the program also while it waits for input that never comes.
func TestInterruptWhileReading(t *testing.T) {
	for _, signal := range []os.Signal{syscall.SIGINT, syscall.SIGTERM} {
		cmd, errs := fed(t, "compare", "-")
		_ = cmd.Process.Signal(signal)
		if status, by := exitOf(cmd); status != failed || by != 0 || !strings.Contains(errs.String(), "dwellcast: interrupted") {
			t.Errorf("%v: status %d, signal %v, %q", signal, status, by, errs)
		}
	}
}

// After a first interrupt the second one is the system's own, which ends the program on the spot.
func TestSecondInterruptEndsAtOnce(t *testing.T) {
	for range 5 { // the first may have ended the program before, on a busy machine
		cmd, _ := fed(t, "run", "-")
		over := make(chan struct{})
		go func() {
			for {
				_ = cmd.Process.Signal(syscall.SIGINT)
				select {
				case <-over:
					return
				case <-time.After(20 * time.Millisecond):
				}
			}
		}()
		_, by := exitOf(cmd)
		close(over)
		if by == syscall.SIGINT {
			return
		}
	}
	t.Error("the second interrupt did not end it")
}

// One shift as long as a month of days, many stations' worth of work, is left in its midst; a trace of it and a report to a pipe that nobody
// reads are too.
func TestInterruptWithinAShift(t *testing.T) {
	folder := t.TempDir()
	unread := filepath.Join(folder, "unread")
	if err := syscall.Mkfifo(unread, 0o600); err != nil {
		t.Skip(err)
	}
	for _, args := range [][]string{
		{"--shifts", "100000", "--set", "shift.length=744 h"},
		{"--explain", "--shifts", "100000", "--set", "shift.length=744 h"},
		{"--shifts", "2", "-o", unread},
	} {
		line := filepath.Join(folder, "line.fifo")
		if err := syscall.Mkfifo(line, 0o600); err != nil {
			t.Skip(err)
		}
		cmd, errs := started(t, nil, append([]string{"run", line}, args...)...)
		text, err := os.ReadFile("../../scenarios/examples/oat-drink.yaml")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(line, text, 0o600); err != nil { // waits until it is read
			t.Fatal(err)
		}
		time.Sleep(300 * time.Millisecond)
		_ = cmd.Process.Signal(syscall.SIGINT)
		if status, by := exitOf(cmd); status != failed || by != 0 || !strings.Contains(errs.String(), "interrupted") {
			t.Errorf("%q: status %d, signal %v, %q", args, status, by, errs)
		}
		if err := os.Remove(line); err != nil {
			t.Fatal(err)
		}
	}
}
