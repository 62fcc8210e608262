package scenarios

import (
	"context"

	"dwellcast/stations"
)

// Trace runs the first shift of a run with the seed and returns what every unit did when: each stretch of time in one state,
// with the carton it was busy with, in the order in which the stretches ended.
func Trace(ctx context.Context, f *File, seed uint64) ([]stations.Stretch, error) {
	sim, err := stations.New(f.Line)
	if err != nil {
		return nil, err
	}
	defer stopWith(ctx, sim)()
	var list []stations.Stretch
	sim.Trace = func(s stations.Stretch) { list = append(list, s) }
	if err := sim.Shift(seed, 0); err != nil {
		return nil, err
	}
	return list, nil
}
