package scenarios

import (
	"time"

	"dwellcast/stations"
)

// layout says where each figure of an observation stands in its vector, so that all get an interval in one way.
type layout struct {
	stations, sections, reasons int

	good, states, bottleneck, setting, master, losses, stops, content, crew int
	size                                                                    int
}

func newLayout(sim *stations.Simulation) layout {
	l := layout{stations: len(sim.Line.Stations), sections: len(sim.Line.Sections()), reasons: len(sim.Causes())}
	place := func(n int) int {
		at := l.size
		l.size += n
		return at
	}
	l.good = place(1)
	l.states = place(l.stations * int(stations.NumStates))
	l.bottleneck = place(l.stations)
	l.setting = place(1)
	l.master = place(1)
	l.losses = place(l.reasons)
	l.stops = place(l.reasons)
	l.content = place(l.sections)
	l.crew = place(1)
	return l
}

func (l layout) state(station int, s stations.State) int {
	return l.states + station*int(stations.NumStates) + int(s)
}

// fill works out the figures of one observation from its account.
func (l layout) fill(x []float64, sim *stations.Simulation, t *stations.Tally, losses []int64, length time.Duration) {
	x[l.good] = float64(t.Flow[stations.Good])
	for i := range l.stations {
		l.fillShares(x, t, i)
	}
	l.fillBottleneck(x, sim.Line.Sections(), t)
	for r := range l.reasons {
		x[l.losses+r] = float64(losses[r])
		x[l.stops+r] = float64(t.Stops[r])
	}
	for k := range l.sections {
		x[l.content+k] = t.Content(k) / float64(length)
	}
	if n := sim.Line.Crew.Attendants; n > 0 {
		x[l.crew] = float64(t.CrewBusy[0]) / float64(length) / float64(n)
	}
}

// fillShares divides a station's time by state.
func (l layout) fillShares(x []float64, t *stations.Tally, i int) {
	var sum int64
	for s := range stations.NumStates {
		sum += *t.State(i, s)
	}
	for s := range stations.NumStates {
		x[l.state(i, s)] = float64(*t.State(i, s)) / float64(max(1, sum))
	}
}

// fillBottleneck shares out the bottleneck: among the sections of a line by the active-period method (Roser, Nakano and
// Tanaka 2002), the time of a shift of the bottleneck going half to each; within a section by the cycles in which a station,
// the setting or the master was last to report clear.
func (l layout) fillBottleneck(x []float64, groups []stations.Group, t *stations.Tally) {
	x[l.setting], x[l.master] = 0, 0
	weight := func(k int) float64 { return float64(t.Sole[k]) + float64(t.Shifting[k])/2 }
	var sum float64
	for k := range groups {
		sum += weight(k)
	}
	for k, g := range groups {
		share := 1.0
		if len(groups) > 1 {
			share = weight(k) / max(1, sum)
		}
		cycles := float64(max(1, t.Cycles[k]))
		for i := g.First; i <= g.Last; i++ {
			x[l.bottleneck+i] = share * float64(*t.At(i, stations.LastClear)) / cycles
		}
		if t.Cycles[k] == 0 {
			x[l.bottleneck+g.First] = share
		}
		x[l.setting] += share * float64(t.PacedCycles[k]) / cycles
		x[l.master] += share * float64(t.MasterCycles[k]) / cycles
	}
}
