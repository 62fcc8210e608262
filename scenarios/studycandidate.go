package scenarios

import (
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
)

// Changed is the study's line with changes, written as those of a case; nil, and a report, where they are wrong. The name stands
// for it in messages about what the changes lead to.
func (s *Study) Changed(name *document.Node, changes *document.Node, p *document.Problems) *Case {
	c := change{study: s, name: name.Raw(), at: name.At(), labels: map[string]document.Position{}}
	if s.Line != nil {
		c.root = s.Line.Document.Clone()
	}
	c.read(changes)
	file := c.interpret()
	if err := c.p.Err(); err != nil {
		reportTo(p, err)
	}
	if file == nil {
		return nil
	}
	return &Case{c.name, c.words, file}
}

// Other is another line that the study names, by a path from the study's folder or as example:NAME, or that it holds; nil, and a
// report, where it can't be read.
func (s *Study) Other(n *document.Node, p *document.Problems) *File {
	return readBase(n, s.Name, nil, p)
}

// With is the study with values of its own changed by path, such as size.demand, and its line by overrides. The error is a
// document.ProblemList.
func (s *Study) With(changes, overrides []string, readers map[string]SectionReader) (*Study, error) {
	root := s.Document.Clone()
	for _, change := range changes {
		if err := document.Apply(root, change); err != nil {
			return nil, err
		}
	}
	return readStudy(s.Name, root, append(append([]string{}, s.Line.Overrides...), overrides...), readers)
}

// ReadLaw reads a law of times, in seconds, or of counts, written as in a line file; nil, and a report, where there is none.
func ReadLaw(n *document.Node, dimension quantity.Dimension, p *document.Problems) random.Distribution {
	r := &lineReader{}
	law := r.law(n, dimension)
	if err := r.p.Err(); err != nil {
		reportTo(p, err)
		return nil
	}
	return law
}
