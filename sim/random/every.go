package random

import (
	"errors"
	"time"
)

// Every is an event that comes by running time: its clock goes only while the
// station says that it runs. It is a plain value; Reset it before the first Run
// of every replication. The zero Every never comes.
type Every struct {
	left   time.Duration // running time to the next event; 0 is never
	source Source
}

// NewEvery returns an event after each running time drawn from interval, on the
// stream named by key, Key(station, purpose).
func NewEvery(interval Sampler, key uint64) (Every, error) {
	if interval.Max() == 0 {
		return Every{}, errors.New("running time between events is 0; give a time above 0, or leave the event out")
	}
	return Every{source: NewSource(interval, key)}, nil
}

// Reset goes to the start of the given replication (counted from 0): a full
// interval lies ahead.
func (e *Every) Reset(seed uint64, replication int) {
	e.source.Reset(seed, replication)
	e.refill()
}

// Left returns the running time to the next event, 0 if it never comes.
func (e *Every) Left() time.Duration { return e.left }

// Run lets the clock go for d (>= 0), or only until the event if that comes
// first or at the same moment. It returns the time that the clock went and
// whether the event came. The rest of d is still to be run.
func (e *Every) Run(d time.Duration) (ran time.Duration, came bool) {
	if d < e.left {
		e.left -= d
		return d, false
	}
	return e.finish(d)
}

// finish is kept out of line so that Run itself goes in line.
//
//go:noinline
func (e *Every) finish(d time.Duration) (time.Duration, bool) {
	if e.left == 0 {
		return d, false
	}
	ran := e.left
	e.refill()
	return ran, true
}

// refill draws the next interval, of at least 1 ns so that time goes on.
func (e *Every) refill() {
	if e.source.kind == fixedKind {
		e.left = e.source.fixed
		return
	}
	e.left = max(1, e.source.draw())
}

// Mean returns the expected running time from one event to the next.
func (e *Every) Mean() time.Duration { return e.source.Mean() }
