package random

// Trials answers act after act whether the event comes now. For a chance per
// act it equals independent yes-or-no trials in law, but draws only once per
// event. It is a plain value; Reset it before the first Hit of every
// replication. The zero Trials never hits.
type Trials struct {
	left      int64 // acts up to and including the next event; 0 is never
	countdown Countdown
	stream    Stream
	key       uint64
}

// NewTrials returns trials on the stream named by key, Key(station, purpose).
func NewTrials(countdown Countdown, key uint64) Trials {
	return Trials{countdown: countdown, key: key}
}

// Reset goes to the start of the given replication (counted from 0): a full
// count lies ahead.
func (t *Trials) Reset(seed uint64, replication int) {
	t.stream.Seed(t.key, seed, replication)
	t.left = t.countdown.Draw(&t.stream)
}

// Hit makes one act and reports whether the event comes with it.
func (t *Trials) Hit() bool {
	t.left--
	return t.left == 0 && t.refill()
}

// refill is kept out of line so that Hit itself goes in line.
//
//go:noinline
func (t *Trials) refill() bool {
	t.left = t.countdown.Draw(&t.stream)
	return true
}

// Mean returns the expected number of acts from one event to the next.
func (t *Trials) Mean() float64 { return t.countdown.Mean() }
