package stations

import "time"

// blame charges the time that sections wait, starved or blocked, to whatever in the line caused it (culprit.go), and looks again
// whenever something changes that it depends on.
type blame struct {
	sim     *Simulation
	waits   []*wait
	watched uint64 // sections that some waiting one depends on
	idle    []int  // per section, how many of its units wait
	culprits
}

// wait is one unit, or one conveyor, that waits for a neighbour.
type wait struct {
	section int
	state   State
	since   time.Duration
	root    Reason
	chain   uint64
	// settle accounts for the time waited so far.
	settle func(now time.Duration)
}

func (b *blame) init(s *Simulation) {
	b.sim = s
	b.idle = make([]int, len(s.sections))
	b.culprits = newCulprits(s)
}

func (b *blame) reset() {
	b.waits, b.watched = b.waits[:0], 0
	clear(b.idle)
	b.culprits.reset()
}

func bit(section int) uint64 { return 1 << (uint(section) % 64) }

// begin notes that w waits from now on; the section has already taken its new state.
func (b *blame) begin(w *wait, state State) {
	w.state, w.since = state, b.sim.calendar.Now()
	w.root, w.chain = b.find(w.section, state)
	b.waited(w)
	b.waits = append(b.waits, w)
	b.watched |= w.chain
	if b.idle[w.section]++; b.idle[w.section] == 1 && b.sim.tracker != nil {
		b.sim.tracker.Stop(w.section, b.sim.calendar.Now())
	}
}

// end notes that w, accounted for up to now, waits no longer.
func (b *blame) end(w *wait) {
	b.watched = 0
	for i := 0; i < len(b.waits); i++ {
		if b.waits[i] == w {
			last := len(b.waits) - 1
			b.waits[i] = b.waits[last]
			b.waits = b.waits[:last]
			i--
			continue
		}
		b.watched |= b.waits[i].chain
	}
	if b.idle[w.section]--; b.idle[w.section] == 0 && b.sim.tracker != nil {
		b.sim.tracker.Start(w.section, b.sim.calendar.Now())
	}
}

// changed tells those that wait for the section that what it does has changed.
func (b *blame) changed(section int) {
	if b.watched&bit(section) != 0 {
		b.follow(section)
	}
}

func (b *blame) follow(section int) {
	now := b.sim.calendar.Now()
	b.watched = 0
	for _, w := range b.waits {
		if w.chain&bit(section) != 0 {
			w.settle(now)
			w.root, w.chain = b.find(w.section, w.state)
			b.waited(w)
		}
		b.watched |= w.chain
	}
}

// settle accounts for all waits up to now.
func (b *blame) settle(now time.Duration) {
	for _, w := range b.waits {
		w.settle(now)
	}
}
