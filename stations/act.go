package stations

import (
	"time"

	"dwellcast/sim"
)

// set puts the unit, which runs on its own, into a new state; for a wait the reason is found along the line.
func (u *unit) set(state State, why Reason) {
	u.settle(u.sim.calendar.Now())
	if state == u.state && why == u.why && state == Working {
		return
	}
	waited := u.state == Starved || u.state == Blocked
	u.state, u.why = state, why
	if waited {
		u.sim.blame.end(&u.wait)
	}
	if state == Starved || state == Blocked {
		u.sim.blame.begin(&u.wait, state)
	}
	u.sim.blame.changed(u.section)
}

// doing is what the unit does now: a stop or a lack of material comes before what it would be doing otherwise.
func (u *unit) doing() (State, Reason) {
	if len(u.standing) > 0 {
		s := u.standing[0]
		return s.state(), s.why
	}
	if u.state == Starved || u.state == Blocked {
		return u.state, u.wait.root
	}
	return u.state, u.why
}

// settle accounts for the time since the last change of a unit that runs on its own.
func (u *unit) settle(now time.Duration) {
	from := u.since
	if now <= from {
		return
	}
	u.since = now
	state, why := u.doing()
	u.spend(state, why, from, now)
	if u.section == u.sim.pacedAt {
		u.lose(from, now, why, state.idle())
	}
}

// spend accounts for a stretch of time in one state; what of a wait lies in planned stops is planned time.
func (u *unit) spend(state State, why Reason, from, to time.Duration) {
	if state.idle() {
		for i := range u.sim.Line.Shift.Planned {
			w := &u.sim.Line.Shift.Planned[i]
			if w.To <= from || w.From >= to {
				continue
			}
			u.stretch(state, why, from, w.From)
			u.stretch(Planned, why, max(from, w.From), min(to, w.To))
			from = min(to, w.To)
		}
	}
	u.stretch(state, why, from, to)
}

// stretch charges a stretch of time, if it is one, and tells of it.
func (u *unit) stretch(state State, why Reason, from, to time.Duration) {
	if to <= from {
		return
	}
	u.charge(state, why, to-from)
	if u.sim.Trace != nil {
		u.sim.Trace(Stretch{u.spec.Name, u.number, int(u.id), state, from, to})
	}
}

// charge adds time to a state, and a wait to what caused it.
func (u *unit) charge(state State, why Reason, d time.Duration) {
	u.states[state] += int64(d)
	switch state {
	case Starved:
		u.sim.Tally.Starved[u.station*len(u.sim.reasons.list)+int(why)] += int64(d)
	case Blocked:
		u.sim.Tally.Blocked[u.station*len(u.sim.reasons.list)+int(why)] += int64(d)
	}
}

// lose notes time beyond the pace as lost, where the line is paced. Without a setting all time not spent in acts is lost. What an act
// takes beyond the pace since stops made it late is lost to them.
func (u *unit) lose(from, to time.Duration, why Reason, planned bool) {
	if !planned && why != u.slow {
		u.delay(why, min(to, u.due)-from)
	}
	from = max(from, u.due)
	if to <= from || u.sim.Line.Setting == 0 && why == u.slow {
		return
	}
	lost := to - from
	if planned {
		lost -= u.sim.losePlanned(from, to)
	}
	if why == u.slow {
		lost -= u.loseLate(lost)
	}
	u.sim.Tally.Lost[why] += int64(lost)
}

// losePlanned charges what of a time lies in planned stops, to each its own, and returns it.
func (s *Simulation) losePlanned(from, to time.Duration) time.Duration {
	var sum time.Duration
	for i, w := range s.Line.Shift.Planned {
		if d := min(to, w.To) - max(from, w.From); d > 0 {
			s.Tally.Lost[s.reasons.of(PlannedStop, -1, i)] += int64(d)
			sum += d
		}
	}
	return sum
}

