package stations

import "time"

// account closes n equal cycles that end at end: the state of every station, the time lost, and the cartons that leave.
// A cycle that the end of the shift cuts short ends before the conveyor is ready.
func (c *conveyor) account(end time.Duration, n int64) {
	steps := c.disturbed || c.sim.Trace != nil || end > c.nextPlan
	for _, u := range c.units {
		if steps {
			c.accountSteps(u, end)
		} else {
			c.accountPlain(u, end, n)
		}
	}
	if c.section == c.sim.pacedAt {
		c.accountLost(end, n)
	}
	if end == c.ready {
		c.countCycles(n)
	}
	c.takeOff(end, n)
	c.cycling = false
	c.since = end
}

// accountPlain splits n cycles without stops: index and act, then waiting for the others, then for pace or master.
func (c *conveyor) accountPlain(u *beltUnit, end time.Duration, n int64) {
	if !u.loaded {
		u.charge(Starved, u.belt.pitch(u.at)[0].why, time.Duration(n)*(end-c.begun))
		return
	}
	clear, all := min(u.clear, end), min(c.allClear, end)
	u.states[Working] += n * int64(clear-c.begun)
	u.states[Interlocked] += n * int64(all-clear)
	u.states[Paced] += n * int64(end-all)
}

// accountSteps goes through a cycle stretch by stretch: the stops of the station, of which the first counts where several
// overlap, and what lies between them.
func (c *conveyor) accountSteps(u *beltUnit, end time.Duration) {
	at := c.begun
	for _, s := range u.stands {
		from, to := max(at, s.from), min(end, s.to)
		if to <= from {
			continue
		}
		c.accountRunning(u, at, from)
		arrived := min(max(from, s.arrived), to)
		if s.reload {
			u.spend(Reloading, s.why, from, to)
		} else {
			u.spend(Awaiting, s.why, from, arrived)
			u.spend(Clearing, s.why, arrived, to)
		}
		at = to
	}
	c.accountRunning(u, at, end)
}

// accountRunning splits a stretch in which the station doesn't stand: it works until its act is done, then waits.
func (c *conveyor) accountRunning(u *beltUnit, from, to time.Duration) {
	if !u.loaded {
		u.spend(Starved, u.belt.pitch(u.at)[0].why, from, to)
		return
	}
	done := min(max(from, u.done), to)
	all := min(max(done, c.allClear), to)
	u.spend(Working, u.slow, from, done)
	late := min(max(all, c.lateFrom), to)
	over := min(max(late, c.lateTo), to)
	u.spend(Interlocked, c.limit, done, all)
	u.spend(Paced, c.limit, all, late)
	u.spend(Interlocked, c.limit, late, over)
	u.spend(Paced, c.limit, over, to)
}

// accountLost charges the time beyond the pace: to the stops of the station that was last, to its act, to the master. Without
// a setting only the stops count: what acts take is the line's own pace.
func (c *conveyor) accountLost(end time.Duration, n int64) {
	all := min(c.allClear, end)
	if c.late != nil {
		c.lostLate(max(all, c.waitsFrom()), min(c.lateTo, end))
	}
	if !c.paced {
		if c.disturbed {
			c.last.lostStanding(c.begun, all)
		}
		return
	}
	if over := all - c.due; over > 0 {
		rest := over
		if c.disturbed {
			rest -= c.last.lostToStops(c.begun, all, over-c.last.longAct(c.begun, all, c.due-c.begun))
		}
		c.sim.Tally.Lost[c.last.slow] += n * int64(rest)
	}
	if c.master && c.limit == c.sim.slowMaster {
		if over := min(c.ready, end) - max(all, c.due); over > 0 {
			c.sim.Tally.Lost[c.sim.slowMaster] += n * int64(over)
		}
	}
}

// lostLate charges what stops after all were clear cost beyond them and the pace, to whichever lasts longest at each moment.
func (c *conveyor) lostLate(from, to time.Duration) {
	for at := max(from, c.lateFrom); at < to; {
		s := c.standAt(at)
		if s == nil {
			return
		}
		c.sim.Tally.Lost[s.why] += int64(min(s.to, to) - at)
		at = s.to
	}
}

