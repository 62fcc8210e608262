package scenarios

import (
	"context"
	"errors"
	"math"
	"time"

	"dwellcast/sim"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// SteadySpec asks for long-run figures: one long run, cut into batches after a warm-up.
type SteadySpec struct {
	// Length of the run, warm-up included.
	Length time.Duration
	// WarmUp is left out of all figures; 0 finds it by MSER-5 (White 1997).
	WarmUp time.Duration
	// Batches is the number of batches that the intervals rest on.
	Batches int
	// Shift is the length of time that figures per shift are given for.
	Shift time.Duration
}

// stepsOf is how many equal stretches a long run is watched in: 4000, or fewer for a line with a large account.
func stepsOf(sim *stations.Simulation) int {
	const cells = 8_000_000
	return min(4000, max(400, cells/sim.NewTally().Len()))
}

// ErrNothingYet says that a run was interrupted before anything of it counts.
var ErrNothingYet = errors.New("interrupted before anything was known")

// runSteady forecasts long-run figures by the method of batch means.
func runSteady(ctx context.Context, f *File, o Options) (*Forecast, error) {
	simulation, err := stations.New(f.Line)
	if err != nil {
		return nil, err
	}
	watch, err := watchRun(ctx, simulation, f.Steady, o)
	if err != nil {
		return nil, err
	}
	warm := watch.warmUp(f.Steady)
	if len(watch.seen) <= warm.steps {
		return nil, ErrNothingYet
	}
	s := watch.batches(simulation, f.Steady, warm.steps)
	out := s.forecast(f, o)
	out.Interrupted = ctx.Err() != nil
	perShift(out, s, f.Steady)
	out.wholeRunBottleneck(s.layout, simulation)
	out.Steady = &Steady{
		Length: f.Steady.Length, WarmUp: time.Duration(warm.steps) * watch.step, WarmUpGiven: f.Steady.WarmUp > 0,
		Batches: len(s.good), BatchLength: s.length,
	}
	out.Warnings = append(out.Warnings, warm.warnings...)
	out.Warnings = append(out.Warnings, dependence(s.good)...)
	out.Warnings = append(out.Warnings, watch.filling(simulation)...)
	return out, nil
}

// watched is a long run seen after each of its steps.
type watched struct {
	step  time.Duration
	seen  []*stations.Tally // the account so far, after each step
	good  []float64         // good cartons in each step
	empty *stations.Tally
}

func watchRun(ctx context.Context, simulation *stations.Simulation, spec *SteadySpec, o Options) (*watched, error) {
	steps := stepsOf(simulation)
	w := &watched{step: spec.Length / time.Duration(steps), empty: simulation.NewTally()}
	last := int64(0)
	defer stopWith(ctx, simulation)()
	err := simulation.Watched(o.Seed, 0, w.step, func(t *stations.Tally) bool {
		seen := simulation.NewTally()
		seen.Copy(t)
		w.seen = append(w.seen, seen)
		w.good = append(w.good, float64(t.Flow[stations.Good]-last))
		last = t.Flow[stations.Good]
		if o.Progress != nil {
			o.Progress(len(w.seen), steps)
		}
		return ctx.Err() != nil
	})
	if errors.Is(err, sim.ErrStopped) {
		err = nil
	}
	return w, err
}

// warm says how many steps a warm-up takes, and what is doubtful about it.
type warm struct {
	steps    int
	warnings []Warning
}

func (w *watched) warmUp(spec *SteadySpec) warm {
	if spec.WarmUp > 0 {
		return warm{steps: int((spec.WarmUp + w.step - 1) / w.step)}
	}
	cut := stats.MSER5(w.good)
	out := warm{steps: cut.Observations}
	if !cut.Steady() {
		out.warnings = append(out.warnings, Warning{"good_rate",
			"the line never reached a steady state: the warm-up found is half the run or more; make the run longer, or look for a buffer that only fills"})
	}
	return out
}

// batches cuts what follows the warm-up into equal batches, each an observation of its own.
func (w *watched) batches(sim *stations.Simulation, spec *SteadySpec, from int) *sample {
	n := max(1, min(spec.Batches, len(w.seen)-from))
	size := (len(w.seen) - from) / n
	s := newSample(sim, time.Duration(size)*w.step)
	s.steady = true
	o := s.newObservation()
	s.ideal = 0
	for b := range n {
		begins, ends := from+b*size, from+(b+1)*size
		o.tally.Copy(w.at(ends))
		o.tally.Subtract(w.at(begins))
		var ideal int64
		ideal, o.losses = sim.Batch(o.tally, time.Duration(begins)*w.step, time.Duration(ends)*w.step)
		s.ideal += float64(ideal) / float64(n)
		s.layout.fill(o.figures, sim, o.tally, o.losses, s.length)
		s.add(&o)
	}
	return s
}

// at is the account after so many steps.
func (w *watched) at(steps int) *stations.Tally {
	if steps == 0 {
		return w.empty
	}
	return w.seen[steps-1]
}

// dependence warns when the batches are too short to count as independent.
func dependence(batches []float64) []Warning {
	check := stats.Independence(batches)
	if check.P >= 0.01 || check.Lag1 <= 0 {
		return nil
	}
	return []Warning{{"good_rate", "successive batches are alike (their lag-1 correlation is large): the interval is too narrow; make the run longer"}}
}

// filling warns of a buffer without limit that holds much more late in the run than early.
func (w *watched) filling(sim *stations.Simulation) []Warning {
	var list []Warning
	half := len(w.seen) / 2
	for k, g := range sim.Line.Sections() {
		head := &sim.Line.Stations[g.First]
		if k == 0 || head.Feed.Buffer == nil || head.Feed.Buffer.Capacity >= 0 || half == 0 {
			continue
		}
		early := w.at(half).Content(k)
		late := w.at(2*half).Content(k) - early
		if content := early / float64(half) / float64(w.step); late > 2*early && content > 10 {
			list = append(list, Warning{"buffer " + head.Name, "it only fills: no long-run content exists"})
		}
	}
	return list
}

// perShift turns the figures of a batch into figures per shift; how single shifts spread, batches can't say.
func perShift(out *Forecast, s *sample, spec *SteadySpec) {
	k := float64(spec.Shift) / float64(s.length)
	out.Scheduled = spec.Shift
	out.IdealPerShift *= k
	unknown := math.NaN()
	out.GoodPerShift = Spread{scale(out.GoodPerShift.Interval, k), unknown, unknown, unknown, unknown}
	if out.Target != nil {
		out.Target = nil
		out.Warnings = append(out.Warnings, Warning{"target", "a long run says nothing of the chance that one shift makes the target; leave out run to simulate shifts"})
	}
	for i := range out.Stations {
		st := &out.Stations[i]
		st.Acts, st.Misses, st.Rejects = k*st.Acts, k*st.Misses, k*st.Rejects
		for j := range st.Waits {
			st.Waits[j].Minutes *= k
		}
	}
	for i := range out.Losses {
		out.Losses[i].Cartons = scale(out.Losses[i].Cartons, k)
	}
	for i := range out.Stops {
		p := &out.Stops[i]
		p.PerShift = scale(p.PerShift, k)
		p.AwaitingMinutes, p.ClearingMinutes, p.CartonsLost = k*p.AwaitingMinutes, k*p.ClearingMinutes, k*p.CartonsLost
	}
	for i := range out.Buffers {
		out.Buffers[i].Through *= k
	}
}

// wholeRunBottleneck takes the shares of the bottleneck from the run as a whole, warm-up included: the rule looks at periods
// longer than a batch, so that batches give it no interval.
func (out *Forecast) wholeRunBottleneck(l layout, sim *stations.Simulation) {
	groups := sim.Line.Sections()
	if len(groups) == 1 {
		return
	}
	x := make([]float64, l.size)
	l.fillBottleneck(x, groups, sim.Tally)
	unsure := func(mean float64) stats.Interval {
		return stats.Interval{Mean: mean, Low: math.Inf(-1), High: math.Inf(1), N: 1, Confidence: out.Confidence}
	}
	for i := range out.Stations {
		out.Stations[i].BottleneckShare = unsure(x[l.bottleneck+i])
	}
	out.SettingShare, out.MasterShare = unsure(x[l.setting]), unsure(x[l.master])
}
