package stations

import (
	"math"
	"time"

	"dwellcast/sim"
)

// conveyor is an indexing conveyor with its stations. It is one process: each cycle it indexes, asks its stations when
// they will be clear, and waits for the last of them.
type conveyor struct {
	sim     *Simulation
	section int
	spec    *Conveyor
	lanes   int
	units   []*beltUnit
	outlets []*beltUnit // those where cartons leave or materials run down
	infeed  *sim.Buffer[carton]
	outfeed *sim.Buffer[carton]
	process *sim.Process
	paced   bool
	ends    bool // its last station is the end of the line
	alone   bool // it is the whole line
	master  bool // its revolution may be the last to finish
	interr  bool // some station stops by the calendar clock
	running bool // some station stops by running time
	limits  bool // some station scraps cartons that stand too long
	glues   bool // some station closes what another has glued
	plain   bool // every act is fixed: a cycle may repeat the one before

	sure   sureCycles
	stood  lastStands
	places []carton // lanes to a pitch, a ring of pitches
	head   int      // index of the first place of the ring

	nextPlan  time.Duration // start of the next planned stop
	cycling   bool          // between an index and all clear; otherwise it waits for a neighbour or a planned stop
	disturbed bool
	begun     time.Duration // start of this cycle
	allClear  time.Duration // when the last station was clear
	ready     time.Duration // when the next index may begin
	last      *beltUnit     // the last station to be clear
	late      *beltUnit     // one that stood for a stop by the clock after it was clear, or nil
	lateFrom  time.Duration // from the first such stop
	lateTo    time.Duration // to the end of the last
	limit     Reason        // what holds up the next index, as far as known
	due       time.Duration // when the pace wants the next cycle

	wait  wait
	since time.Duration // start of the present wait
	state State
	why   Reason
}

func newConveyor(s *Simulation, section int, g Group) *conveyor {
	c := &conveyor{sim: s, section: section, spec: &s.Line.Conveyors[g.Conveyor], lanes: s.Line.Lanes,
		infeed: s.buffers[section], plain: true, paced: s.Line.Setting > 0}
	c.wait = wait{section: section, settle: c.settleWait}
	if section+1 < len(s.buffers) {
		c.outfeed = s.buffers[section+1]
	}
	c.ends = c.outfeed == nil
	c.alone = len(s.buffers) == 1
	c.master = s.Line.MasterLimits(g)
	at := 0
	for i := g.First; i <= g.Last; i++ {
		if i > g.First {
			at += s.Line.Stations[i].Feed.Pitches
		}
		u := newBeltUnit(c, i, at)
		if u.spec.Kind == Erect {
			at += u.spec.Turns
		}
		c.interr = c.interr || u.byClock
		c.running = c.running || u.byRunning
		c.plain = c.plain && u.fixed >= 0 && u.spec.Away == 0 && u.spec.Units == 1
		c.units = append(c.units, u)
		c.limits = c.limits || u.spec.StandLimit > 0
		if glue := u.spec.Glue; glue != nil {
			c.glues = true
			u.laid = u.at - c.units[glue.From-g.First].at
			c.stood.reach(u.laid)
		}
		if u.spec.Ejects || len(u.stores) > 0 || c.ends && i == g.Last {
			c.outlets = append(c.outlets, u)
		}
	}
	c.places = make([]carton, (at+c.spec.RunOut+1)*c.lanes)
	for _, u := range c.units {
		s.units = append(s.units, &u.unit)
	}
	return c
}

func (c *conveyor) reset() {
	for _, u := range c.units {
		u.reset()
	}
	filling := c.sim.reasons.of(Filling, -1, 0)
	for i := range c.places {
		c.places[i] = carton{why: filling}
	}
	c.sure = sureCycles{}
	c.head, c.cycling, c.disturbed, c.nextPlan = 0, false, false, 0
	c.begun, c.allClear, c.ready, c.due, c.since = 0, 0, 0, 0, 0
	c.state, c.why, c.limit = Paced, c.sim.setting, c.sim.setting
	c.last = c.units[0]
}

func (c *conveyor) start() {
	c.process = c.sim.calendar.Start("conveyor of "+c.units[0].name, c.run)
	for _, u := range c.units {
		u.process = c.process
	}
}

// run is the cycle of the conveyor and all that stands on it.
func (c *conveyor) run(p *sim.Process) {
	for {
		c.awaitTurn(p)
		if c.again() {
			c.runAgain(p)
			continue
		}
		c.endSure()
		c.index()
		c.act()
		c.awaitClear(p)
		c.closeGlue(c.ready)
		c.account(c.ready, 1)
		c.repeat(p)
		c.foresee()
	}
}

// pitches is the number of pitches from the first station's place to the end of the run-out.
func (c *conveyor) pitches() int { return len(c.places) / c.lanes }

// pitch returns the places, one a lane, on a pitch counted from the head of the conveyor.
func (c *conveyor) pitch(at int) []carton {
	i := c.head + at*c.lanes
	if i >= len(c.places) {
		i -= len(c.places)
	}
	return c.places[i : i+c.lanes]
}

// present counts the cartons on a pitch.
func present(pitch []carton) int {
	n := 0
	for i := range pitch {
		if pitch[i].kind != empty {
			n++
		}
	}
	return n
}

func (c *conveyor) cartons(visit func(carton)) {
	for _, place := range c.places {
		visit(place)
	}
}

// nominal is the mean cycle when nothing disturbs it and nothing paces it.
func (c *conveyor) nominal() time.Duration {
	cycle := c.spec.Index
	for _, u := range c.units {
		cycle = max(cycle, c.spec.Index+u.meanAct())
	}
	return max(cycle, c.spec.Revolution)
}

// reason says what holds the conveyor up, to a neighbour downstream (-1, looking up the line) or upstream (1).
func (c *conveyor) reason(direction int) (State, Reason) {
	if !c.cycling {
		if c.state == Starved || c.state == Blocked {
			return c.state, c.wait.root
		}
		return c.state, c.why
	}
	if last := c.pitch(c.pitches() - 1); direction < 0 && present(last) == 0 {
		return Working, last[0].why
	}
	for _, u := range c.units {
		if len(u.standing) > 0 {
			return u.standing[0].state(), u.standing[0].why
		}
	}
	return Working, c.limit
}

// slowed is 1, or endless while a station stands: then the conveyor does too.
func (c *conveyor) slowed() float64 {
	if c.standing() != nil {
		return math.Inf(1)
	}
	return 1
}

func (c *conveyor) standing() *stand {
	for _, u := range c.units {
		if len(u.standing) > 0 {
			return u.standing[0]
		}
	}
	return nil
}
