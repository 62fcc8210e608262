package stations

import (
	"time"

	"dwellcast/sim"
)

// soloUnit is a unit that runs on its own: it is a process, and is in one state at a time.
type soloUnit struct {
	unit
	bare    bool // nothing but its act: no stop, miss, reject or material
	state   State
	why     Reason
	since   time.Duration
	due     time.Duration // when the pace wants the next cycle to begin
	late    []delay       // what stops made this act late before that
	again   *stopClock    // a stop by the clock that makes the act in hand start again
	holding carton
	taken   time.Duration // when it was taken in hand
	begun   bool          // it has begun a cycle
	wait    wait
}

func newSoloUnit(s *Simulation, station, number, section int) *soloUnit {
	u := &soloUnit{unit: newUnit(s, station, number, section)}
	u.take(u)
	u.bare = len(u.stops) == 0 && len(u.stores) == 0 && u.spec.Miss.Chance == 0 && u.spec.Reject == 0
	u.wait = wait{section: section, settle: u.settle}
	return u
}

func (u *soloUnit) reset() {
	u.unit.reset()
	u.state, u.why, u.since, u.due = Paced, u.sim.setting, 0, 0
	u.late, u.holding, u.begun = u.late[:0], carton{}, false
}

func (u *soloUnit) beforeChange() { u.settle(u.sim.calendar.Now()) }

func (u *soloUnit) begins(*stand) {}

func (u *soloUnit) goesOn() {}

func (u *soloUnit) interrupt(c *stopClock, wake *sim.Process) *stand {
	u.beforeChange()
	u.lostToStop(c)
	if c.spec.Repeat {
		u.again = c
	}
	return u.stop(c, wake)
}

// set puts the unit, which runs on its own, into a new state; for a wait the reason is found along the line.
func (u *soloUnit) set(state State, why Reason) {
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
func (u *soloUnit) doing() (State, Reason) {
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
func (u *soloUnit) settle(now time.Duration) {
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

// lose notes time beyond the pace as lost, where the line is paced. Without a setting all time not spent in acts is lost. What an act
// takes beyond the pace since stops made it late is lost to them.
func (u *soloUnit) lose(from, to time.Duration, why Reason, planned bool) {
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
