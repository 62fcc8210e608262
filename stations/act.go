package stations

import "time"

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

// meanAct is the mean length of an act, without misses.
func (u *unit) meanAct() time.Duration {
	var sum time.Duration
	for _, part := range u.spec.Parts {
		sum += part.Time.Mean()
	}
	return sum
}
