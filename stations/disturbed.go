package stations

import (
	"time"

	"dwellcast/sim"
)

// countRunning lets the running time of an undisturbed cycle pass.
func (c *conveyor) countRunning() {
	for _, u := range c.units {
		if u.loaded && u.byRunning {
			u.ran += c.spec.Index + u.act
		}
	}
}

// beginSteps prepares a cycle in which some station stands.
func (c *conveyor) beginSteps() {
	for _, u := range c.units {
		u.progress, u.asOf, u.cleared, u.done = 0, c.begun+c.spec.Index, false, never
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
func (c *conveyor) nextStep() (next *beltUnit, at time.Duration) {
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

// nextMark is the progress at which the act is interrupted or ends. A stop by running time that falls into the index waits
// for its end.
func (u *beltUnit) nextMark() time.Duration {
	switch {
	case u.short:
		return u.progress
	case u.loaded && u.byRunning:
		return min(u.act, max(u.progress, u.nextRun-u.ran-u.belt.spec.Index))
	}
	return u.act
}

// reach lets the station's act come to its next mark: it stands, or is clear.
func (u *beltUnit) reach(p *sim.Process) {
	u.progress, u.asOf = u.nextMark(), u.sim.calendar.Now()
	switch {
	case u.short:
		u.restockOnBelt(p)
	case u.loaded && u.byRunning && u.nextRun <= u.ran+u.belt.spec.Index+u.progress:
		c := u.runStop()
		u.lostOnBelt(c)
		s := u.stop(c, p)
		if c.spec.Repeat {
			u.startAgain(s, c)
		}
	case len(u.agenda) > 0:
		c := u.agenda[0]
		u.agenda = append(u.agenda[:0], u.agenda[1:]...)
		u.lostOnBelt(c)
		u.stop(c, p)
	default:
		u.finish()
	}
}

// startAgain lets a stop make the act start again: what was done of it was in vain.
func (u *beltUnit) startAgain(s *stand, c *stopClock) {
	s.again, s.restarts, s.closes = u.progress+u.whole-u.act, true, u.closes
	if c.spec.Afresh {
		u.whole = u.drawAct(u.tries)
		if u.spec.Away > 0 {
			u.whole = min(u.whole, u.spec.Away)
		}
	}
	u.act = u.progress + u.whole
}

// restockOnBelt stands the station for the first material that has run dry, if any has.
func (u *beltUnit) restockOnBelt(p *sim.Process) {
	for i := range u.stores {
		if u.stores[i].lacking(p) {
			return
		}
	}
	u.short = false
}

// finish ends the act of a disturbed cycle.
func (u *beltUnit) finish() {
	now := u.sim.calendar.Now()
	u.cleared, u.clear, u.done = true, now, now
	if u.loaded && u.byRunning {
		u.ran += u.belt.spec.Index + u.act
	}
	u.belt.cleared(u)
}

// cleared notes which station was the last to report clear, the first in flow order of several.
func (c *conveyor) cleared(u *beltUnit) {
	if u.clear > c.allClear {
		c.allClear, c.last = u.clear, u
	}
}

// beginLate notes a stop that holds up the next index though the station was clear.
func (c *conveyor) beginLate(u *beltUnit) {
	if !c.cycling || !u.cleared {
		return
	}
	if c.late == nil {
		c.lateFrom = c.sim.calendar.Now()
	}
	c.late, c.lateTo = u, never
}

// lostOnBelt scraps the cartons that a stop costs: those before the station, then the next ones behind.
func (u *beltUnit) lostOnBelt(s *stopClock) {
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
	if u.section == 0 && u.at == 0 {
		u.owe(n, s.why)
	}
}
