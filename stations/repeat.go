package stations

import (
	"time"

	"dwellcast/sim"
)

// repeat passes over the cycles that only repeat the one just done: every pitch holds a good carton, every act takes a
// fixed time, and nothing falls due in the calendar, the plan, or any station's countdown. It changes no figure; it saves
// stepping through them.
func (c *conveyor) repeat(p *sim.Process) {
	n := c.repeats()
	if n <= 0 {
		return
	}
	period := c.ready - c.begun
	cartons := n * int64(c.lanes)
	for _, u := range c.units {
		u.loaded = true
		u.skip(n, cartons, c.spec.Index)
	}
	c.cycling = true
	c.nextPlan = c.sim.Line.Shift.nextPlanned(c.ready)
	c.account(c.ready, n)
	c.sim.flow(Slots, cartons)
	c.sim.flow(Entered, cartons)
	c.sim.flow(Good, cartons)
	c.sim.ids += int32(cartons)
	for i := range c.places {
		if c.places[i].present() {
			c.places[i].id += int32(cartons)
		}
	}
	p.WaitUntil(c.sim.calendar.Now() + time.Duration(n)*period)
	c.begun += time.Duration(n) * period
	c.stood.skip(n, period)
	c.since = c.sim.calendar.Now()
}

// repeats is how many cycles are sure to repeat the last one.
func (c *conveyor) repeats() int64 {
	if !c.alone || !c.steady() {
		return 0
	}
	now, period := c.sim.calendar.Now(), c.ready-c.begun
	quiet := min(c.sim.calendar.Quiet(), c.sim.Line.Shift.nextPlanned(now))
	n := int64((quiet - 1 - now) / period)
	for _, u := range c.units {
		n = min(n, u.undisturbed(int64(c.lanes), c.spec.Index))
	}
	return n
}

// steady says that the next cycle, if it begins at once, repeats the last one as far as no countdown or material runs out.
func (c *conveyor) steady() bool {
	if !c.plain || c.disturbed || c.sim.NoRepeats || c.sim.Trace != nil || c.spec.Release != WhenClear || !c.full() {
		return false
	}
	period := c.ready - c.begun
	for _, u := range c.units {
		if limit := u.spec.StandLimit; limit > 0 && period-c.spec.Index > limit || !u.closesInTime(period) {
			return false
		}
	}
	return true
}

// full says that every station has just made a plain act on a full pitch, and that every pitch up to the last station holds
// a good carton, the last having just been emptied.
func (c *conveyor) full() bool {
	for _, u := range c.units {
		if !u.loaded || u.act != u.fixed || u.handled != c.lanes {
			return false
		}
	}
	last := c.units[len(c.units)-1]
	for pitch := range last.at {
		for _, place := range c.pitch(pitch) {
			if place.kind != good {
				return false
			}
		}
	}
	return true
}

// undisturbed is how many acts on a full pitch the unit is sure to make without a stop, a miss, a reject or a reload.
func (u *unit) undisturbed(lanes int64, index time.Duration) int64 {
	if len(u.owed) > 0 {
		return 0
	}
	n := min(u.misses.Left(), u.spoils.Left())
	for i := range u.stops {
		if s := &u.stops[i]; s.spec.Trigger == ByCartons {
			n = min(n, s.acts.Left())
		}
	}
	n /= lanes
	if u.byRunning {
		n = min(n, int64((u.nextRun-u.ran-1)/(index+u.fixed)))
	}
	for i := range u.stores {
		n = min(n, int64(u.stores[i].level-u.stores[i].spec.Low-1)/lanes)
	}
	return n
}

// skip makes n acts on full pitches at once.
func (u *unit) skip(n, cartons int64, index time.Duration) {
	u.count(Acts, n)
	u.misses.Skip(cartons)
	u.spoils.Skip(cartons)
	for i := range u.stops {
		if s := &u.stops[i]; s.spec.Trigger == ByCartons {
			s.acts.Skip(cartons)
		}
	}
	if u.byRunning {
		u.ran += time.Duration(n) * (index + u.fixed)
	}
}