// standAt is the stop of any station that lasts longest from a moment on, or else the next one to begin; nil where none comes.
func (c *conveyor) standAt(at time.Duration) *stand {
	var found *stand
	for _, u := range c.units {
		for _, s := range u.stands {
			if s.to > at && (found == nil || s.from <= at && (found.from > at || s.to > found.to) || found.from > at && s.from < found.from) {
				found = s
			}
		}
	}
	return found
}

// longAct is by how much the act alone, without the stops in it and what they made it do again, outlasts the pace.
func (u *beltUnit) longAct(begun, end, pace time.Duration) time.Duration {
	return max(0, end-begun-u.stoodWithin(begun, end)-u.doneAgain()-pace)
}

// doneAgain is how much of the act was in vain, since a stop made it start again.
func (u *beltUnit) doneAgain() time.Duration {
	var sum time.Duration
	for _, s := range u.stands {
		sum += s.again
	}
	return sum
}

// stoodWithin is how long the unit stood between two instants, stops that overlap counted once.
func (u *beltUnit) stoodWithin(from, to time.Duration) time.Duration {
	var sum time.Duration
	for _, s := range u.stands {
		if begin, end := max(from, s.from), min(to, s.to); end > begin {
			sum += end - begin
			from = end
		}
	}
	return sum
}

// lostToStops charges so much of the time between two instants to the stops in it, the last ones first, each with what it lasted and made
// the act do again at the most: without them the act would have ended in time. It returns what was charged.
func (u *beltUnit) lostToStops(from, to, lost time.Duration) time.Duration {
	var charged time.Duration
	for i := len(u.stands) - 1; i >= 0 && charged < lost; i-- {
		s, begin := u.stands[i], from
		for _, earlier := range u.stands[:i] { // of stops that overlap the first counts
			begin = max(begin, min(earlier.to, to))
		}
		begin = max(begin, s.from)
		d := min(max(0, min(to, s.to)-begin)+s.again, lost-charged)
		u.sim.Tally.Lost[s.why] += int64(d)
		charged += d
	}
	return charged
}

// lostStanding charges the time between two instants in which the unit stood, and returns it.
func (u *beltUnit) lostStanding(from, to time.Duration) time.Duration {
	var sum time.Duration
	for _, s := range u.stands {
		if begin, end := max(from, s.from), min(to, s.to); end > begin {
			u.sim.Tally.Lost[s.why] += int64(end - begin)
			sum += end - begin
			from = end
		}
	}
	return sum
}

func (c *conveyor) countCycles(n int64) {
	c.sim.Tally.Cycles[c.section] += n
	switch c.limit {
	case c.sim.setting:
		c.sim.blame.caughtUp(c.section)
		c.sim.Tally.PacedCycles[c.section] += n
	case c.sim.slowMaster:
		c.sim.Tally.MasterCycles[c.section] += n
	default:
		last := c.last
		if c.late != nil && c.lateTo >= c.ready {
			last = c.late
		}
		last.count(LastClear, n)
	}
}

// takeOff lets cartons leave the conveyor at its stations: rejects where they are ejected, all at the end of the line.
func (c *conveyor) takeOff(end time.Duration, n int64) {
	for _, u := range c.outlets {
		if len(u.stores) > 0 && u.loaded {
			c.use(u, int(n))
		}
		last := c.ends && u == c.units[len(c.units)-1]
		if !u.loaded || !last && !u.spec.Ejects || u.clear > end {
			continue
		}
		pitch := c.pitch(u.at)
		for i := range pitch {
			place := &pitch[i]
			if place.kind == reject || last && place.kind == good {
				c.sim.leave(c.section, *place)
				*place = carton{why: place.why}
			}
		}
	}
}

// use takes from the stores what the cartons of n acts need.
func (c *conveyor) use(u *beltUnit, n int) {
	for i := range u.stores {
		u.stores[i].use(n * u.handled)
	}
}

// close accounts for the cycle, or the wait, that the end of the shift cuts short.
func (c *conveyor) close(end time.Duration) {
	c.settle(end)
	if !c.cycling {
		c.settleWait(end)
		return
	}
	for _, u := range c.units {
		switch {
		case c.disturbed && !u.cleared:
			c.allClear, c.ready, c.last = never, never, u
			u.clear = never
		case len(u.standing) > 0:
			c.late, c.lateTo, c.ready = u, never, never
		}
	}
	c.closeGlue(end)
	c.account(end, 1)
}
