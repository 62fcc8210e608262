package bottleneck

import (
	"fmt"
	"time"
)

// Tracker follows the bottleneck by the shifting rule while a line runs. It
// gives what Shifting gives for the log of the same run, but holds at most
// one period of each station however long the run.
//
// That is possible because a period which lies within another station's
// period is never the longest at any of its moments. So only a period that
// started before all that are still open need be kept when it closes, and it
// is dropped once the choice at its end, or past its end, has been made. A
// choice waits until every station that was active at the moment has closed
// its period, the longest being known only then.
type Tracker struct {
	account account
	now     time.Duration
	start   []time.Duration // of each station's open period
	state   []activity
	open    ring  // stations with an open period, by start, then number
	closing []int // those of them that stopped at the present moment
	kept    []candidate
}

// activity is what a station is doing at the present moment.
type activity uint8

const (
	idle    activity = iota
	active           // its period is open
	stopped          // it stopped at this moment and may yet go on in it
	resumed          // it stopped at this moment and went on
)

// NewTracker is a tracker for the given number of stations, none of them
// active, from time 0.
func NewTracker(stations int) *Tracker {
	return &Tracker{
		account: newAccount(stations, 0),
		start:   make([]time.Duration, stations),
		state:   make([]activity, stations),
		open:    newRing(stations),
		closing: make([]int, 0, stations),
		kept:    make([]candidate, 0, stations+1),
	}
}

// Reset puts the tracker back to where NewTracker left it, without
// allocating. Shares given out earlier are overwritten.
func (k *Tracker) Reset() {
	k.account.reset(0)
	k.now = 0
	clear(k.state)
	k.open.clear()
	k.closing, k.kept = k.closing[:0], k.kept[:0]
}

// Restart forgets what happened before time t, as after a warm-up: shares
// count from t on, and stations active at t count as active from t.
func (k *Tracker) Restart(t time.Duration) {
	k.advance(t)
	k.account.reset(t)
	k.kept = k.kept[:0]
	k.open.clear()
	for i, s := range k.state {
		if s != idle {
			k.start[i] = t
			k.open.add(i, k.start)
		}
	}
}

// Start says that station i becomes active at time t, which must not lie
// before that of an earlier call. A station that stopped at t goes on as if
// it had not. Starting an active station changes nothing.
func (k *Tracker) Start(i int, t time.Duration) {
	if t != k.now {
		k.advance(t)
	}
	switch k.state[i] {
	case idle:
		k.state[i] = active
		k.start[i] = t
		k.open.add(i, k.start)
	case stopped:
		k.state[i] = resumed
	}
}

// Stop says that station i becomes starved or blocked at time t, which must
// not lie before that of an earlier call. Stopping an idle station changes
// nothing.
func (k *Tracker) Stop(i int, t time.Duration) {
	if t != k.now {
		k.advance(t)
	}
	switch k.state[i] {
	case active:
		k.state[i] = stopped
		k.closing = append(k.closing, i)
	case resumed:
		k.state[i] = stopped
	}
}

// Finish ends the run at time t, with the periods then open, and gives the
// shares. They are valid until Reset; the tracker is of no use until then.
func (k *Tracker) Finish(t time.Duration) Shares {
	k.advance(t)
	if first := k.open.first(); first >= 0 { // the others lie within it
		k.keep(first)
	}
	k.open.clear()
	k.choose()
	return k.account.close(t)
}

// Since is when the active period of station i began that lasts to time t, not before the latest call; false where none does.
func (k *Tracker) Since(i int, t time.Duration) (began time.Duration, lasts bool) {
	state := k.state[i]
	return k.start[i], state == active || state == resumed || state == stopped && k.now == t
}

// advance moves the present to t, after which stations that stopped before
// cannot go on.
func (k *Tracker) advance(t time.Duration) {
	if t < k.now {
		panic(fmt.Sprintf("bottleneck: time %v after %v", t, k.now))
	}
	if t > k.now && len(k.closing) > 0 {
		k.closeStopped()
	}
	k.now = t
}
