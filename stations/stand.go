package stations

import (
	"time"

	"dwellcast/sim"
)

// stand is one stop of a unit, from the moment it stands until it is cleared, or one wait for a material that ran dry.
type stand struct {
	why     Reason
	reload  bool
	from    time.Duration
	arrived time.Duration // when the clearing began, or never
	to      time.Duration // when it was cleared, or never
	again   time.Duration // how much of an act on a conveyor it made start again
	// restarts says that it made an act on a conveyor start again, closes how much of that closed its glue.
	restarts bool
	closes   time.Duration
}

func (s *stand) state() State {
	switch {
	case s.reload:
		return Reloading
	case s.arrived == never:
		return Awaiting
	}
	return Clearing
}

// stop makes the unit stand and calls the crew; wake is woken when it is cleared.
func (u *unit) stop(c *stopClock, wake *sim.Process) *stand {
	s := u.beginStand(c.why, false)
	call := &sim.Call{Work: c.clear.Next()}
	call.Arrived = func() {
		u.role.beforeChange()
		s.arrived = u.sim.calendar.Now()
		u.sim.blame.changed(u.section)
	}
	call.Done = func() { u.endStand(s, wake) }
	if c.spec.Unattended {
		u.sim.machines.Call(call)
	} else {
		call.Reaction = u.react.Next()
		u.sim.crew.Call(call)
	}
	return s
}

func (u *unit) beginStand(why Reason, reload bool) *stand {
	u.role.beforeChange()
	s := &stand{why: why, reload: reload, from: u.sim.calendar.Now(), arrived: never, to: never}
	u.standing = append(u.standing, s)
	u.role.begins(s)
	u.sim.Tally.Stops[why]++
	u.sim.blame.heldUp(u.section, why)
	u.sim.blame.changed(u.section)
	return s
}

func (u *unit) endStand(s *stand, wake *sim.Process) {
	u.role.beforeChange()
	now := u.sim.calendar.Now()
	s.to = now
	u.sim.clearedAt = now
	u.account(s)
	for i := range u.standing {
		if u.standing[i] == s {
			u.standing = append(u.standing[:i], u.standing[i+1:]...)
			break
		}
	}
	if len(u.standing) == 0 {
		u.role.goesOn()
	}
	u.sim.blame.changed(u.section)
	if wake != nil {
		wake.Wake()
	}
}

// account adds the stand's times to the account of its cause.
func (u *unit) account(s *stand) {
	arrived := min(s.arrived, s.to)
	u.sim.Tally.Awaited[s.why] += int64(arrived - s.from)
	u.sim.Tally.Cleared[s.why] += int64(s.to - arrived)
}

// closeStands accounts for the stops that the end of the shift cuts short.
func (u *unit) closeStands(end time.Duration) {
	for _, s := range u.standing {
		if s.to == never {
			s.to = end
			u.account(s)
			s.to = never
		}
	}
}

// startClocks starts a process for each stop by the calendar clock: it runs on whatever the unit does.
func (u *unit) startClocks() {
	for i := range u.stops {
		c := &u.stops[i]
		if c.spec.Trigger != ByClock {
			continue
		}
		u.sim.calendar.Start(u.name+" "+c.spec.Cause, func(p *sim.Process) {
			for {
				p.Wait(c.every.Next())
				s := u.role.interrupt(c, p)
				u.process.Wake()
				for s.to == never {
					p.Park()
				}
				u.process.Wake()
			}
		})
	}
}
