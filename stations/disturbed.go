package stations

import (
	"time"

	"dwellcast/sim"
)

// mark is a point in the progress of an act at which the station stands: for a stop, or because a material ran dry.
type mark struct {
	at    time.Duration
	stop  *stopClock
	store *store
}

// atEnd marks the end of the act.
const atEnd = never

// agendaByRunning notes the stops by running time that fall into this cycle; one that falls into the index waits for its end.
func (u *unit) agendaByRunning(index time.Duration) {
	end := u.ran + index + u.act
	for u.nextRun <= end {
		at := max(0, u.nextRun-u.ran-index)
		u.agenda = append(u.agenda, mark{at: at, stop: u.runStop()})
	}
	u.ran = end
}

// beginSteps prepares a cycle in which some station stands.
func (c *conveyor) beginSteps() {
	stands := c.begun + c.spec.Index
	for _, u := range c.units {
		u.progress, u.asOf, u.cleared = 0, stands, u.act == 0 && len(u.agenda) == 0
		if len(u.agenda) > 1 {
			sortMarks(u.agenda)
		}
	}
}

func sortMarks(marks []mark) {
	for i := 1; i < len(marks); i++ {
		for k := i; k > 0 && marks[k].at < marks[k-1].at; k-- {
			marks[k], marks[k-1] = marks[k-1], marks[k]
		}
	}
}

// step follows a disturbed cycle from mark to mark until every station is clear.
func (c *conveyor) step(p *sim.Process) {
	for {
		u, at := c.nextStep()
		switch {
		case u != nil:
			if woken := p.WaitOrWake(at); !woken {
				u.reach(p)
			}
		case c.standing() != nil:
			p.Park()
		default:
			return
		}
	}
}

// nextStep returns the station that next reaches a mark or the end of its act, the first in flow order if several do.
func (c *conveyor) nextStep() (next *unit, at time.Duration) {
	at = never
	for _, u := range c.units {
		if u.cleared || len(u.standing) > 0 {
			continue
		}
		if t := u.asOf + u.nextMark() - u.progress; t < at || next == nil {
			next, at = u, t
		}
	}
	return next, at
}

// nextMark is the progress at which the act is interrupted or ends.
func (u *unit) nextMark() time.Duration {
	if len(u.agenda) > 0 {
		return min(u.agenda[0].at, u.act)
	}
	return u.act
}

// reach lets the station's act come to its next mark: it stands, or is clear.
func (u *unit) reach(p *sim.Process) {
	u.progress, u.asOf = u.nextMark(), u.calendar.Now()
	if len(u.agenda) == 0 {
		u.cleared = true
		u.clear = u.calendar.Now()
		u.belt.cleared(u)
		return
	}
	m := u.agenda[0]
	u.agenda = append(u.agenda[:0], u.agenda[1:]...)
	if m.store != nil {
		m.store.lacking(p)
		return
	}
	u.lostOnBelt(m.stop)
	u.stop(m.stop, p)
	if m.stop.spec.Repeat && m.at != atEnd {
		u.act += u.progress
	}
}

// cleared notes which station was the last to report clear.
func (c *conveyor) cleared(u *unit) {
	if u.clear >= c.allClear {
		c.allClear, c.last = u.clear, u
	}
}

// lostOnBelt scraps the cartons that a stop costs: those before the station, then the next ones behind.
func (u *unit) lostOnBelt(s *stopClock) {
	n := s.spec.Scrap
	for at := u.at; at >= 0; at-- {
		pitch := u.belt.pitch(at)
		for i := range pitch {
			if n > 0 && pitch[i].present() {
				u.scrap(&pitch[i], s.why)
				n--
			}
		}
	}
}

// beforeChange brings the account and the progress of the unit up to now, before a stop of it begins or ends.
func (u *unit) beforeChange() {
	now := u.calendar.Now()
	if u.belt == nil {
		u.settle(now)
		return
	}
	u.belt.settleWait(now)
	if u.belt.cycling && !u.cleared && len(u.standing) == 0 && now > u.asOf {
		u.progress += now - u.asOf
		u.asOf = now
	}
}
