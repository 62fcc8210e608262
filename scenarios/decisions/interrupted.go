package decisions

import (
	"context"
	"errors"

	"dwellcast/scenarios"
)

// ErrInterrupted says that the work was ended early. What was run until then is in the lab, to be saved and gone on from.
var ErrInterrupted = errors.New("interrupted")

// extend returns the shifts of a line, n of them run at least.
func extend(ctx context.Context, lab *scenarios.Lab, f *scenarios.File, n int) (*scenarios.Shifts, error) {
	shifts, err := lab.Shifts(f)
	if err != nil {
		return nil, err
	}
	interrupted, err := shifts.Extend(ctx, n)
	switch {
	case err != nil:
		return nil, err
	case interrupted:
		return nil, ErrInterrupted
	}
	return shifts, nil
}

// awaited is what work without an end of its own comes to, such as a search of all settings; an interrupt does not wait for it. The work must
// change nothing.
func awaited[T any](ctx context.Context, work func() T) (T, error) {
	done, defect := make(chan T, 1), make(chan any, 1)
	go func() {
		defer func() {
			if value := recover(); value != nil {
				defect <- value
			}
		}()
		done <- work()
	}()
	select {
	case value := <-defect:
		panic(value)
	case result := <-done:
		return result, nil
	case <-ctx.Done():
		var none T
		return none, ErrInterrupted
	}
}
