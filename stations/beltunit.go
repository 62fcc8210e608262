package stations

import (
	"time"

	"dwellcast/sim"
)

// beltUnit is a unit on a conveyor, with what it does in the present cycle.
type beltUnit struct {
	unit
	belt *conveyor
	at   int // its place, counted in pitches from the head

	act      time.Duration // length of this cycle's act, repeated parts included
	whole    time.Duration // length of the act without repeats
	tries    int           // that it takes
	progress time.Duration // of the act, when the cycle is disturbed
	asOf     time.Duration
	short    bool          // some material may have run dry before the act
	agenda   []*stopClock  // stops at the end of the act
	done     time.Duration // when its act ended
	clear    time.Duration // when it reports clear; the act's end in an undisturbed cycle
	loaded   bool          // a carton stands before it
	handled  int           // cartons of this act that use up materials
	cleared  bool
	closes   time.Duration   // of this cycle's act until its glue is closed
	laid     int             // how many cycles before its glue was laid
	robots   []time.Duration // when each parallel robot is back
	stands   []*stand        // stops that fall into this cycle, in the order in which they began
}

func newBeltUnit(c *conveyor, station, at int) *beltUnit {
	u := &beltUnit{unit: newUnit(c.sim, station, 0, c.section), belt: c, at: at}
	u.take(u)
	u.robots = make([]time.Duration, u.spec.Units)
	return u
}

func (u *beltUnit) reset() {
	u.unit.reset()
	u.stands, u.agenda = u.stands[:0], u.agenda[:0]
	u.clear, u.done, u.act, u.loaded, u.cleared = 0, 0, 0, false, true
	clear(u.robots)
}

// drawAct draws an act of so many tries, the first of which closes what is glued.
func (u *beltUnit) drawAct(tries int) time.Duration {
	var act time.Duration
	for try := range tries {
		act += u.draw()
		if try == 0 {
			u.closes = u.closed
		}
	}
	return act
}

func (u *beltUnit) beforeChange() {
	now := u.sim.calendar.Now()
	u.belt.settleWait(now)
	if u.belt.cycling && !u.cleared && len(u.standing) == 0 && now > u.asOf {
		u.progress += now - u.asOf
		u.asOf = now
	}
}

func (u *beltUnit) begins(s *stand) {
	u.stands = append(u.stands, s)
	u.belt.beginLate(u)
}

func (u *beltUnit) goesOn() {
	now := u.sim.calendar.Now()
	u.asOf = max(u.asOf, now)
	if u.belt.cycling && u.cleared {
		u.belt.late, u.belt.lateTo = u, now
	}
}

func (u *beltUnit) interrupt(c *stopClock, wake *sim.Process) *stand {
	u.beforeChange()
	u.lostOnBelt(c)
	s := u.stop(c, wake)
	if c.spec.Repeat && u.belt.cycling && !u.cleared {
		u.startAgain(s, c)
	}
	return s
}
