package scenarios

import (
	"fmt"
	"strings"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// change applies what a case asks for to a copy of the base, and puts every mistake at its place in the study.
type change struct {
	study  *Study
	name   string
	at     document.Position // of the case
	root   *document.Node    // nil where the base has a mistake
	words  []string
	given  map[string]bool              // paths that were given a value
	labels map[string]document.Position // where changes that are written as text stand
	p      document.Problems
}

// read reads the changes of a case: a map of paths with their values, or a list of texts and such maps.
func (c *change) read(n *document.Node) {
	switch n.Kind() {
	case document.Map:
		c.readMap(n)
	case document.List:
		for _, item := range n.List(&c.p) {
			if item.Kind() == document.Map {
				c.readMap(item)
			} else if text := item.Text(&c.p); text != "" {
				c.apply(text, item.At())
			}
		}
	default:
		c.p.Add(n, "says not what to change", "write {sealer.dwell: 1.4 s}, or a list such as [sealer.dwell = 1.4 s, drop robot.stops.jam]")
	}
	if len(c.words) == 0 && c.p.Len() == 0 && c.root != nil {
		c.p.Add(n, "changes nothing", "write for example {sealer.dwell: 1.4 s}")
	}
}

// readMap reads changes by path. The keys add and drop take what is to be added behind, or to, a path, and what is to go.
func (c *change) readMap(n *document.Node) {
	for _, entry := range n.Map(&c.p).Entries() {
		path, value := entry.Key.Raw(), entry.Value
		switch path {
		case "add":
			c.readAdd(value)
		case "drop":
			c.readDrop(value)
		default:
			c.set(path, inWords(value), entry.Key.At(), func(root *document.Node) error { return document.SetNode(root, path, value) })
		}
	}
}

// readAdd reads what is added: a map of paths, each with an item or a list of items.
func (c *change) readAdd(n *document.Node) {
	for _, entry := range n.Map(&c.p).Entries() {
		path, items := entry.Key.Raw(), []*document.Node{entry.Value}
		if entry.Value.Kind() == document.List {
			items = entry.Value.List(&c.p)
		}
		for _, item := range items {
			c.do("add "+inWords(item)+" to "+path, entry.Key.At(), func(root *document.Node) error { return document.AppendNode(root, path, item) })
		}
	}
}

// readDrop reads what goes: a path, or a list of paths.
func (c *change) readDrop(n *document.Node) {
	items := []*document.Node{n}
	if n.Kind() == document.List {
		items = n.List(&c.p)
	}
	for _, item := range items {
		if path := item.Text(&c.p); path != "" {
			c.do("drop "+path, item.At(), func(root *document.Node) error { return document.Delete(root, path) })
		}
	}
}

// apply makes a change that is written as text: path = value, path += item, drop path.
func (c *change) apply(text string, at document.Position) {
	if path, ok := strings.CutPrefix(text, "drop "); ok {
		c.do("drop "+strings.TrimSpace(path), at, func(root *document.Node) error { return document.Delete(root, strings.TrimSpace(path)) })
		return
	}
	path, value, _ := strings.Cut(text, "=")
	path = strings.TrimSpace(path)
	c.labels["--set "+strings.TrimSpace(strings.TrimSuffix(path, "+"))] = at
	c.set(path, strings.TrimSpace(value), at, func(root *document.Node) error { return document.Apply(root, text) })
}

// set gives a path a value, and says what a change came to.
func (c *change) set(path, value string, at document.Position, make func(root *document.Node) error) {
	if c.given[path] {
		c.p.Report(document.Problem{At: at, Path: path, Message: "is set twice in this case", Hint: "keep one of them"})
	}
	if c.given == nil {
		c.given = map[string]bool{}
	}
	c.given[path] = !strings.HasSuffix(path, "+")
	before := find(c.root, path)
	c.do(path+" = "+value, at, make)
	if len(c.words) > 0 {
		c.words[len(c.words)-1] = inEffect(c.words[len(c.words)-1], path, value, before, find(c.root, path))
	}
}

// override applies a change that is written as path=value or path+=value, and says in words what it is and came to.
func override(root *document.Node, text string) (string, error) {
	path, value, _ := strings.Cut(text, "=")
	path, value = strings.TrimSpace(path), strings.TrimSpace(value)
	before := find(root, path)
	err := document.Apply(root, text)
	words := strings.Replace(path+" = "+value, "+ =", " +=", 1)
	return inEffect(words, path, value, before, find(root, path)), err
}

// inEffect says of a signed change what it came to; of any other, the words as they are.
func inEffect(words, path, value string, before, after *document.Node) string {
	if !quantity.Signed(value) || before == nil || after == nil {
		return words
	}
	return fmt.Sprintf("%s = %s %s = %s", path, inWords(before), value, inWords(after))
}

// find is a copy of the value at a path; nil where there is none.
func find(root *document.Node, path string) *document.Node {
	if root == nil {
		return nil
	}
	n, err := document.Find(root, path)
	if err != nil {
		return nil
	}
	return n.Clone()
}

// do makes one change.
func (c *change) do(words string, at document.Position, make func(root *document.Node) error) {
	c.words = append(c.words, strings.Replace(words, "+ =", " +=", 1))
	if c.root == nil {
		return
	}
	for _, problem := range problemsOf(make(c.root)) {
		problem.At = at
		c.p.Report(problem)
	}
}

// interpret reads the changed line. What is wrong with it stands in the case: at the changed value, or, where the change made
// something else wrong, at the name of the case.
func (c *change) interpret() *File {
	if c.name == "base" {
		c.p.Report(document.Problem{At: c.at, Text: c.name, Message: "is what the line as it is is called", Hint: "give the case another name"})
	}
	if c.root == nil || c.p.Len() > 0 {
		return nil
	}
	base := c.study.Line
	file, err := Interpret(base.Name, c.root)
	for _, problem := range problemsOf(err) {
		c.p.Report(c.placed(problem))
	}
	if err != nil {
		return nil
	}
	file.Overrides = append(append([]string{}, base.Overrides...), c.words...)
	return file
}

func (c *change) placed(problem document.Problem) document.Problem {
	at, written := c.labels[problem.At.Override]
	switch {
	case written:
		problem.At = at
		return problem
	case problem.At.File == c.study.Name && problem.At.Override == "" && c.study.Document != nil:
		return problem
	}
	hint := problem.Hint
	problem.Hint = ""
	return document.Problem{At: c.at, Text: c.name, Message: "leads to a mistake in the line: " + problem.Error(), Hint: hint}
}

// inWords is a value in the fewest words: a single value as it is written, the name of a map that has one, the value of one
// that carries a source, or the whole in brackets.
func inWords(n *document.Node) string {
	var ignored document.Problems
	var parts []string
	switch n.Kind() {
	case document.List:
		for _, item := range n.List(&ignored) {
			parts = append(parts, inWords(item))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case document.Map:
		for _, entry := range n.Map(&ignored).Entries() {
			key := entry.Key.Raw()
			if key == "name" || key == "cause" || n.Has("source") && (key == "value" || key == "likely") {
				return inWords(entry.Value)
			}
			parts = append(parts, key+": "+inWords(entry.Value))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return n.Raw()
}
