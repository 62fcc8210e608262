package stations

import (
	"errors"
	"fmt"
	"strings"

	"dwellcast/sim"
)

// StuckError says that a line can't move on: each section waits for another.
type StuckError struct {
	At   string
	Does []string // what each section waits for
}

// Error explains the standstill, section by section.
func (e *StuckError) Error() string {
	return fmt.Sprintf("the line comes to a standstill for good after %s: %s", e.At, strings.Join(e.Does, "; "))
}

func (s *Simulation) explain(err error) error {
	if !errors.Is(err, sim.ErrStuck) {
		return err
	}
	stuck := &StuckError{At: s.calendar.Now().String()}
	for k, sec := range s.sections {
		state, why := sec.reason(1)
		cause := s.reasons.list[why]
		stuck.Does = append(stuck.Does, fmt.Sprintf("%s is %s (%s: %s)", s.Line.Stations[s.first[k]].Name, state, cause.Where, cause.What))
	}
	return stuck
}
