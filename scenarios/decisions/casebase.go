package decisions

import (
	"fmt"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// baseOf returns exactly n shifts of the base. Each number is kept apart, so that a comparison that was interrupted can still look
// at fewer when it goes on.
func (c *comparing) baseOf(n int) (*scenarios.Shifts, error) {
	shifts, err := c.lab.Variant(c.base, fmt.Sprintf("unchanged, %d shifts", n), func(*stations.Line) {})
	if err != nil {
		return nil, err
	}
	return shifts, c.extend(shifts, n)
}

// chunk is how many shifts are run between two tellings of progress.
const chunk = 100

func (c *comparing) extend(shifts *scenarios.Shifts, n int) error {
	for at := 0; at < n; at = min(at+chunk, n) {
		to := min(at+chunk, n)
		interrupted, err := shifts.Extend(c.ctx, to)
		if err != nil {
			return err
		}
		if interrupted {
			return ErrInterrupted
		}
		c.done += to - at
		if c.spec.Progress != nil {
			c.spec.Progress(c.done, c.total)
		}
	}
	return nil
}
