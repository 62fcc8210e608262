package stations

import (
	"math"
	"time"

	"dwellcast/sim"
)

// sureCycles are the cycles to come of a conveyor at the head of a line that are sure to repeat the last one, however its neighbour makes
// it wait for the next: it indexes, and does no more than its neighbours see. They come into the account together.
type sureCycles struct {
	left        int64         // yet to begin
	begun, done int64         // of those that are not in the account yet
	clear       time.Duration // from the start of a cycle until all are clear
	period      time.Duration // to its end
}

// foresee finds how many cycles to come are sure: until a station's countdown or material runs out. A wait ends them, since cartons then
// stand for longer.
func (c *conveyor) foresee() {
	if c.infeed != nil || c.alone || !c.steady() {
		return
	}
	n := int64(math.MaxInt64)
	for _, u := range c.units {
		n = min(n, u.undisturbed(int64(c.lanes), c.spec.Index))
	}
	c.sure = sureCycles{left: max(0, n), clear: c.allClear - c.begun, period: c.ready - c.begun}
}

// again says that the cycle to come, whose turn it is, is a sure one; it must end before the next planned stop.
func (c *conveyor) again() bool {
	return c.sure.left > 0 && c.sim.calendar.Now()+c.sure.period <= c.nextPlan
}

// runAgain is a sure cycle.
func (c *conveyor) runAgain(p *sim.Process) {
	c.sure.left--
	c.sure.begun++
	c.index()
	if c.units[0].spec.Kind == Erect {
		for i := range c.pitch(0) {
			c.pitch(0)[i] = c.sim.newCarton()
		}
	}
	c.stood.add(c.begun + c.spec.Index)
	c.allClear, c.ready = c.begun+c.sure.clear, c.begun+c.sure.period
	c.sim.blame.changed(c.section)
	p.WaitUntil(c.ready)
	c.sure.done++
	c.cycling, c.since = false, c.ready
}

// settle takes the sure cycles that are done into the account, and what the stations have begun in the present one.
func (c *conveyor) settle(time.Duration) {
	if c.sure.begun == 0 && c.sure.done == 0 {
		return
	}
	for _, u := range c.units {
		u.skip(c.sure.begun, c.sure.begun*int64(c.lanes), c.spec.Index)
		u.clear = c.begun + c.spec.Index + u.act
		u.done = u.clear
	}
	if c.sure.done > 0 {
		cycling, since := c.cycling, c.since
		c.account(c.ready, c.sure.done)
		c.cycling, c.since = cycling, since
	}
	c.sure.begun, c.sure.done = 0, 0
}

// endSure ends the sure cycles.
func (c *conveyor) endSure() {
	c.settle(c.since)
	c.sure.left = 0
}
