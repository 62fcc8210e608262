// Package sim is a small discrete-event kernel: a clock with its calendar of events, processes that wait on it, buffers
// that hand things from process to process, and a crew that is called. It knows nothing of carton lines.
//
// Time is whole nanoseconds since the start, so that the same model gives the same answer on any processor; events of one
// instant happen in the order in which they were scheduled.
package sim

import (
	"math"
	"sync/atomic"
	"time"
)

const never = time.Duration(math.MaxInt64)

// Calendar is the clock and the events to come. The zero value is not usable; call NewCalendar.
type Calendar struct {
	now     time.Duration
	horizon time.Duration
	// quiet is the first instant at which something other than the running process may happen.
	quiet     time.Duration
	events    []event // latest first, so that the next one is at the end
	processes []*Process
	fault     error
	turn      *Process // whose turn it is; nil when the run is over
	outcome   error    // what Run returns then
	// instant is the last instant at which something happened without time passing, and happened is how often by now.
	instant  time.Duration
	happened int
	// stop, if set and true, ends the run from outside.
	stop *atomic.Bool
}

// most is how much may happen at one instant, before it is taken for a loop without end.
const most = 1_000_000

type event struct {
	at     time.Duration
	to     *Process
	ticket uint32
}

// NewCalendar returns an empty calendar at time zero.
func NewCalendar() *Calendar { return &Calendar{quiet: never} }

// StopWhen lets another goroutine end a run: soon after flag is true, Run returns ErrStopped.
func (c *Calendar) StopWhen(flag *atomic.Bool) { c.stop = flag }

// check unwinds the running process once the run is to be stopped.
func (c *Calendar) check() {
	if c.stop != nil && c.stop.Load() {
		panic(ErrStopped)
	}
}

// Now is the time since the start.
func (c *Calendar) Now() time.Duration { return c.now }

// Quiet returns the first instant at which an event is due or the run ends: until then the running process is alone.
func (c *Calendar) Quiet() time.Duration { return c.quiet }

// Run advances the clock to the horizon, event by event. It returns a *Fault when a process panicked, or when events go on
// without end at one instant, ErrStopped when it was stopped, and ErrStuck when every process waits for another before the horizon. Processes keep their
// place, so a later call with a later horizon goes on from there.
func (c *Calendar) Run(horizon time.Duration) error {
	c.horizon = horizon
	c.turn = c.advance()
	for c.turn != nil {
		c.enter(c.turn)
	}
	return c.outcome
}

// advance lets the clock come to the next event, and returns the process whose turn it is then; nil when the run is over.
func (c *Calendar) advance() *Process {
	for {
		n := len(c.events)
		if n == 0 {
			c.outcome = nil
			if c.now < c.horizon {
				c.outcome = ErrStuck
			}
			return nil
		}
		next := c.events[n-1]
		if next.ticket != next.to.ticket { // the process was woken by something else meanwhile
			c.events = c.events[:n-1]
			continue
		}
		if next.at > c.horizon {
			c.now, c.outcome = c.horizon, nil
			return nil
		}
		c.events = c.events[:n-1]
		if next.at == c.now && c.endless() {
			c.outcome = &Fault{Process: next.to.Name, At: c.now, Value: ErrEndless}
			return nil
		}
		c.now = next.at
		c.listen()
		return next.to
	}
}

// enter lets a process have its turn, on top of whoever calls, and comes back when the turn is that of one further down, or
// when the run is over.
func (c *Calendar) enter(p *Process) {
	p.entered = true
	_, alive := p.next()
	p.entered = false
	switch {
	case c.fault != nil:
		c.turn, c.outcome = nil, c.fault
	case !alive:
		c.turn = c.advance()
	}
}

// End makes the present instant the horizon of the run.
func (c *Calendar) End() {
	c.horizon = c.now
	c.listen()
}

// Reset ends all processes and empties the calendar, keeping its memory.
func (c *Calendar) Reset() {
	for _, p := range c.processes {
		p.stop()
	}
	clear(c.processes)
	clear(c.events[:cap(c.events)])
	*c = Calendar{quiet: never, events: c.events[:0], processes: c.processes[:0], stop: c.stop}
}

// endless counts one more thing that happens without time passing, and says whether it is one too many.
func (c *Calendar) endless() bool {
	if c.instant != c.now {
		c.instant, c.happened = c.now, 0
	}
	c.happened++
	return c.happened > most
}

func (c *Calendar) schedule(at time.Duration, p *Process) {
	c.events = append(c.events, event{})
	i := len(c.events) - 1
	for i > 0 && c.events[i-1].at <= at {
		c.events[i] = c.events[i-1]
		i--
	}
	c.events[i] = event{at, p, p.ticket}
	c.listen()
}

// listen keeps quiet in step with the next event and the horizon.
func (c *Calendar) listen() {
	c.quiet = c.horizon + 1
	if n := len(c.events); n > 0 && c.events[n-1].at < c.quiet {
		c.quiet = c.events[n-1].at
	}
}
