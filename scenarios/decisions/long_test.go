package decisions_test

import (
	"os"
	"testing"
)

// long says whether the long checks are switched on, as .ci/run does: every row at full width, coverage over many seeds. Without
// them each kind of thing is still checked, on fewer rows or seeds.
func long() bool { return os.Getenv("DWELLCAST_LONG") != "" && !testing.Short() }

// needsLong skips a test that only the long checks run.
func needsLong(t *testing.T) {
	t.Helper()
	if !long() {
		t.Skip("long: set DWELLCAST_LONG=1")
	}
}
