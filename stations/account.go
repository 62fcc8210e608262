package stations

import "time"

// account closes n equal cycles that end at end: the state of every station, the time lost, and the cartons that leave.
// A cycle that the end of the shift cuts short ends before the conveyor is ready.
func (c *conveyor) account(end time.Duration, n int64) {
	for _, u := range c.units {
		if c.disturbed {
			c.accountDisturbed(u, end)
		} else {
			c.accountPlain(u, end, n)
		}
	}
	if c.section == c.Simulation.paced {
		c.accountLost(end, n)
	}
	if end == c.ready {
		c.countCycles(n)
	}
	c.takeOff(end, n)
	c.cycling = false
	c.since = end
}

// accountPlain splits a cycle without stops: index and act, then waiting for the others, then for pace or master.
func (c *conveyor) accountPlain(u *unit, end time.Duration, n int64) {
	if !u.loaded {
		u.chargeEmpty(end-c.begun, n)
		u.trace(Starved, c.begun, end)
		return
	}
	clear, all := min(u.clear, end), min(c.allClear, end)
	u.states[Working] += n * int64(clear-c.begun)
	u.states[Interlocked] += n * int64(all-clear)
	u.states[Paced] += n * int64(end-all)
	if end > c.nextPlan {
		c.planIdle(u, clear, all, end)
	}
	if u.Trace != nil {
		u.trace(Working, c.begun, clear)
		u.trace(Interlocked, clear, all)
		u.trace(Paced, all, end)
	}
}

// planIdle turns waiting that reaches into a planned stop into planned time.
func (c *conveyor) planIdle(u *unit, clear, all, end time.Duration) {
	if p := int64(c.Line.Shift.overlap(clear, all)); p > 0 {
		u.states[Interlocked] -= p
		u.states[Planned] += p
	}
	if p := int64(c.Line.Shift.overlap(all, end)); p > 0 {
		u.states[Paced] -= p
		u.states[Planned] += p
	}
}

// chargeEmpty accounts for a station with nothing before it, to whatever left the pitch empty.
func (u *unit) chargeEmpty(d time.Duration, n int64) {
	u.states[Starved] += n * int64(d)
	why := u.belt.pitch(u.at)[0].why
	u.Tally.Starved[u.station*len(u.reasons.list)+int(why)] += n * int64(d)
}

// accountDisturbed splits a cycle in which the station, or another, stood.
func (c *conveyor) accountDisturbed(u *unit, end time.Duration) {
	stood := u.stoodTime(c.begun, end)
	if !u.loaded {
		u.chargeEmpty(end-c.begun-stood, 1)
		u.trace(Starved, c.begun, end)
		return
	}
	if !u.cleared && len(u.standing) == 0 && end > u.asOf {
		u.progress += end - u.asOf // cut short by the end of the shift
	}
	worked := min(end-c.begun, c.spec.Index+u.progress)
	paced := end - min(end, c.allClear)
	waited := end - c.begun - stood - worked - paced
	if waited < 0 { // a stop by the clock fell into the index or the pace
		paced = max(0, paced+waited)
		waited = end - c.begun - stood - worked - paced
	}
	if waited < 0 {
		worked += waited
		waited = 0
	}
	u.states[Working] += int64(worked)
	u.states[Interlocked] += int64(waited)
	u.states[Paced] += int64(paced)
	u.trace(Working, c.begun, c.begun+worked)
	u.trace(Interlocked, c.begun+worked+stood, c.begun+worked+stood+waited)
	u.trace(Paced, end-paced, end)
}

// stoodTime accounts for the stops of a unit between from and to, and returns their length; where two overlap the earlier counts.
func (u *unit) stoodTime(from, to time.Duration) time.Duration {
	var sum time.Duration
	count := func(s *stand) {
		begin, end := max(from, s.from), min(to, s.to)
		if end <= begin {
			return
		}
		from = end
		sum += end - begin
		if s.reload {
			u.states[Reloading] += int64(end - begin)
			u.trace(Reloading, begin, end)
			return
		}
		arrived := min(max(s.arrived, begin), end)
		u.states[Awaiting] += int64(arrived - begin)
		u.states[Clearing] += int64(end - arrived)
		u.trace(Awaiting, begin, arrived)
		u.trace(Clearing, arrived, end)
	}
	for _, s := range u.past {
		count(s)
	}
	for _, s := range u.standing {
		count(s)
	}
	return sum
}

// accountLost charges the time beyond the pace: to the stops of the station that was last, to its act, to the master. Without
// a setting only the stops count: what acts take is the line's own pace.
func (c *conveyor) accountLost(end time.Duration, n int64) {
	all := min(c.allClear, end)
	if !c.paced {
		if c.disturbed {
			c.last.lostStanding(c.begun, all)
		}
		return
	}
	if over := all - c.due; over > 0 {
		rest := over
		if c.disturbed {
			rest -= c.last.lostStanding(c.due, all)
		}
		c.Tally.Lost[c.last.slow] += n * int64(rest)
	}
	if c.master && c.limit == c.slowMaster {
		if over := min(c.ready, end) - max(all, c.due); over > 0 {
			c.Tally.Lost[c.slowMaster] += n * int64(over)
		}
	}
}

func (u *unit) lostStanding(from, to time.Duration) time.Duration {
	var sum time.Duration
	for _, list := range [2][]*stand{u.past, u.standing} {
		for _, s := range list {
			if begin, end := max(from, s.from), min(to, s.to); end > begin {
				u.Tally.Lost[s.why] += int64(end - begin)
				sum += end - begin
				from = end
			}
		}
	}
	return sum
}

func (c *conveyor) countCycles(n int64) {
	c.Tally.Cycles[c.section] += n
	switch c.limit {
	case c.setting:
		c.Tally.PacedCycles[c.section] += n
	case c.slowMaster:
		c.Tally.MasterCycles[c.section] += n
	default:
		c.last.count(LastClear, n)
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
				c.leave(c.section, *place)
				*place = carton{why: place.why}
			}
		}
	}
}

// use takes from the stores what the cartons of n acts need.
func (c *conveyor) use(u *unit, n int) {
	for i := range u.stores {
		u.stores[i].use(n * u.handled)
	}
}

// close accounts for the cycle, or the wait, that the end of the shift cuts short.
func (c *conveyor) close(end time.Duration) {
	if !c.cycling {
		c.settleWait(end)
		return
	}
	for _, u := range c.units {
		if c.disturbed && (!u.cleared || len(u.standing) > 0) {
			c.allClear, c.ready, c.last = never, never, u
			u.clear = never
		}
	}
	c.account(end, 1)
}
