package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/scenarios/document"
)

// studyFlags are the flags of every command that decides by shifts of more than one line.
type studyFlags struct {
	lineFlags
	replications, workers int
	seed                  uint64
	confidence, resume    string
}

func (f *studyFlags) add(cmd *cobra.Command, replications string) {
	f.lineFlags.add(cmd)
	cmd.Flags().IntVar(&f.replications, "shifts", 0, "`number` of shifts of each line; 0 takes "+replications)
	cmd.Flags().Uint64Var(&f.seed, "seed", 1, "`number` that all luck follows from")
	cmd.Flags().IntVar(&f.workers, "workers", 0, "`number` of shifts side by side; 0 takes one per processor")
	cmd.Flags().StringVar(&f.confidence, "confidence", "95%", "`share` of confidence of all intervals")
	cmd.Flags().StringVar(&f.resume, "resume", "", "`file` of results to go on from, and to keep them in when interrupted")
}

// options checks the flags.
func (f *studyFlags) options() (scenarios.Options, error) {
	plain := runFlags{replications: f.replications, workers: f.workers, seed: f.seed, confidence: f.confidence}
	return plain.options()
}

// begin checks the flags that every such command has, before any work is done.
func (f *studyFlags) begin() (o scenarios.Options, out output, err error) {
	if o, err = f.options(); err != nil {
		return o, out, err
	}
	out, err = newOutput(f.output, f.format)
	return o, out, err
}

// lab is where the shifts of a study are run; it goes on from the file of --resume, if there is one. The study is all that
// decides which shifts are run: the command, its flags and the files.
func (f *studyFlags) lab(study string, o scenarios.Options) (*scenarios.Lab, error) {
	lab := scenarios.NewLab(study, o)
	if f.resume == "" {
		return lab, nil
	}
	file, err := os.Open(f.resume)
	if errors.Is(err, fs.ErrNotExist) {
		return lab, output{path: f.resume}.tryFolder()
	}
	if err != nil {
		return nil, usage("give a file that an interrupted run has written", "can't read %s: %w", f.resume, plain(err))
	}
	defer func() { _ = file.Close() }() // only read from
	if err := lab.Resume(file); err != nil {
		return nil, usage("", "%s: %w", f.resume, err)
	}
	return lab, nil
}

// decisionComplaint says why a decision could not be made: a wrong request or file, or a line that can't be simulated.
func decisionComplaint(err error) error {
	if c, ok := errors.AsType[*complaint](mistaken(err)); ok {
		return c
	}
	if problems, ok := errors.AsType[document.ProblemList](err); ok {
		return &complaint{problems, "", badInput}
	}
	return runComplaint(err)
}

// ended turns the error of a decision into a complaint; what was run before an interruption is kept in a file.
func (f *studyFlags) ended(command string, lab *scenarios.Lab, err error) error {
	if !errors.Is(err, decisions.ErrInterrupted) {
		return decisionComplaint(err)
	}
	path := f.resume
	if path == "" {
		path = "dwellcast-results-" + command + "-" + lab.Study()[:8] + ".json"
	}
	var text bytes.Buffer
	if err := lab.Save(&text); err != nil {
		return &complaint{err, "", failed}
	}
	if err := replaceFile(path, text.Bytes()); err != nil {
		return &complaint{fmt.Errorf("interrupted, and can't keep the results in %s: %w", path, plain(err)), "give --resume a file in another folder", failed}
	}
	return &complaint{fmt.Errorf("interrupted; what was run is kept in %s", path), "repeat the command with --resume " + path + " to go on from there", failed}
}
