package stations

import (
	"time"

	"dwellcast/sim"
)

// index moves every carton on by one pitch, the last into the buffer behind and new ones onto the first pitch.
func (c *conveyor) index() {
	if c.limits {
		c.scrapStood()
	}
	c.begun = c.sim.calendar.Now()
	c.due = c.begun + c.sim.pace
	c.cycling = true
	if c.outfeed != nil {
		for _, place := range c.pitch(c.pitches() - 1) {
			if place.present() {
				c.outfeed.Add(place, c.spec.Index)
			}
		}
	}
	c.head -= c.lanes
	if c.head < 0 {
		c.head += len(c.places)
	}
	if c.section == c.sim.pacedAt {
		c.sim.flow(Slots, int64(c.lanes))
	}
	first := c.pitch(0)
	for i := range first {
		first[i] = c.next()
	}
}

// next is what comes onto the first pitch: a blank before an erector, a carton, or nothing if the buffer has none.
func (c *conveyor) next() carton {
	switch {
	case c.infeed == nil && c.units[0].spec.Kind == Erect:
		return carton{kind: good}
	case c.infeed == nil:
		return c.sim.newCarton()
	case c.infeed.CanTake(1):
		return c.infeed.Remove()
	}
	why, _ := c.sim.blame.find(c.section, Starved)
	if c.section == c.sim.pacedAt { // further down, an empty pitch takes nobody's place
		c.sim.gone(c.section, why, 1)
	}
	return carton{why: why}
}

// scrapStood loses the cartons that have stood in a station for too long.
func (c *conveyor) scrapStood() {
	stood := c.sim.calendar.Now() - c.begun - c.spec.Index
	for _, u := range c.units {
		if u.spec.StandLimit == 0 || stood <= u.spec.StandLimit {
			continue
		}
		pitch := c.pitch(u.at)
		for i := range pitch {
			if pitch[i].present() {
				u.scrap(&pitch[i], u.stood)
			}
		}
	}
}

// act asks every station what it does in this cycle and when it will be clear.
func (c *conveyor) act() {
	stands := c.begun + c.spec.Index
	c.stood.add(stands)
	c.allClear, c.last, c.disturbed = stands, nil, c.interr
	c.late, c.lateFrom, c.lateTo = nil, 0, 0
	for _, u := range c.units {
		u.stands, u.agenda, u.short = u.stands[:0], u.agenda[:0], false
		u.act, u.tries, u.loaded, u.id, u.handled = 0, 0, false, 0, 0
		if pitch := c.pitch(u.at); present(pitch) > 0 {
			u.loaded = true
			c.actOn(u, pitch)
			u.id = pitch[0].id
		} else if u.spec.ActsEmpty {
			u.act, u.tries = u.draw(), 1
		}
		u.clear = stands + u.act
		u.done, u.whole = u.clear, u.act
		if c.last == nil || u.clear > c.allClear {
			c.allClear, c.last = u.clear, u
		}
	}
	if c.running && !c.disturbed {
		c.countRunning()
	}
}

// actOn draws a station's act on the pitch before it, and notes what will disturb it.
func (c *conveyor) actOn(u *beltUnit, pitch []carton) {
	tries := 1
	for i := range pitch {
		place := &pitch[i]
		if !place.present() {
			continue
		}
		for k := range u.stops {
			if s := &u.stops[k]; s.spec.Trigger == ByCartons && s.acts.Hit() {
				u.agenda = append(u.agenda, s)
			}
		}
		n, gaveUp := u.attempt()
		u.handled++
		tries = max(tries, n)
		switch {
		case !gaveUp:
			u.succeed(place)
		case u.afterMisses != nil:
			u.agenda = append(u.agenda, u.afterMisses)
			u.succeed(place)
		default:
			if place.id == 0 {
				u.handled--
			}
			u.miss(place)
		}
	}
	u.count(Acts, 1)
	u.tries = tries
	u.act = u.drawAct(tries)
	if u.spec.Away > 0 || len(u.robots) > 1 {
		u.act = c.byRobot(u, u.act)
	}
	for i := range u.stores {
		u.short = u.short || u.stores[i].level <= 0
	}
	if u.short || len(u.agenda) > 0 || u.byRunning && u.nextRun <= u.ran+c.spec.Index+u.act {
		c.disturbed = true
	}
}

// byRobot lets the next free robot do the act, and returns when its gripper no longer holds up the conveyor.
func (c *conveyor) byRobot(u *beltUnit, cycle time.Duration) time.Duration {
	stands := c.begun + c.spec.Index
	next := 0
	for i, back := range u.robots {
		if back < u.robots[next] {
			next = i
		}
	}
	start := max(stands, u.robots[next])
	u.robots[next] = start + cycle
	away := cycle
	if u.spec.Away > 0 {
		away = min(u.spec.Away, cycle)
	}
	return start - stands + away
}

// findReady works out when the next index may begin, and what decides it.
func (c *conveyor) findReady() {
	c.ready, c.limit = c.allClear, c.last.slow
	if m := c.begun + c.spec.Revolution; c.master && m > c.ready {
		c.ready, c.limit = m, c.sim.slowMaster
	}
	if c.paced && c.due >= c.ready {
		c.ready, c.limit = c.due, c.sim.setting
	}
	if c.late != nil && c.lateTo >= c.ready {
		c.ready, c.limit = c.lateTo, c.late.slow
	}
}

// awaitClear waits until every station has reported clear and the pace and the master have run out.
func (c *conveyor) awaitClear(p *sim.Process) {
	c.findReady()
	c.sim.blame.changed(c.section)
	if !c.disturbed {
		p.WaitUntil(c.ready)
		return
	}
	c.beginSteps()
	for {
		c.step(p)
		c.findReady()
		p.WaitOrWake(c.ready)
		if c.sim.calendar.Now() >= c.ready && c.standing() == nil {
			return
		}
	}
}
