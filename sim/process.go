package sim

import (
	"errors"
	"fmt"
	"iter"
	"runtime/debug"
	"time"
)

// ErrStuck says that no event is left before the horizon: every process waits for another one.
var ErrStuck = errors.New("every process waits for another")

// ErrEndless says that processes go on and on at one instant, so that time never passes.
var ErrEndless = errors.New("events at one instant go on without end")

// ErrStopped says that the run was stopped from outside.
var ErrStopped = errors.New("stopped")

// Fault is a panic inside a process, or its part in an endless instant.
type Fault struct {
	Process string
	At      time.Duration
	Value   any
	Stack   []byte
}

// Error names the process and the time.
func (f *Fault) Error() string {
	return fmt.Sprintf("process %q failed at %v: %v\n%s", f.Process, f.At, f.Value, f.Stack)
}

// Unwrap returns the error that the process failed with, if its value is one.
func (f *Fault) Unwrap() error {
	err, _ := f.Value.(error)
	return err
}

// Process is a function that waits: it runs on a coroutine and gives way to others in Wait and Park.
//
// A process that waits passes the turn on itself: it enters the process whose turn is next, on top of its own coroutine, so
// that most waits cost one switch rather than two by way of Run. If that process is already entered, further down, those on
// top of it give way until it is reached.
type Process struct {
	Name     string
	calendar *Calendar
	next     func() (struct{}, bool)
	stop     func()
	giveWay  func(struct{}) bool
	// ticket tells a wake-up meant for this wait from a stale one.
	ticket  uint32
	parked  bool
	entered bool // somebody waits for it to give way
}

// ended unwinds a process whose calendar was reset.
type ended struct{}

// Start schedules body to begin at the present time.
func (c *Calendar) Start(name string, body func(p *Process)) *Process {
	p := &Process{Name: name, calendar: c}
	p.next, p.stop = iter.Pull(func(yield func(struct{}) bool) {
		defer p.catch()
		p.giveWay = yield
		p.ticket++
		body(p)
	})
	c.processes = append(c.processes, p)
	c.schedule(c.now, p)
	return p
}

func (p *Process) catch() {
	switch value := recover().(type) {
	case nil, ended:
	case error:
		p.calendar.fault = p.failed(value)
	default:
		p.calendar.fault = &Fault{p.Name, p.calendar.now, value, debug.Stack()}
	}
}

// failed is the fault of an error that a process ended with; one that was stopped has none.
func (p *Process) failed(err error) error {
	if errors.Is(err, ErrStopped) {
		return ErrStopped
	}
	return &Fault{p.Name, p.calendar.now, err, debug.Stack()}
}

// yield passes the turn on until it is this process's again.
func (p *Process) yield() {
	c := p.calendar
	c.turn = c.advance()
	for c.turn != p {
		if c.turn != nil && !c.turn.entered {
			c.enter(c.turn)
		} else if !p.giveWay(struct{}{}) {
			panic(ended{})
		}
	}
	p.ticket++
	p.parked = false
}

// Wait lets d pass; d is not negative. When nothing else is due before then, the clock moves in place.
func (p *Process) Wait(d time.Duration) { p.WaitUntil(p.calendar.now + d) }

// WaitUntil lets the clock reach at; an instant already past is now.
func (p *Process) WaitUntil(at time.Duration) {
	c := p.calendar
	c.check()
	if at <= c.now {
		c.stay()
		return
	}
	if at < c.quiet {
		c.now = at
		return
	}
	c.schedule(at, p)
	p.yield()
}

// stay notes that the running process goes on without time passing.
func (c *Calendar) stay() {
	if c.endless() {
		panic(ErrEndless)
	}
}

// WaitOrWake lets the clock reach at unless the process is woken before, and says whether it was.
func (p *Process) WaitOrWake(at time.Duration) (woken bool) {
	c := p.calendar
	c.check()
	if at < c.quiet {
		if at <= c.now {
			c.stay()
			return false
		}
		c.now = at
		return false
	}
	p.parked = true
	if at != never {
		c.schedule(at, p)
	}
	p.yield()
	return c.now < at
}

// Park waits until another process calls Wake.
func (p *Process) Park() {
	p.calendar.check()
	p.parked = true
	p.yield()
}

// Wake resumes a process that waits in Park or WaitOrWake, after the events already due now. It does nothing to a process
// that waits for a time of its own, or that was woken at this instant already.
func (p *Process) Wake() {
	if p.parked {
		p.parked = false
		p.ticket++ // a pending wake-up of WaitOrWake is stale from here on
		p.calendar.schedule(p.calendar.now, p)
	}
}
