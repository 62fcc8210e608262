package stations

import (
	"errors"
	"fmt"
	"strings"
	"time"

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
	return s.standstill()
}

// standstill says what each section waits for.
func (s *Simulation) standstill() *StuckError {
	var last time.Duration
	for _, w := range s.blame.waits {
		last = max(last, w.since)
	}
	stuck := &StuckError{At: last.String()}
	for k, sec := range s.sections {
		state, why := sec.reason(1)
		cause := s.reasons.list[why]
		stuck.Does = append(stuck.Does, fmt.Sprintf("%s is %s (%s: %s)", s.Line.Stations[s.first[k]].Name, state, cause.Where, cause.What))
	}
	return stuck
}

// stuck says that at the end of a run, before which no planned stop lay, each section waits for another and no carton is under
// way between them. Stops by the calendar clock go on in such a line, so that its calendar is never empty. Who was cleared at the very end
// had no time to go on.
func (s *Simulation) stuck(end time.Duration) bool {
	if s.Line.Shift.window(end-1) >= 0 || s.clearedAt == end {
		return false
	}
	for k, sec := range s.sections {
		if state, _ := sec.reason(1); state != Starved && state != Blocked {
			return false
		}
		if b := s.buffers[k]; b != nil && b.Coming(end) {
			return false
		}
	}
	return true
}

// movable finds lines that could never move a carton on.
func (l *Line) movable(groups []Group) error {
	for i := range l.Stations {
		if m := &l.Stations[i].Miss; m.Tries == Endless && m.Chance >= 1 {
			return fmt.Errorf("%s: every act misses and is tried again without end; give a chance below 1 or a number of tries", l.Stations[i].Name)
		}
	}
	for k, g := range groups {
		st := &l.Stations[g.First]
		if k == 0 || g.Conveyor < 0 || !l.Conveyors[g.Conveyor].RunsEmpty || st.Feed.Buffer.Capacity != 0 {
			continue
		}
		if before := groups[k-1]; before.Conveyor >= 0 || st.Feed.Buffer.Transit > 0 || l.Stations[before.First].StandLimit > 0 {
			return fmt.Errorf("%s: a conveyor that runs empty waits for no carton, so nothing passes a buffer of 0 before it; give it a capacity", st.Name)
		}
	}
	return nil
}
