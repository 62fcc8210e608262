package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the golden output in the scripts")

func TestMain(m *testing.M) {
	testscript.Main(plainly{m}, map[string]func(){"dwellcast": main})
}

// plainly runs tests with the screens of a plain pipe; the program itself, which the test binary is too, minds COLUMNS.
type plainly struct{ *testing.M }

func (p plainly) Run() int {
	_ = os.Unsetenv("COLUMNS")
	return p.M.Run()
}

// TestScripts runs the program as it is used, one script a behaviour.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: *update,
		Cmds:          map[string]func(*testscript.TestScript, bool, []string){"status": status},
		Condition: func(word string) (bool, error) {
			if word != "long" {
				return false, fmt.Errorf("no such condition")
			}
			return os.Getenv("DWELLCAST_LONG") != "", nil
		},
		Setup: func(env *testscript.Env) error {
			env.Setenv("NO_COLOR", "1")
			return nil
		},
	})
}

// status runs a command and demands an exit status: status 2 dwellcast run missing.yaml.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status CODE COMMAND [ARGUMENT...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := errors.AsType[*exec.ExitError](err)
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

// noFile is a check that nothing stands at path.
func noFile(t *testing.T, path string) {
	t.Helper()
	if _, err := os.Lstat(path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("%s: %v, want no file", path, err)
	}
}
