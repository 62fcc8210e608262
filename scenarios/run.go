package scenarios

import (
	"context"
	"errors"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"

	"dwellcast/sim"
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

// Run forecasts the line of the file. When ctx ends early it returns what is known by then, marked as interrupted. A line that breaks
// a limit is run all the same; the first warning then says so.
func Run(ctx context.Context, f *File, o Options) (*Forecast, error) {
	forecast, err := run(ctx, f, o)
	if err != nil {
		return nil, err
	}
	forecast.Warnings = append(RefusalWarning(f), forecast.Warnings...)
	return forecast, nil
}

func run(ctx context.Context, f *File, o Options) (*Forecast, error) {
	o = o.withDefaults(f)
	if f.Steady != nil {
		return runSteady(ctx, f, o)
	}
	r, err := NewShifts(f, o)
	if err != nil {
		return nil, err
	}
	interrupted, err := r.Extend(ctx, r.options.Replications)
	for err == nil && !interrupted && o.Precision > 0 {
		n := r.sample.wanted(o)
		if n <= r.Done() {
			break
		}
		interrupted, err = r.Extend(ctx, n)
	}
	if err != nil {
		return nil, err
	}
	forecast := r.Forecast()
	forecast.Interrupted = interrupted
	return forecast, nil
}

// Shifts runs shifts of a line side by side and takes them in by the order of their numbers, so that the answer does not
// depend on who finished first. Two lines run with the same seed share their luck, shift by shift.
type Shifts struct {
	file    *File
	options Options
	sims    []*stations.Simulation // one per worker
	sample  *sample
	block   []observation
}

// NewShifts prepares to run shifts of the file.
func NewShifts(f *File, o Options) (*Shifts, error) {
	one, err := stations.New(f.Line)
	if err != nil {
		return nil, err
	}
	return &Shifts{file: f, options: o.withDefaults(f), sample: newSample(one, f.Line.Shift.Length)}, nil
}

// open builds a simulation for each worker, and close lets go of them: between two calls of Extend only results are kept.
func (r *Shifts) open() error {
	for range r.options.Workers {
		one, err := stations.New(r.file.Line)
		if err != nil {
			return err
		}
		r.sims = append(r.sims, one)
	}
	r.block = make([]observation, 16*r.options.Workers)
	for i := range r.block {
		r.block[i] = r.sample.newObservation()
	}
	return nil
}

func (r *Shifts) close() { r.sims, r.block = nil, nil }

// Done is how many shifts have been run.
func (r *Shifts) Done() int { return len(r.sample.good) }

// Good returns the good cartons of each shift run so far, in the order of their numbers.
func (r *Shifts) Good() []float64 { return r.sample.good }

// Forecast sums up the shifts run so far.
func (r *Shifts) Forecast() *Forecast { return r.sample.forecast(r.file, r.options) }

// Extend runs shifts until n are done, or until ctx ends.
func (r *Shifts) Extend(ctx context.Context, n int) (interrupted bool, err error) {
	if r.Done() >= n {
		return false, nil
	}
	if err := r.open(); err != nil {
		return false, err
	}
	defer r.close()
	defer stopWith(ctx, r.sims...)()
	for r.Done() < n {
		if ctx.Err() != nil {
			return true, nil
		}
		block := r.block[:min(len(r.block), n-r.Done())]
		run, err := r.runBlock(block)
		for i := range block[:run] {
			r.sample.add(&block[i])
		}
		if errors.Is(err, sim.ErrStopped) {
			return true, nil
		}
		if err != nil {
			return false, err
		}
		if r.options.Progress != nil {
			r.options.Progress(r.Done(), n)
		}
	}
	return false, nil
}

// stopWith stops simulations when ctx ends; the function that it returns lets go of them.
func stopWith(ctx context.Context, sims ...*stations.Simulation) (release func()) {
	var flag atomic.Bool
	for _, s := range sims {
		s.StopWhen(&flag)
	}
	unhook := context.AfterFunc(ctx, func() { flag.Store(true) })
	return func() { unhook() }
}

// guarded turns a panic of work done on the side into an error, as the kernel does within its processes.
func guarded(work func() error) (err error) {
	defer func() {
		if value := recover(); value != nil {
			err = &sim.Fault{Process: "account", Value: value, Stack: debug.Stack()}
		}
	}()
	return work()
}

// runBlock runs the next shifts side by side. It returns how many came to their end before the first that did not, and why that did not.
func (r *Shifts) runBlock(block []observation) (run int, err error) {
	var next atomic.Int64
	var wait sync.WaitGroup
	errs := make([]error, len(block))
	for _, one := range r.sims[:min(len(r.sims), len(block))] {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(block) {
					return
				}
				errs[i] = guarded(func() error {
					if err := one.Shift(r.options.Seed, r.Done()+i); err != nil {
						return err
					}
					block[i].take(one)
					return nil
				})
			}
		})
	}
	wait.Wait()
	for i, err := range errs {
		if err != nil {
			return i, err
		}
	}
	return len(block), nil
}
