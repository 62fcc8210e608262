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
