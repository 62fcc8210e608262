package scenarios

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// File is a line file that was read without a mistake: the line, with every quantity resolved at its setting, and what the
// file asks for beside it.
type File struct {
	// Name is the path, or what stands for it in messages.
	Name string
	Line *stations.Line
	// Target is the wanted number of good cartons per shift; 0 for none.
	Target float64
	// Steady is nil where the file asks for shifts, otherwise it asks for long-run figures.
	Steady *SteadySpec
	// Travels say how each of the line's conveyors moves, in the order of Line.Conveyors.
	Travels []Travel
	// Mechanics is how the line moves, as far as the file says.
	Mechanics Mechanics
	// Document is what was read, the overrides applied.
	Document *document.Node
	// Assumptions are the quantities that carry a source or a range.
	Assumptions []document.Assumption
	// Overrides are the changes made to the file, in words: "sealer.dwell = 1.25 s +0.2 s = 1.45 s".
	Overrides []string
	// Warnings are about what the file says, not about a figure of a run.
	Warnings []Warning
}

// Open reads the line file at a path; "-" is standard input, and example:NAME an embedded example. Overrides are
// "path=value" or "path+=value" (see document.Apply). The error is a document.ProblemList with every mistake in the file.
func Open(path string, overrides []string) (*File, error) {
	root, err := load(path)
	if err != nil {
		return nil, err
	}
	return interpret(path, root, overrides)
}

// Read is Open for the text of a line file; name stands for it in messages.
func Read(name string, r io.Reader, overrides []string) (*File, error) {
	root, err := document.Load(name, r)
	if err != nil {
		return nil, err
	}
	return interpret(name, root, overrides)
}

// Interpret reads a document that is loaded already, such as a changed Clone of File.Document.
func Interpret(name string, root *document.Node) (*File, error) { return interpret(name, root, nil) }

func load(path string) (*document.Node, error) {
	if path == "-" {
		return document.Load("standard input", os.Stdin)
	}
	name, isExample := strings.CutPrefix(path, "example:")
	if !isExample {
		return document.LoadFile(path)
	}
	text, err := Example(name)
	if err != nil {
		return nil, document.ProblemList{{At: document.Position{File: path}, Message: err.Error(), Hint: "examples: " + strings.Join(Examples(), ", ")}}
	}
	return document.Load(path, strings.NewReader(string(text)))
}

// interpret applies the overrides and reads the line.
func interpret(name string, root *document.Node, overrides []string) (*File, error) {
	r := &lineReader{line: &stations.Line{Lanes: 1}}
	r.file = &File{Name: name, Line: r.line, Document: root}
	for _, change := range overrides {
		words, err := override(root, change)
		r.file.Overrides = append(r.file.Overrides, words)
		r.reportAll(err)
	}
	r.read(root)
	if err := r.p.Err(); err != nil {
		return nil, err
	}
	if r.line.Title == "" {
		r.line.Title = strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	}
	r.file.Assumptions = root.Assumptions()
	return r.file, nil
}

// reportAll takes over the problems that another reader found.
func (r *lineReader) reportAll(err error) {
	list, ok := errors.AsType[document.ProblemList](err)
	if err != nil && !ok {
		list = document.ProblemList{{Message: err.Error()}}
	}
	for _, problem := range list {
		r.p.Report(problem)
	}
}
