package stations

import (
	"errors"
	"fmt"
	"strings"

	"dwellcast/sim"
)

// StuckError says that a line can't move on: each section waits for another, or something goes on without taking time.
type StuckError struct {
	At   string
	Does []string // what each section waits for
	// Endless names what goes on for ever at one instant; empty when the sections wait for each other.
	Endless string
}

// Error explains the standstill, section by section.
func (e *StuckError) Error() string {
	if e.Endless != "" {
		return fmt.Sprintf("time stands still at %s: %s goes on for ever without taking time; give its act, stop or reload a time", e.At, e.Endless)
	}
	return fmt.Sprintf("the line comes to a standstill for good after %s: %s", e.At, strings.Join(e.Does, "; "))
}

func (s *Simulation) explain(err error) error {
	if fault := (*sim.Fault)(nil); errors.As(err, &fault) && errors.Is(err, sim.ErrEndless) {
		return &StuckError{At: fault.At.String(), Endless: fault.Process}
	}
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
