package scenarios_test

import (
	"bytes"
	"context"
	"testing"

	"dwellcast/scenarios"
)

// TestNoDamagedResultsAreTaken: saved results in which any one byte was changed, taken out or doubled are refused.
func TestNoDamagedResultsAreTaken(t *testing.T) {
	file, err := scenarios.Open("example:bench-line", []string{"shift.length=10 min"})
	if err != nil {
		t.Fatal(err)
	}
	lab := scenarios.NewLab("study", scenarios.Options{Seed: 1})
	shifts, err := lab.Shifts(file)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := shifts.Extend(context.Background(), 3); err != nil {
		t.Fatal(err)
	}
	var saved bytes.Buffer
	if err := lab.Save(&saved); err != nil {
		t.Fatal(err)
	}
	resume := func(text []byte) error {
		return scenarios.NewLab("study", scenarios.Options{Seed: 1}).Resume(bytes.NewReader(text))
	}
	if err := resume(saved.Bytes()); err != nil {
		t.Fatal(err)
	}
	for i := range saved.Len() {
		text := saved.Bytes()
		changed := bytes.Clone(text)
		changed[i] ^= 1
		cut := append(bytes.Clone(text[:i]), text[i+1:]...)
		doubled := append(append(bytes.Clone(text[:i]), text[i]), text[i:]...)
		for _, damaged := range [][]byte{changed, cut, doubled, text[:i]} {
			if bytes.Equal(damaged, text) {
				continue
			}
			if resume(damaged) == nil {
				t.Fatalf("damage at byte %d of %d is taken", i, saved.Len())
			}
		}
	}
}
