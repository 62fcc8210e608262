package stations

import (
	"time"

	"dwellcast/sim"
)

// machine is a station that runs on its own, with one or more identical units working side by side.
type machine struct {
	sim     *Simulation
	section int
	units   []*soloUnit
	infeed  *sim.Buffer[carton] // nil at the head of the line, which never lacks cartons
	outfeed *sim.Buffer[carton] // nil at the end of the line, which can always discharge
	paced   bool
	// nextPlan is the start of the next planned stop.
	nextPlan time.Duration
}

func newMachine(s *Simulation, section, station int) *machine {
	m := &machine{sim: s, section: section, infeed: s.buffers[section]}
	if section+1 < len(s.buffers) {
		m.outfeed = s.buffers[section+1]
	}
	m.paced = section == s.pacedAt && s.Line.Setting > 0
	for n := range s.Line.Stations[station].Units {
		u := newSoloUnit(s, station, n, section)
		m.units = append(m.units, u)
		s.units = append(s.units, &u.unit)
	}
	return m
}

func (m *machine) reset() {
	m.nextPlan = 0
	for _, u := range m.units {
		u.reset()
	}
}

func (m *machine) start() {
	for _, u := range m.units {
		u.process = m.sim.calendar.Start(u.name, func(p *sim.Process) { m.run(u, p) })
	}
}

// run is the machine's cycle.
func (m *machine) run(u *soloUnit, p *sim.Process) {
	for {
		m.awaitTurn(u, p)
		m.take(u, p)
		u.restock(p)
		u.work(p)
		m.deliver(u, p)
	}
}

// awaitTurn lets the pace period of the last cycle run out, where the setting paces it, and a planned stop pass.
func (m *machine) awaitTurn(u *soloUnit, p *sim.Process) {
	u.settle(m.sim.calendar.Now())
	u.id = 0
	if !m.paced && m.sim.calendar.Now() < m.nextPlan && len(u.standing) == 0 {
		m.countCycle(u, false)
		return
	}
	early := m.paced && m.sim.calendar.Now() < u.due
	m.countCycle(u, early)
	if early {
		u.set(Paced, m.sim.setting)
		p.WaitUntil(u.due)
	}
	for w := m.sim.window(); w >= 0 || len(u.standing) > 0; w = m.sim.window() {
		if w < 0 {
			u.awaitCleared(p)
			continue
		}
		u.set(Planned, m.sim.reasons.of(PlannedStop, -1, w))
		p.WaitUntil(m.sim.Line.Shift.Planned[w].To)
	}
	m.sim.awaitProduction(p)
	u.settle(m.sim.calendar.Now())
	m.nextPlan = m.sim.Line.Shift.nextPlanned(m.sim.calendar.Now())
	u.late = u.late[:0]
	if m.sim.Line.Setting > 0 {
		u.due = m.sim.calendar.Now() + m.sim.pace*time.Duration(len(m.units))
	}
}

func (m *machine) countCycle(u *soloUnit, early bool) {
	if !u.begun {
		u.begun = true
		return
	}
	m.sim.Tally.Cycles[m.section]++
	if early {
		m.sim.blame.caughtUp(m.section)
		m.sim.Tally.PacedCycles[m.section]++
	} else {
		u.count(LastClear, 1)
	}
}

// take waits for a carton and takes it in hand; the head of the line never lacks one.
func (m *machine) take(u *soloUnit, p *sim.Process) {
	switch {
	case m.infeed == nil:
		u.holding = m.supply(u)
	case m.infeed.CanTake(1):
		u.holding = m.infeed.Remove()
	default:
		m.awaitCarton(u, p)
		u.holding = m.infeed.Remove()
	}
	u.set(Working, u.slow)
	u.id = u.holding.id
	u.taken = m.sim.calendar.Now()
}

// awaitCarton waits, starved, until there is a carton to take and no stop, planned or by the clock; another unit may take one meanwhile.
func (m *machine) awaitCarton(u *soloUnit, p *sim.Process) {
	u.set(Starved, 0)
	m.infeed.Await(p, 1)
	for m.sim.stands() || len(u.standing) > 0 {
		m.sim.awaitProduction(p)
		u.awaitCleared(p)
		m.infeed.Await(p, 1)
	}
}

// supply is a blank for an erector, which becomes a carton by its act, and a carton for any other head of a line.
func (m *machine) supply(u *soloUnit) carton {
	if m.sim.pacedAt == m.section {
		m.sim.flow(Slots, 1)
	}
	if u.spec.Kind == Erect {
		return carton{kind: good}
	}
	return m.sim.newCarton()
}

// deliver puts the carton where it goes next, waiting for room there.
func (m *machine) deliver(u *soloUnit, p *sim.Process) {
	c := u.holding
	u.id = c.id
	switch {
	case !c.present():
	case c.kind == reject && u.spec.Ejects, m.outfeed == nil:
		if m.stoodTooLong(u) {
			break
		}
		m.sim.leave(m.section, c)
	case m.outfeed.CanPut(1):
		if !m.stoodTooLong(u) {
			m.outfeed.Add(c, 0)
		}
	case m.outfeed.Capacity != 0 && u.losesByClock():
		u.set(Blocked, 0)
		m.outfeed.AwaitRoom(p, 1)
		if u.holding.present() && !m.stoodTooLong(u) {
			m.outfeed.Add(c, 0)
		} else {
			m.outfeed.Decline()
		}
	default:
		u.set(Blocked, 0)
		u.holding = carton{} // it waits in the buffer's queue, and is counted there
		m.outfeed.Put(p, c)
	}
	u.holding = carton{}
	if u.state == Blocked {
		u.set(Working, u.slow)
	}
}

// losesByClock says that a carton may be lost while it waits in the station for room.
func (u *soloUnit) losesByClock() bool {
	if u.spec.StandLimit > 0 {
		return true
	}
	for i := range u.spec.Stops {
		if s := &u.spec.Stops[i]; s.Trigger == ByClock && s.Scrap > 0 {
			return true
		}
	}
	return false
}

func (m *machine) stoodTooLong(u *soloUnit) bool {
	if u.spec.StandLimit == 0 || m.sim.calendar.Now()-u.taken <= u.spec.StandLimit {
		return false
	}
	u.scrap(&u.holding, u.stood)
	return true
}

// reason is what the machine does, as seen by a neighbour: a unit that stands comes before one that works, and that before one that waits.
func (m *machine) reason(int) (State, Reason) {
	does, why := m.units[0].doing()
	for _, u := range m.units {
		switch state, because := u.doing(); {
		case len(u.standing) > 0:
			return state, because
		case does == Starved || does == Blocked:
			does, why = state, because
		}
	}
	if does == Working && m.paced && m.sim.blame.rates[m.section].fitsPace() {
		return does, m.sim.setting // it would only wait for the pace
	}
	return does, why
}

// slowed is by how much longer a carton takes while some of the units stand; endless while all do.
func (m *machine) slowed() float64 {
	running := len(m.units)
	for _, u := range m.units {
		if len(u.standing) > 0 {
			running--
		}
	}
	return float64(len(m.units)) / float64(running)
}

func (m *machine) settle(now time.Duration) {
	for _, u := range m.units {
		u.settle(now)
	}
}

func (m *machine) close(end time.Duration) { m.settle(end) }

func (m *machine) cartons(visit func(carton)) {
	for _, u := range m.units {
		visit(u.holding)
	}
}

func (m *machine) nominal() time.Duration {
	return m.units[0].meanAct() / time.Duration(len(m.units))
}
