package stations

import (
	"time"

	"dwellcast/sim"
)

// work is one act on the carton in hand: tries until it succeeds or is given up, the stops that it brings, and how the
// carton comes out of it.
func (u *soloUnit) work(p *sim.Process) {
	if u.bare {
		p.Wait(u.draw())
		u.count(Acts, 1)
		if u.holding.id == 0 {
			u.holding = u.sim.newCarton()
		}
		return
	}
	tries, gaveUp := u.attempt()
	for range tries {
		if u.holding.present() {
			u.pass(p, u.draw())
		}
	}
	u.count(Acts, 1)
	u.stopByCartons(p)
	switch {
	case !u.holding.present():
	case !gaveUp:
		u.succeed(&u.holding)
	case u.afterMisses != nil:
		u.stopHere(p, u.afterMisses)
		if u.holding.present() {
			u.succeed(&u.holding)
		}
	default:
		u.miss(&u.holding)
	}
	for i := range u.stores {
		u.stores[i].use(1)
	}
}

// pass lets an act of length d pass, with the stops that fall into it.
func (u *soloUnit) pass(p *sim.Process, d time.Duration) {
	u.again = nil
	if !u.byRunning && !u.byClock {
		p.Wait(d)
		return
	}
	left := d
	for {
		u.awaitCleared(p)
		if !u.holding.present() { // lost in a stop by the clock
			return
		}
		if u.again != nil {
			u.delay(u.again.why, d-left)
			d = u.over(u.again, d)
			left, u.again = d, nil
		}
		start := u.sim.calendar.Now()
		p.WaitOrWake(start + min(left, u.nextRun-u.ran))
		done := u.sim.calendar.Now() - start
		u.ran += done
		left -= done
		if u.ran == u.nextRun {
			c := u.runStop()
			u.stopHere(p, c)
			if c.spec.Repeat {
				u.delay(c.why, d-left)
				d = u.over(c, d)
				left = d
			}
			if !u.holding.present() {
				return
			}
			continue
		}
		if left == 0 {
			return
		}
	}
}

// over is how long an act takes, once a stop has made it start again.
func (u *soloUnit) over(c *stopClock, before time.Duration) time.Duration {
	if c.spec.Afresh {
		return u.draw()
	}
	return before
}

// stopHere makes the unit stand for one stop, and loses the cartons that it costs.
func (u *soloUnit) stopHere(p *sim.Process, c *stopClock) {
	u.lostToStop(c)
	s := u.stop(c, p)
	for s.to == never {
		p.Park()
	}
}

func (u *soloUnit) awaitCleared(p *sim.Process) {
	for len(u.standing) > 0 {
		p.Park()
	}
}

func (u *soloUnit) stopByCartons(p *sim.Process) {
	for i := range u.stops {
		c := &u.stops[i]
		if c.spec.Trigger == ByCartons && c.acts.Hit() {
			u.stopHere(p, c)
		}
	}
}

// lostToStop scraps the carton in hand and, if the stop costs more, the next ones waiting.
func (u *soloUnit) lostToStop(c *stopClock) {
	n := c.spec.Scrap
	if n > 0 && u.holding.present() {
		u.scrap(&u.holding, c.why)
		n--
	}
	infeed := u.sim.buffers[u.section]
	for ; n > 0 && infeed != nil && infeed.CanTake(1); n-- {
		next := infeed.Remove()
		u.scrap(&next, c.why)
	}
	if infeed == nil {
		u.owe(n, c.why)
	}
}

// restock stands the unit until every material it needs is there.
func (u *soloUnit) restock(p *sim.Process) {
	for i := range u.stores {
		for u.stores[i].lacking(p) {
			p.Park()
		}
	}
}
