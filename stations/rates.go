package stations

import (
	"math"
	"time"
)

// rate is what a section takes for a carton on the average, ns, as its design has it: no chance but in the means, and no neighbour.
type rate struct {
	// acts is by its acts alone, and paced with the pace of the setting, where that paces the section.
	acts, paced float64
	// seen is by section that looks at it: with as much of its stops and reloads as the buffers between the two bridge, so that they cost
	// its neighbour nothing but speed. It is for each carton that comes onto the line: what is lost before, the section need not handle.
	seen []float64
	// passes is what the buffer before it takes: its transit, and the index that a place is kept for, shared out over its places.
	passes float64
}

// fitsPace says that the acts are done before the setting wants the next one.
func (r rate) fitsPace() bool { return r.acts < r.paced }

// ratesOf finds the rates of all sections.
func (l *Line) ratesOf(groups []Group) []rate {
	rates := make([]rate, len(groups))
	paced, reach := l.pacedSection(groups), 1.0
	for k, g := range groups {
		var r rate
		perCycle := 1.0
		if g.Conveyor >= 0 {
			r.acts, perCycle = l.conveyorActs(g), float64(l.Lanes)
		} else {
			r.acts = l.Stations[g.First].meanTries() * l.Stations[g.First].meanAct() / float64(l.Stations[g.First].Units)
		}
		r.paced = r.acts
		if g.Conveyor >= 0 || k == paced {
			r.paced = max(r.acts, float64(l.Pace())*perCycle/float64(l.Lanes))
		}
		r.seen = make([]float64, len(groups))
		for from := range groups {
			cycle := r.paced
			for i := g.First; i <= g.Last; i++ {
				cycle = l.Stations[i].withStops(cycle, perCycle, float64(l.Crew.Reaction.Mean()), l.bridged(groups, from, k)*max(r.paced, 1)/perCycle)
			}
			r.seen[from] = cycle / perCycle * reach
		}
		if b := l.Stations[g.First].Feed.Buffer; b != nil && b.Capacity > 0 {
			r.passes = float64(l.keptFor(groups[k-1])+b.Transit) / float64(b.Capacity) * reach
		}
		r.acts, r.paced = r.acts/perCycle, r.paced/perCycle
		for i := g.First; i <= g.Last; i++ {
			reach *= l.Stations[i].yield()
		}
		rates[k] = r
	}
	return rates
}

// keptFor is how long a place behind a section is kept before the carton begins its way to it: an index, where a conveyor brings it.
func (l *Line) keptFor(g Group) time.Duration {
	if g.Conveyor < 0 {
		return 0
	}
	return l.Conveyors[g.Conveyor].Index
}

// bridged is how many cartons the buffers between two sections hold.
func (l *Line) bridged(groups []Group, a, b int) float64 {
	sum := 0.0
	for k := min(a, b) + 1; k <= max(a, b); k++ {
		switch c := l.Stations[groups[k].First].Feed.Buffer.Capacity; c {
		case Unlimited:
			return math.Inf(1)
		default:
			sum += float64(c)
		}
	}
	return sum
}

// conveyorActs is the mean cycle of an indexing conveyor without the setting, ns: the longest of the stations' means and the master.
func (l *Line) conveyorActs(g Group) float64 {
	c := &l.Conveyors[g.Conveyor]
	index := float64(c.Index)
	cycle := index
	for i := g.First; i <= g.Last; i++ {
		st := &l.Stations[i]
		act := st.meanTries() * st.meanAct()
		stays := index + act
		if st.Away > 0 {
			stays = index + min(act, float64(st.Away))
		} else if st.Units > 1 {
			stays = index
		}
		cycle = max(cycle, stays, act/float64(st.Units))
	}
	turn := float64(c.Revolution)
	switch {
	case c.Release == AtCamZero && turn > 0:
		cycle = turn * math.Ceil(cycle/turn)
	case l.MasterLimits(g):
		cycle = max(cycle, turn)
	}
	return cycle
}

// meanAct is the mean length of one try, ns.
func (st *Station) meanAct() float64 {
	var sum time.Duration
	for _, part := range st.Parts {
		sum += part.Time.Mean()
	}
	return float64(sum)
}

// meanTries is how many tries an act takes on the average: 1 + p + p^2 and so on, as far as it is tried.
func (st *Station) meanTries() float64 {
	p := st.Miss.Chance
	switch {
	case st.Miss.Tries == Endless:
		return 1 / (1 - p)
	case p == 1:
		return float64(max(st.Miss.Tries, 1))
	}
	return (1 - st.givesUp()) / (1 - p)
}

// givesUp is the chance that every try of an act fails.
func (st *Station) givesUp() float64 {
	if st.Miss.Tries == Endless {
		return 0
	}
	return math.Pow(st.Miss.Chance, float64(max(st.Miss.Tries, 1)))
}

// withStops is the mean time of a cycle of so many cartons with what the station's stops and reloads add to it, ns, each with no more than
// a bridge holds. Stops by the calendar clock take their share of all time.
func (st *Station) withStops(cycle, cartons, reaction, bridge float64) float64 {
	units := float64(st.Units)
	if st.Feed.Conveyor >= 0 {
		units = 1 // where one of several robots stands, the conveyor does
	}
	sum, clock := cycle, 1.0
	for i := range st.Stops {
		s := &st.Stops[i]
		stands := min(bridge, s.stands(reaction))
		switch {
		case s.Trigger == ByClock:
			clock *= 1 + stands/max(float64(s.Every.Mean()), 1)
		case s.Trigger == ByRunning:
			sum += st.meanTries() * st.meanAct() / max(float64(s.Every.Mean()), 1) * stands / units
		case s.Acts != nil:
			sum += cartons / max(s.Acts.Mean(), 1) * stands / units
		default:
			sum += cartons * s.Chance * stands / units
		}
	}
	if s := st.Miss.Stop; s != nil {
		sum += cartons * st.givesUp() * min(bridge, s.stands(reaction)) / units
	}
	for i := range st.Materials {
		m := &st.Materials[i]
		takes := float64(m.Takes.Mean())
		if !m.Unattended {
			takes += reaction
		}
		waits := takes - float64(m.Low)*cycle*units/cartons // until the reload that was called for at the low level comes
		sum += min(bridge, max(0, waits)) * cartons / float64(m.Reload) / units
	}
	return sum * clock
}

// stands is how long the stop lasts on the average, ns, without waiting for a busy attendant.
func (s *Stop) stands(reaction float64) float64 {
	if s.Unattended {
		reaction = 0
	}
	return float64(s.Clear.Mean()) + reaction
}

// yield is the share of the places for a carton at the station that still hold one behind it.
func (st *Station) yield() float64 {
	lost := 0.0
	if st.Miss.Stop == nil && (st.Kind == Offload || st.Kind == Erect) {
		lost += st.givesUp()
	}
	if st.Ejects {
		lost += st.Reject
	}
	for i := range st.Stops {
		if s := &st.Stops[i]; s.Trigger == ByCartons {
			chance := s.Chance
			if s.Acts != nil {
				chance = 1 / max(s.Acts.Mean(), 1)
			}
			lost += chance * float64(s.Scrap)
		}
	}
	return max(0, 1-lost)
}
