package stations

import (
	"time"

	"dwellcast/sim"
)

// awaitTurn waits until the conveyor may index: no planned stop, no station standing, a carton for the first pitch, room
// behind the last, and the master at its zero if it never stops.
func (c *conveyor) awaitTurn(p *sim.Process) {
	for {
		c.awaitPlan(p)
		switch {
		case c.starved():
			c.awaitNeighbour(p, Starved)
		case c.blocked():
			c.awaitNeighbour(p, Blocked)
		case c.interr && c.standing() != nil:
			c.hold(Interlocked, c.standing().why)
			p.Park()
			c.release()
		case c.toZero() > 0:
			c.hold(Paced, c.sim.reasons.of(CamGate, -1, 0))
			p.Wait(c.toZero())
			c.release()
		default:
			return
		}
	}
}

// awaitPlan lets a planned stop pass, and never returns once the shift is over.
func (c *conveyor) awaitPlan(p *sim.Process) {
	now := c.sim.calendar.Now()
	if now < c.nextPlan {
		return
	}
	for w := c.sim.window(); w >= 0; w = c.sim.window() {
		c.hold(Planned, c.sim.reasons.of(PlannedStop, -1, w))
		p.WaitUntil(c.sim.Line.Shift.Planned[w].To)
		c.release()
	}
	c.sim.awaitProduction(p)
	c.nextPlan = c.sim.Line.Shift.nextPlanned(c.sim.calendar.Now())
}

func (c *conveyor) starved() bool {
	return c.infeed != nil && !c.spec.RunsEmpty && !c.infeed.CanTake(c.lanes)
}

func (c *conveyor) blocked() bool {
	if c.outfeed == nil {
		return false
	}
	n := present(c.pitch(c.pitches() - 1))
	return n > 0 && !c.outfeed.CanPut(n)
}

// toZero is the time to the next zero of a master that never stops; at the zero itself it is 0.
func (c *conveyor) toZero() time.Duration {
	if c.spec.Release != AtCamZero {
		return 0
	}
	past := c.sim.calendar.Now() % c.spec.Revolution
	if past == 0 {
		return 0
	}
	return c.spec.Revolution - past
}

// awaitNeighbour waits for cartons from the buffer before, or for room in the one behind.
func (c *conveyor) awaitNeighbour(p *sim.Process, state State) {
	c.hold(state, 0)
	if state == Starved {
		c.infeed.Await(p, c.lanes)
	} else {
		c.outfeed.AwaitRoom(p, present(c.pitch(c.pitches()-1)))
	}
	c.release()
}

// hold begins a wait of the whole conveyor.
func (c *conveyor) hold(state State, why Reason) {
	c.endSure()
	c.state, c.why, c.since = state, why, c.sim.calendar.Now()
	if state == Starved || state == Blocked {
		c.sim.blame.begin(&c.wait, state)
	}
	c.sim.blame.changed(c.section)
}

// release ends it.
func (c *conveyor) release() {
	c.settleWait(c.sim.calendar.Now())
	waited := c.state == Starved || c.state == Blocked
	c.state, c.why = Paced, c.sim.setting
	if waited {
		c.sim.blame.end(&c.wait)
	}
	c.sim.blame.changed(c.section)
}

// settleWait accounts for the time that the whole conveyor has waited since the last change.
func (c *conveyor) settleWait(now time.Duration) {
	from := c.since
	if c.cycling || now <= from {
		return
	}
	c.since = now
	_, why := c.reason(1)
	for _, u := range c.units {
		state := c.state
		if len(u.standing) > 0 {
			state = u.standing[0].state()
		}
		u.spend(state, why, from, now)
	}
	if c.section == c.sim.pacedAt {
		c.loseWait(max(from, c.waitsFrom()), now, why)
	}
}

// loseWait notes a wait of the whole conveyor as lost, where the line is paced; what of it lies in planned stops is lost to them.
func (c *conveyor) loseWait(from, to time.Duration, why Reason) {
	if to <= from {
		return
	}
	lost := to - from
	if c.state.idle() {
		lost -= c.sim.losePlanned(from, to)
	}
	c.sim.Tally.Lost[why] += int64(lost)
}

// waitsFrom is the instant from which a wait is lost time: when the pace wanted the next cycle, or at once without a pace.
func (c *conveyor) waitsFrom() time.Duration {
	if c.paced {
		return c.due
	}
	return 0
}
