package scenarios

import (
	"time"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// sample gathers the shifts of a run, in the order of their numbers.
type sample struct {
	sim    *stations.Simulation
	length time.Duration // of one observation
	layout layout
	good   []float64 // cartons of each shift
	moment []stats.Moments
	total  *stations.Totals
	losses []int64
	ideal  float64 // of one observation, on average
	steady bool    // its observations are batches of a long run
}

// observation is what one shift, or one batch of a long run, says.
type observation struct {
	tally   *stations.Tally
	losses  []int64
	figures []float64
	layout  layout
	length  time.Duration
}

func newSample(sim *stations.Simulation, length time.Duration) *sample {
	l := newLayout(sim)
	return &sample{
		sim: sim, length: length, layout: l,
		moment: make([]stats.Moments, l.size),
		total:  sim.NewTotals(),
		losses: make([]int64, len(sim.Causes())),
		ideal:  float64(sim.Ideal(length)),
	}
}

func (s *sample) newObservation() observation {
	return observation{tally: s.sim.NewTally(), figures: make([]float64, s.layout.size), layout: s.layout, length: s.length}
}

// take copies the account of the shift that a simulation has just run.
func (o *observation) take(sim *stations.Simulation) {
	o.tally.Copy(sim.Tally)
	o.losses = sim.Losses(o.tally, o.length)
	o.layout.fill(o.figures, sim, o.tally, o.losses, o.length)
}

func (s *sample) add(o *observation) {
	s.good = append(s.good, float64(o.tally.Flow[stations.Good]))
	for i, x := range o.figures {
		s.moment[i].Add(x)
	}
	stations.Sum(s.total, o.tally)
	for r, n := range o.losses {
		s.losses[r] += n
	}
}

// wanted is how many shifts the wanted precision needs by what is known so far, at most twice those done.
func (s *sample) wanted(o Options) int {
	done := len(s.good)
	interval := stats.MeanInterval(s.good, o.Confidence)
	if interval.HalfWidth() <= o.Precision*interval.Mean || done >= MaxReplications {
		return done
	}
	m := s.moment[s.layout.good]
	n, ok := stats.ReplicationsForRelativeError(m.Mean(), m.Variance(), done, o.Precision, o.Confidence)
	if !ok {
		n = 2 * done
	}
	return min(max(n, done+done/10+1), 2*done, MaxReplications)
}
