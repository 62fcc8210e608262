package scenarios

import (
	"io"

	"dwellcast/scenarios/document"
)

// Input is a file that was read once, as standard input and pipes can be, and may be a line or a study.
type Input struct {
	name string
	root *document.Node
}

// Load reads the file at a path; "-" is standard input, and example:NAME an embedded example. The error is a document.ProblemList.
func Load(path string) (*Input, error) {
	root, err := load(path)
	if err != nil {
		return nil, err
	}
	return &Input{path, root}, nil
}

// LoadText is Load for the text of a file; name stands for it in messages.
func LoadText(name string, r io.Reader) (*Input, error) {
	root, err := document.Load(name, r)
	if err != nil {
		return nil, err
	}
	return &Input{name, root}, nil
}

// IsStudy says that it is a study rather than a line: it has no stations of its own.
func (in *Input) IsStudy() bool {
	return !in.root.Has("stations") && (in.root.Has("line") || in.root.Has("cases"))
}

// Line reads it as a line file; see Open.
func (in *Input) Line(overrides []string) (*File, error) {
	return interpret(in.name, in.root, overrides)
}

// Study reads it as a study; see OpenStudy.
func (in *Input) Study(overrides []string, readers map[string]SectionReader) (*Study, error) {
	return readStudy(in.name, in.root, overrides, readers)
}
