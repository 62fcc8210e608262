package scenarios

import (
	"bytes"
	"encoding/json"
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

const checkpointFormat = "dwellcast results 2"

// savedCase is the sample of one line.
type savedCase struct {
	Good    []float64       `json:"good"`
	Moments []stats.Moments `json:"moments"`
	Total   []float64       `json:"total"`
	Losses  []int64         `json:"losses"`
}

// ResultsError says why saved results can't be gone on from, with a hint.
type ResultsError struct{ Text, Hint string }

// Error is the message without its hint.
func (e *ResultsError) Error() string { return e.Text }

// afresh is the hint where saved results are of no use.
const afresh = "start afresh, with --resume and the name of a new file"

// Study tells one study from another: what was run for one is not taken for another's.
func (l *Lab) Study() string { return l.study }

// Save writes all results so far, sealed by their digest.
func (l *Lab) Save(w io.Writer) error {
	c := checkpoint{checkpointFormat, Version, l.study, l.options.Seed, map[string]savedCase{}}
	for key, kept := range l.saved {
		c.Cases[key] = kept
	}
	for key, r := range l.cases {
		c.Cases[key] = savedCase{r.sample.good, r.sample.moment, r.sample.total.Cells(), r.sample.losses}
	}
	text, err := json.Marshal(c)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "%s\n%s\n", text, digest(string(text)))
	return err
}

// sealed returns what Save wrote if not a byte of it was changed since.
func sealed(r io.Reader) ([]byte, error) {
	all, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	text, sum, found := bytes.Cut(all, []byte("\n"))
	if !found || !bytes.HasPrefix(text, []byte(`{"format":"dwellcast results`)) {
		return nil, &ResultsError{"not a file of saved results", "give one that an interrupted run has written"}
	}
	if string(sum) != digest(string(text))+"\n" {
		return nil, &ResultsError{"the saved results were changed or cut off since they were written", afresh}
	}
	return text, nil
}

// Resume reads results that Save wrote for the same study, seed and version; shifts already run are then not run again.
func (l *Lab) Resume(r io.Reader) error {
	text, err := sealed(r)
	if err != nil {
		return err
	}
	var c checkpoint
	if err := json.Unmarshal(text, &c); err != nil {
		return &ResultsError{"the saved results can't be read: " + err.Error(), afresh}
	}
	switch {
	case c.Format != checkpointFormat:
		return &ResultsError{fmt.Sprintf("results in the form %q, and this version reads %q", c.Format, checkpointFormat), afresh}
	case c.Version != Version:
		return &ResultsError{fmt.Sprintf("results of version %s can't be gone on from with version %s", c.Version, Version), afresh}
	case c.Seed != l.options.Seed:
		return &ResultsError{fmt.Sprintf("results for seed %d, not %d", c.Seed, l.options.Seed), fmt.Sprintf("give --seed %d", c.Seed)}
	case c.Study != l.study:
		return &ResultsError{"results of another study, or of this one before it or its flags were changed", afresh}
	}
	l.saved = c.Cases
	return nil
}

func (k savedCase) restore(s *sample) error {
	if len(k.Moments) != len(s.moment) || len(k.Losses) != len(s.losses) || len(k.Total) != s.total.Len() {
		return &ResultsError{"saved results do not fit the line", afresh}
	}
	s.good, s.moment, s.losses = k.Good, k.Moments, k.Losses
	copy(s.total.Cells(), k.Total)
	return nil
}
