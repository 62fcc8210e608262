package sim

import "time"

// Crew is a number of attendants who answer calls, first come first served. Each attendant is a process: called, walks to
// the place in the reaction time, works there, and is free again.
type Crew struct {
	calendar *Calendar
	// Attendants is how many there are; 0 means that there is always one free.
	Attendants int
	calls      []*Call
	idle       []*attendant
	all        []*attendant
	coming     int // attendants who were woken or hired and have yet to look for a call
}

// Call is one piece of work for the crew.
type Call struct {
	// Reaction is the time from being free and called to being there; Work is the time needed there.
	Reaction, Work time.Duration
	// Arrived and Done, if given, are called when the work begins and ends.
	Arrived, Done func()
}

type attendant struct {
	*Process
	busy  time.Duration
	since time.Duration // start of the call in hand, or never
}

// NewCrew returns a crew on the calendar. Call Open at the start of each run.
func NewCrew(c *Calendar, attendants int) *Crew {
	return &Crew{calendar: c, Attendants: attendants}
}

// Open lets the attendants begin, all idle.
func (w *Crew) Open() {
	w.calls, w.idle, w.all, w.coming = w.calls[:0], w.idle[:0], w.all[:0], 0
	for range w.Attendants {
		w.hire()
	}
}

// Call puts a call to the crew.
func (w *Crew) Call(call *Call) {
	w.calls = append(w.calls, call)
	n := len(w.idle)
	switch {
	case w.coming >= len(w.calls): // enough are on their way
	case n > 0:
		a := w.idle[n-1]
		w.idle = w.idle[:n-1]
		w.coming++
		a.Wake()
	case w.Attendants == 0:
		w.hire()
	}
}

// Busy is the time that attendants spent on calls so far, summed over them.
func (w *Crew) Busy() time.Duration {
	var busy time.Duration
	for _, a := range w.all {
		busy += a.busy
		if a.since != never {
			busy += w.calendar.now - a.since
		}
	}
	return busy
}

func (w *Crew) hire() {
	a := &attendant{since: never}
	w.coming++
	a.Process = w.calendar.Start("attendant", func(p *Process) {
		w.coming--
		for {
			if len(w.calls) == 0 {
				w.idle = append(w.idle, a)
				p.Park()
				w.coming--
				continue
			}
			a.answer(w.next())
		}
	})
	w.all = append(w.all, a)
}

func (w *Crew) next() *Call {
	call := w.calls[0]
	copy(w.calls, w.calls[1:])
	w.calls = w.calls[:len(w.calls)-1]
	return call
}

func (a *attendant) answer(call *Call) {
	a.since = a.calendar.now
	a.Wait(call.Reaction)
	if call.Arrived != nil {
		call.Arrived()
	}
	a.Wait(call.Work)
	a.busy += a.calendar.now - a.since
	a.since = never
	if call.Done != nil {
		call.Done()
	}
}
