package scenarios

import (
	"errors"
	"fmt"
	"strings"

	"dwellcast/scenarios/document"
)

// Case is a base line changed in some respects.
type Case struct {
	Name string
	// Changes are what is done to the base, in words such as "sealer.dwell = 1.4 s".
	Changes []string
	File    *File
}

// readCases reads the map of cases: name -> changes.
func (s *Study) readCases(n *document.Node, p *document.Problems) {
	for _, entry := range n.Map(p).Entries() {
		c := change{study: s, name: entry.Key.Raw(), at: entry.Key.At(), labels: map[string]document.Position{}}
		if s.Line != nil {
			c.root = s.Line.Document.Clone()
		}
		c.read(entry.Value)
		if file := c.interpret(); file != nil {
			s.Cases = append(s.Cases, Case{c.name, c.words, file})
		}
		if err := c.p.Err(); err != nil {
			reportTo(p, err)
		}
	}
}

// ParseCase reads a case of the command line, such as "long dwell: sealer.dwell=1.3s; sealer.close=0.3s": a name and changes
// parted by semicolons. "drop PATH" takes something out, PATH+=VALUE adds to a list. The error is a document.ProblemList.
func ParseCase(base *File, text string) (Case, error) {
	name, changes, named := strings.Cut(text, ":")
	if !named || strings.ContainsAny(name, "={") || strings.TrimSpace(name) == "" {
		name, changes = text, text
	}
	name = strings.TrimSpace(name)
	at := document.Position{Override: fmt.Sprintf("--case %q", name)}
	c := change{name: name, at: at, root: base.Document.Clone(), study: &Study{Line: base}, labels: map[string]document.Position{}}
	for _, text := range splitChanges(changes) {
		c.apply(text, at)
	}
	if len(c.words) == 0 && c.p.Len() == 0 {
		c.p.Report(document.Problem{At: at, Message: "changes nothing", Hint: `write --case "long dwell: sealer.dwell=1.3s"`})
	}
	file := c.interpret()
	return Case{name, c.words, file}, c.p.Err()
}

// splitChanges cuts at semicolons outside quotes and brackets.
func splitChanges(text string) []string {
	var parts []string
	depth, quoted, from := 0, false, 0
	for i, r := range text {
		switch {
		case r == '"':
			quoted = !quoted
		case quoted:
		case r == '{' || r == '[':
			depth++
		case r == '}' || r == ']':
			depth--
		case r == ';' && depth == 0:
			parts, from = append(parts, text[from:i]), i+1
		}
	}
	var kept []string
	for _, part := range append(parts, text[from:]) {
		if part = strings.TrimSpace(part); part != "" {
			kept = append(kept, part)
		}
	}
	return kept
}

// reportTo takes over the problems of an error.
func reportTo(p *document.Problems, err error) {
	for _, problem := range problemsOf(err) {
		p.Report(problem)
	}
}

// problemsOf is the list that an error is, or a list of that error alone.
func problemsOf(err error) document.ProblemList {
	list, ok := errors.AsType[document.ProblemList](err)
	if err != nil && !ok {
		list = document.ProblemList{{Message: err.Error()}}
	}
	return list
}
