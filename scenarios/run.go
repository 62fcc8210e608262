package scenarios

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"

	"dwellcast/stations"
)

// Options say how a run is made. The zero value asks for the defaults.
type Options struct {
	// Replications is the number of independent shifts; 0 takes as many as fit into about a second.
	Replications int
	Seed         uint64
	// Workers is how many shifts run side by side; 0 takes one per processor. It does not change the answer.
	Workers int
	// Precision is the wanted half-width of the good rate as a share of its mean, such as 0.005; 0 asks for none. Shifts are
	// then added until it is met or MaxReplications are run.
	Precision float64
	// Confidence of the intervals; 0 means 0.95.
	Confidence float64
	// Progress, if set, is told how many of how many shifts are done.
	Progress func(done, total int)
}

// MaxReplications is how many shifts a run with a wanted precision will make at the most.
const MaxReplications = 100_000

func (o Options) withDefaults(f *File) Options {
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	if o.Confidence == 0 {
		o.Confidence = 0.95
	}
	if o.Replications <= 0 {
		o.Replications = defaultReplications(f.Line)
		if o.Precision > 0 {
			o.Replications = min(o.Replications, firstStage)
		}
	}
	return o
}

// Run forecasts the line of the file. When ctx ends early it returns what is known by then, marked as interrupted.
func Run(ctx context.Context, f *File, o Options) (*Forecast, error) {
	o = o.withDefaults(f)
	if f.Steady != nil {
		return runSteady(ctx, f, o)
	}
	r, err := newRunner(f.Line, o)
	if err != nil {
		return nil, err
	}
	interrupted, err := r.runTo(ctx, o.Replications)
	for err == nil && !interrupted && o.Precision > 0 {
		n := r.sample.wanted(o)
		if n <= r.done {
			break
		}
		interrupted, err = r.runTo(ctx, n)
	}
	if err != nil {
		return nil, err
	}
	forecast := r.sample.forecast(f, o)
	forecast.Interrupted = interrupted
	return forecast, nil
}

// runner runs shifts of a line side by side and takes them into the sample in the order of their numbers, so that the
// answer does not depend on who finished first.
type runner struct {
	options Options
	sims    []*stations.Simulation // one per worker
	sample  *sample
	done    int
	block   []observation
}

func newRunner(line *stations.Line, o Options) (*runner, error) {
	r := &runner{options: o, block: make([]observation, 16*o.Workers)}
	for range o.Workers {
		sim, err := stations.New(line)
		if err != nil {
			return nil, err
		}
		r.sims = append(r.sims, sim)
	}
	r.sample = newSample(r.sims[0], line.Shift.Length)
	for i := range r.block {
		r.block[i] = r.sample.newObservation()
	}
	return r, nil
}

// runTo runs shifts until n are done.
func (r *runner) runTo(ctx context.Context, n int) (interrupted bool, err error) {
	for r.done < n {
		if ctx.Err() != nil {
			return true, nil
		}
		block := r.block[:min(len(r.block), n-r.done)]
		if err := r.runBlock(block); err != nil {
			return false, err
		}
		for i := range block {
			r.sample.add(&block[i])
		}
		r.done += len(block)
		if r.options.Progress != nil {
			r.options.Progress(r.done, n)
		}
	}
	return false, nil
}

func (r *runner) runBlock(block []observation) error {
	var next atomic.Int64
	var wait sync.WaitGroup
	errs := make([]error, len(block))
	for _, sim := range r.sims[:min(len(r.sims), len(block))] {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(block) {
					return
				}
				if errs[i] = sim.Shift(r.options.Seed, r.done+i); errs[i] == nil {
					block[i].take(sim)
				}
			}
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