// work is one act on the carton in hand: tries until it succeeds or is given up, the stops that it brings, and how the
// carton comes out of it.
func (u *unit) work(p *sim.Process) {
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

// attempt draws how many tries an act needs, and whether the last of them failed too.
func (u *unit) attempt() (tries int, gaveUp bool) {
	tries = 1
	for u.misses.Hit() {
		if u.spec.Miss.Tries != Endless && tries >= u.spec.Miss.Tries {
			return tries, true
		}
		tries++
	}
	return tries, false
}

// pass lets an act of length d pass, with the stops that fall into it.
func (u *unit) pass(p *sim.Process, d time.Duration) {
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
			d = u.over(u.again, d, 1)
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
				d = u.over(c, d, 1)
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

// over is how long an act of so many tries takes, once a stop has made it start again.
func (u *unit) over(c *stopClock, before time.Duration, tries int) time.Duration {
	if !c.spec.Afresh {
		return before
	}
	var act time.Duration
	for try := range tries {
		act += u.draw()
		if try == 0 {
			u.closes = u.closed
		}
	}
	if u.belt != nil && u.spec.Away > 0 {
		act = min(act, u.spec.Away)
	}
	return act
}

// stopHere makes the unit stand for one stop, and loses the cartons that it costs.
func (u *unit) stopHere(p *sim.Process, c *stopClock) {
	u.lostToStop(c)
	s := u.stop(c, p)
	for s.to == never {
		p.Park()
	}
}

func (u *unit) awaitCleared(p *sim.Process) {
	for len(u.standing) > 0 {
		p.Park()
	}
}

func (u *unit) stopByCartons(p *sim.Process) {
	for i := range u.stops {
		c := &u.stops[i]
		if c.spec.Trigger == ByCartons && c.acts.Hit() {
			u.stopHere(p, c)
		}
	}
}

// lostToStop scraps the carton in hand and, if the stop costs more, the next ones waiting.
func (u *unit) lostToStop(c *stopClock) {
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

// owe notes that a stop at the head of the line costs more cartons than are there: the next ones made are lost too.
func (u *unit) owe(n int, why Reason) {
	for range n {
		u.owed = append(u.owed, why)
	}
}

// scrap loses a carton, or a blank that never became one.
func (u *unit) scrap(c *carton, why Reason) {
	if c.id == 0 {
		u.sim.newCarton()
	}
	*c = carton{why: why}
	u.sim.flow(Scrapped, 1)
	u.sim.gone(u.section, why, 1)
}

// miss is an act given up: it leaves no carton, or one that is not good, or loses it.
func (u *unit) miss(c *carton) {
	u.count(Misses, 1)
	switch {
	case c.id == 0: // the blank was not picked
		*c = carton{why: u.missed}
		u.sim.gone(u.section, u.missed, 1)
	case u.spec.Kind == Offload:
		u.scrap(c, u.missed)
	case c.kind == good:
		c.kind, c.why = reject, u.missed
	}
}

// succeed turns a blank into a carton, and may leave it not good.
func (u *unit) succeed(c *carton) {
	if c.id == 0 {
		*c = u.sim.newCarton()
	}
	if len(u.owed) > 0 {
		u.scrap(c, u.owed[0])
		u.owed = append(u.owed[:0], u.owed[1:]...)
		return
	}
	if u.spoils.Hit() && c.kind == good {
		c.kind, c.why = reject, u.rejected
		u.count(Rejects, 1)
	}
}

// restock stands the unit until every material it needs is there.
func (u *unit) restock(p *sim.Process) {
	for i := range u.stores {
		for u.stores[i].lacking(p) {
			p.Park()
		}
	}
}

// meanAct is the mean length of an act, without misses.
func (u *unit) meanAct() time.Duration {
	var sum time.Duration
	for _, part := range u.spec.Parts {
		sum += part.Time.Mean()
	}
	return sum
}
