package decisions

import (
	"context"
	"errors"
	"testing"
)

// TestInterruptDoesNotWait: an interrupt ends a search that has no end, and what comes of one that has is kept.
func TestInterruptDoesNotWait(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	if got, err := awaited(ctx, func() int { return 7 }); got != 7 || err != nil {
		t.Errorf("%d, %v", got, err)
	}
	go cancel()
	if _, err := awaited(ctx, func() int { select {} }); !errors.Is(err, ErrInterrupted) {
		t.Errorf("%v", err)
	}
}
