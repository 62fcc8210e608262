package scenarios

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"dwellcast/sim/stats"
)

// Version is that of the simulator: results of one are not mixed with results of another.
const Version = "0.1.0"

// checkpoint is what Save writes.
type checkpoint struct {
	Format  string               `json:"format"`
	Version string               `json:"version"`
	Study   string               `json:"study"`
	Seed    uint64               `json:"seed"`
	Cases   map[string]savedCase `json:"cases"`
}

const checkpointFormat = "dwellcast results 1"

// savedCase is the sample of one line.
type savedCase struct {
	Good    []float64       `json:"good"`
	Moments []stats.Moments `json:"moments"`
	Total   []int64         `json:"total"`
	Losses  []int64         `json:"losses"`
}

// Save writes all results so far.
func (l *Lab) Save(w io.Writer) error {
	c := checkpoint{checkpointFormat, Version, l.study, l.options.Seed, map[string]savedCase{}}
	for key, kept := range l.saved {
		c.Cases[key] = kept
	}
	for key, r := range l.cases {
		c.Cases[key] = savedCase{r.sample.good, r.sample.moment, r.sample.total.Cells(), r.sample.losses}
	}
	return json.NewEncoder(w).Encode(c)
}

// Resume reads results that Save wrote for the same study, seed and version; shifts already run are then not run again.
func (l *Lab) Resume(r io.Reader) error {
	var c checkpoint
	if err := json.NewDecoder(r).Decode(&c); err != nil || c.Format != checkpointFormat {
		return errors.New("not a file of saved results; give one that an interrupted run has written")
	}
	switch {
	case c.Version != Version:
		return fmt.Errorf("results of version %s can't be gone on from with version %s; start afresh", c.Version, Version)
	case c.Study != l.study:
		return errors.New("results of another study, or of this one before it was changed; start afresh")
	case c.Seed != l.options.Seed:
		return fmt.Errorf("results for seed %d, not %d; give --seed %d", c.Seed, l.options.Seed, c.Seed)
	}
	l.saved = c.Cases
	return nil
}

func (k savedCase) restore(s *sample) error {
	if len(k.Moments) != len(s.moment) || len(k.Losses) != len(s.losses) || len(k.Total) != s.total.Len() {
		return errors.New("saved results do not fit the line; start afresh")
	}
	s.good, s.moment, s.losses = k.Good, k.Moments, k.Losses
	copy(s.total.Cells(), k.Total)
	return nil
}
