package scenarios_test

import (
	"context"
	"reflect"
	"testing"

	"dwellcast/scenarios"
)

// Shifts that were done when a run is interrupted count, in the order of their numbers: going on from there gives what an uninterrupted run does.
func TestInterruptedShiftsGoOn(t *testing.T) {
	file, err := scenarios.Open("example:bench-line", []string{"shift.length=2 h"})
	if err != nil {
		t.Fatal(err)
	}
	whole, err := scenarios.NewShifts(file, scenarios.Options{Seed: 1, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := whole.Extend(context.Background(), 200); err != nil {
		t.Fatal(err)
	}
	cut, err := scenarios.NewShifts(file, scenarios.Options{Seed: 1, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	for interruptions := 0; ; interruptions++ {
		ctx, cancel := context.WithCancel(context.Background())
		go cancel() // at any moment
		interrupted, err := cut.Extend(ctx, 200)
		if err != nil {
			t.Fatal(err)
		}
		if n := cut.Done(); !reflect.DeepEqual(cut.Good(), whole.Good()[:n:n]) && n > 0 {
			t.Fatalf("after %d interruptions, %d shifts: %v", interruptions, n, cut.Good())
		}
		if !interrupted {
			break
		}
		if interruptions > 20 {
			if _, err := cut.Extend(context.Background(), 200); err != nil {
				t.Fatal(err)
			}
			break
		}
	}
	if !reflect.DeepEqual(cut.Forecast().GoodRate, whole.Forecast().GoodRate) {
		t.Error("another answer")
	}
}
