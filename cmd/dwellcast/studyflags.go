package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

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

// add adds the flags; number says what the number of shifts means.
func (f *studyFlags) add(cmd *cobra.Command, number string) {
	f.lineFlags.add(cmd)
	cmd.Flags().IntVar(&f.replications, "shifts", 0, number)
	cmd.Flags().Uint64Var(&f.seed, "seed", 1, "`number` that all luck follows from")
	cmd.Flags().IntVar(&f.workers, "workers", 0, "`number` of shifts side by side; 0 takes one per processor")
	cmd.Flags().StringVar(&f.confidence, "confidence", "95%", "`share` of confidence of all intervals")
	cmd.Flags().StringVar(&f.resume, "resume", "", "`file` of results to go on from, and to keep them in when interrupted")
}

// options checks the flags.
func (f *studyFlags) options() (o scenarios.Options, err error) {
	o = scenarios.Options{Replications: f.replications, Seed: f.seed, Workers: f.workers}
	if f.replications < 0 || f.replications > scenarios.MaxReplications {
		return o, usage(fmt.Sprintf("give 1 to %d, or 0 for the default", scenarios.MaxReplications), "--shifts is %d", f.replications)
	}
	if f.workers < 0 || f.workers > 1024 {
		return o, usage("give 1 to 1024, or 0 for one per processor", "--workers is %d", f.workers)
	}
	o.Confidence, err = share("--confidence", f.confidence, 0.5, 0.9999)
	return o, err
}

// begin checks the flags that every such command has, before any work is done.
func (f *studyFlags) begin() (o scenarios.Options, out output, err error) {
	if o, err = f.options(); err != nil {
		return o, out, err
	}
	out, err = f.outputFlags.open()
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
	missing := errors.Is(err, fs.ErrNotExist)
	if err != nil && !missing {
		return nil, usage("give a file that an interrupted run has written", "can't read %s: %w", f.resume, plain(err))
	}
	if err := (output{path: f.resume}).tryFolder(); err != nil || missing { // nothing is lost that can be found out now
		return lab, err
	}
	defer func() { _ = file.Close() }() // only read from
	err = lab.Resume(file)
	if wrong, ok := errors.AsType[*scenarios.ResultsError](err); ok {
		return nil, usage(wrong.Hint, "%s: %w", f.resume, err)
	}
	return lab, err
}

// study reads a study with the readers for the sections of a command; a line stands for a study of that line alone, without a document.
func (f *studyFlags) study(path string, readers map[string]scenarios.SectionReader) (*scenarios.Study, error) {
	in, err := scenarios.Load(path)
	if err != nil {
		return nil, err
	}
	if in.IsStudy() {
		return in.Study(f.set, readers)
	}
	file, err := in.Line(f.set)
	if err != nil {
		return nil, err
	}
	return &scenarios.Study{Name: path, Title: file.Line.Title, Line: file}, nil
}

// decisionComplaint says why a decision could not be made: a wrong request or file, or a line that can't be simulated.
func decisionComplaint(err error) error {
	if c, ok := errors.AsType[*complaint](err); ok {
		return c
	}
	if r, ok := errors.AsType[*scenarios.ResultsError](err); ok {
		return &complaint{r, r.Hint, badInput}
	}
	if m, ok := errors.AsType[*decisions.Mistake](err); ok {
		return &complaint{m, m.Hint, badInput}
	}
	if problems, ok := errors.AsType[document.ProblemList](err); ok {
		return &complaint{problems, "", badInput}
	}
	return runComplaint(err)
}

// ended turns the error of a decision into a complaint; what was run before an interruption is kept in a file.
func (p *program) ended(cmd *cobra.Command, f *studyFlags, lab *scenarios.Lab, err error) error {
	if !errors.Is(err, decisions.ErrInterrupted) {
		return decisionComplaint(err)
	}
	path := f.resume
	if path == "" {
		path = "dwellcast-results-" + cmd.Name() + "-" + lab.Study()[:8] + ".json"
	}
	p.keeping.Lock() // and never let go of: the program ends next
	var text bytes.Buffer
	if err := lab.Save(&text); err != nil {
		return &complaint{err, "", failed}
	}
	if err := replaceFile(path, text.Bytes()); err != nil {
		elsewhere := filepath.Join(os.TempDir(), filepath.Base(path))
		if replaceFile(elsewhere, text.Bytes()) != nil {
			return &complaint{fmt.Errorf("interrupted, and can't keep the results in %s: %w", path, plain(err)), "give --resume a file in another folder", failed}
		}
		path = elsewhere
	}
	return &complaint{fmt.Errorf("interrupted; what was run is kept in %s", path), "repeat the command with --resume " + path + " to go on from there", failed}
}
