package stations

import (
	"strconv"
	"time"

	"dwellcast/sim"
	"dwellcast/sim/random"
)

// unit is one physical machine of a station: its own act times, its own luck, its own stops and materials. It stands on a belt, or runs on
// its own.
type unit struct {
	sim     *Simulation
	role    role
	spec    *Station
	station int
	number  int
	section int
	name    string // of the station, with a number when it has several units

	parts  []random.Source
	fixed  time.Duration // the whole act when every part is fixed, or -1
	glued  int           // how many parts of the act close its glue; -1 without glue
	closed time.Duration // these parts of the act drawn last
	misses random.Trials
	spoils random.Trials
	react  random.Source
	stops  []stopClock
	// ran is working time so far; nextRun is the earliest at which a stop by running time falls due.
	ran, nextRun time.Duration
	byRunning    bool // it has stops by running time
	byClock      bool // it has stops by the calendar clock
	afterMisses  *stopClock
	stores       []store

	standing []*stand // stops that it is in now, the first of which counts
	// owed holds, for each carton that stops at the head of the line still cost, the stop that does.
	owed    []Reason
	id      int32        // of the carton that it is busy with, for the trace
	process *sim.Process // that runs it

	slow, missed, rejected, stood, dried Reason

	states []int64 // view into the tally
}

// role is what a unit does about its stops where it is: on a belt, or on its own.
type role interface {
	// beforeChange brings account and progress up to now, before a stop begins or ends.
	beforeChange()
	// begins notes a stop that has begun, and goesOn that the last one is cleared.
	begins(s *stand)
	goesOn()
	// interrupt makes the unit stand, whatever it does, for a stop by the calendar clock.
	interrupt(c *stopClock, wake *sim.Process) *stand
}

// stopClock counts down to the next stop of one cause.
type stopClock struct {
	spec  *Stop
	why   Reason
	acts  random.Trials
	every random.Source
	clear random.Source
	next  time.Duration // working time at which a stop by running time falls due
}

// newUnit builds unit number n of station i.
func newUnit(s *Simulation, i, n, section int) unit {
	spec := &s.Line.Stations[i]
	u := unit{sim: s, spec: spec, station: i, number: n, section: section, name: spec.Name, glued: -1}
	if spec.Units > 1 {
		u.name += " " + strconv.Itoa(n+1)
	}
	if spec.Glue != nil {
		u.glued = spec.Glue.Closes
	}
	for i, part := range spec.Parts {
		if i < u.glued && part.Time.Fixed() {
			u.closed += part.Time.Mean()
		}
		u.parts = append(u.parts, random.NewSource(part.Time, random.Key(u.name, part.Name)))
		if u.fixed >= 0 && part.Time.Fixed() {
			u.fixed += part.Time.Mean()
		} else {
			u.fixed = -1
		}
	}
	u.misses = random.NewTrials(perAct(spec.Miss.Chance), random.Key(u.name, "miss"))
	u.spoils = random.NewTrials(perAct(spec.Reject), random.Key(u.name, "reject"))
	u.react = random.NewSource(s.Line.Crew.Reaction, random.Key(u.name, "reaction"))
	u.slow = s.reasons.of(SlowAct, i, 0)
	u.missed = s.reasons.ifAny(Missed, i, 0)
	u.rejected = s.reasons.ifAny(Rejected, i, 0)
	u.stood = s.reasons.ifAny(Stood, i, 0)
	u.dried = s.reasons.ifAny(Dried, i, 0)
	for k := range spec.Stops {
		u.addStop(&spec.Stops[k], s.reasons.of(Stoppage, i, k))
	}
	if spec.Miss.Stop != nil {
		stop := *spec.Miss.Stop
		stop.Trigger, stop.Chance, stop.Acts = ByCartons, 0, nil // it comes of misses alone
		u.addStop(&stop, s.reasons.of(MissStop, i, 0))
	}
	u.states = s.Tally.States[i*int(NumStates) : (i+1)*int(NumStates)]
	return u
}

// take gives the unit its role, once it has its place in memory.
func (u *unit) take(r role) {
	u.role = r
	if u.spec.Miss.Stop != nil {
		u.afterMisses = &u.stops[len(u.stops)-1]
	}
	for k := range u.spec.Materials {
		u.stores = append(u.stores, newStore(u, &u.spec.Materials[k], u.sim.reasons.of(Reload, u.station, k)))
	}
}

func (u *unit) addStop(spec *Stop, why Reason) {
	clock := stopClock{spec: spec, why: why, clear: random.NewSource(spec.Clear, random.Key(u.name, "clear "+spec.Cause))}
	key := random.Key(u.name, "stop "+spec.Cause)
	switch {
	case spec.Trigger != ByCartons:
		clock.every = random.NewSource(spec.Every, key)
		u.byRunning = u.byRunning || spec.Trigger == ByRunning
		u.byClock = u.byClock || spec.Trigger == ByClock
	case spec.Acts != nil:
		clock.acts = random.NewTrials(random.PerCount(spec.Acts), key)
	default:
		clock.acts = random.NewTrials(perAct(spec.Chance), key)
	}
	u.stops = append(u.stops, clock)
}

// perAct counts acts to an event of a probability that Check has passed.
func perAct(p float64) random.Countdown {
	countdown, err := random.PerAct(p)
	if err != nil {
		panic(err)
	}
	return countdown
}

// reset makes the unit ready for a replication.
func (u *unit) reset() {
	seed, rep := u.sim.seed, u.sim.replication
	for i := range u.parts {
		u.parts[i].Reset(seed, rep)
	}
	u.misses.Reset(seed, rep)
	u.spoils.Reset(seed, rep)
	u.react.Reset(seed, rep)
	u.ran = 0
	for i := range u.stops {
		c := &u.stops[i]
		c.clear.Reset(seed, rep)
		if c.spec.Trigger == ByCartons {
			c.acts.Reset(seed, rep)
			continue
		}
		c.every.Reset(seed, rep)
		if c.spec.Trigger == ByRunning {
			c.next = c.every.Next()
		}
	}
	u.findNextRun()
	for i := range u.stores {
		u.stores[i].reset()
	}
	u.owed, u.standing, u.id = u.owed[:0], u.standing[:0], 0
}

// draw returns the length of the next act.
func (u *unit) draw() time.Duration {
	if u.fixed >= 0 {
		return u.fixed
	}
	if len(u.parts) == 1 && u.glued < 0 {
		return u.parts[0].Next()
	}
	var sum time.Duration
	for i := range u.parts {
		if i == u.glued {
			u.closed = sum
		}
		sum += u.parts[i].Next()
	}
	if u.glued == len(u.parts) {
		u.closed = sum
	}
	return sum
}

// findNextRun notes the working time at which the next stop by running time falls due.
func (u *unit) findNextRun() {
	u.nextRun = never
	for i := range u.stops {
		if c := &u.stops[i]; c.spec.Trigger == ByRunning && c.next < u.nextRun {
			u.nextRun = c.next
		}
	}
}

// runStop returns the stop by running time that is due, and sets its clock to the next one.
func (u *unit) runStop() *stopClock {
	for i := range u.stops {
		if c := &u.stops[i]; c.spec.Trigger == ByRunning && c.next == u.nextRun {
			c.next += c.every.Next()
			u.findNextRun()
			return c
		}
	}
	panic("no stop by running time is due")
}

// count adds to one of the station's counts.
func (u *unit) count(c StationCount, n int64) { *u.sim.Tally.At(u.station, c) += n }
