package stations

// culprits finds what a waiting section waits for.
//
// It follows the chain of sections that wait in the same way to the first that does not. If that one stands, or passes on an empty
// place, this is the cause. If it only works, or is paced, that is how the line is built, and the cause is whichever is slowest on the
// average of it and those beyond it, the way through the buffers included, since a faster one would only wait longer for the slowest; a
// section that waits the other way ends the search, because it hides what lies beyond. One that is faster than the slowest of the line is behind for what held it up
// last, until it has caught up.
type culprits struct {
	sim   *Simulation
	rates []rate
	// slowest is the paced rate of the slowest section.
	slowest float64
	// upstream and downstream hold, per section, the slowest of what lies before it and behind it, as it sees them.
	upstream, downstream []float64
	// held says that the section has had to wait for room in this shift: before, nothing behind it held it up.
	held []bool
	// behind is what held the section up last and is not yet made good, or nothing.
	behind []Reason
}

func newCulprits(s *Simulation) culprits {
	n := len(s.sections)
	c := culprits{sim: s, rates: s.Line.ratesOf(s.Line.Sections()), held: make([]bool, n), behind: make([]Reason, n)}
	c.upstream, c.downstream = make([]float64, n), make([]float64, n)
	for k := range c.rates {
		c.slowest = max(c.slowest, c.rates[k].paced)
		for j, r := range c.rates {
			switch {
			case j < k:
				c.upstream[k] = max(c.upstream[k], r.seen[k], c.rates[j+1].passes)
			case j > k:
				c.downstream[k] = max(c.downstream[k], r.seen[k], r.passes)
			}
		}
	}
	return c
}

func (c *culprits) reset() {
	clear(c.held)
	for k := range c.behind {
		c.behind[k] = nothing
	}
}

// heldUp notes that a stop or a reload holds a section up.
func (c *culprits) heldUp(section int, why Reason) { c.behind[section] = why }

// caughtUp notes that a section was done before the setting wanted it to go on.
func (c *culprits) caughtUp(section int) { c.behind[section] = nothing }

// waited notes why a section waits: for the way the line is built, it has made good what held it up before.
func (c *culprits) waited(w *wait) {
	if w.state == Blocked {
		c.held[w.section] = true
	}
	c.behind[w.section] = nothing
	if c.isEvent(w.root) {
		c.behind[w.section] = w.root
	}
}

// isEvent says that a reason is a stop or a reload: it comes and goes.
func (c *culprits) isEvent(why Reason) bool { return c.nature(why) == event }

// isBuilt says that a reason is the way the line is built and set.
func (c *culprits) isBuilt(why Reason) bool { return c.nature(why) == built }

func (c *culprits) nature(why Reason) nature { return reasonForms[c.sim.reasons.list[why].Kind].nature }

// find returns why a section that is starved (or blocked) waits, and the sections that this depends on.
func (c *culprits) find(section int, state State) (root Reason, chain uint64) {
	step, beyond := -1, c.upstream
	if state == Blocked {
		step, beyond = 1, c.downstream
	}
	root = nothing
	var slowest float64
	var at, first, narrow int
	for k := section + step; k >= 0 && k < len(c.rates); k += step {
		chain |= bit(k)
		if b := max(k, k-step); c.rates[b].passes > c.rates[narrow].passes {
			narrow = b
		}
		does, why := c.sim.sections[k].reason(step)
		if does == Starved || does == Blocked {
			if does == state { // it waits too, further along
				continue
			}
			if root == nothing { // each waits for the other: the cartons between them are under way
				return c.sim.transitBefore(max(k, k-step)), chain
			}
			break
		}
		if root == nothing {
			first = k
		}
		mean := c.rates[k].seen[first]
		if k == first {
			mean *= c.sim.sections[k].slowed()
		}
		if root == nothing || mean > slowest {
			root, slowest, at = why, mean, k
		}
		if !c.isBuilt(why) && !c.isEvent(why) && k == at || state == Blocked && !c.held[k] || beyond[first] <= slowest {
			break
		}
	}
	switch {
	case root == nothing:
		return c.sim.transitBefore(section), chain
	case c.isBuilt(root) && c.rates[narrow].passes > slowest:
		return c.sim.transitBefore(narrow), chain
	}
	if c.behind[at] != nothing && c.isBuilt(root) && c.rates[at].acts < c.slowest {
		return c.behind[at], chain
	}
	return root, chain
}
