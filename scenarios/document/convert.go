package document

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"
)

// converter turns the YAML reader's tree into ours, aliases written out.
type converter struct {
	origin Position
	nodes  int
}

func convert(origin Position, tree *yaml.Node) (*Node, error) {
	c := &converter{origin: origin}
	node, problem := c.node(tree, 0)
	if problem != nil {
		return nil, ProblemList{*problem}
	}
	return node, nil
}

// node converts a node and all below it; depth guards against an alias that contains itself.
func (c *converter) node(y *yaml.Node, depth int) (*Node, *Problem) {
	if y.Kind == yaml.DocumentNode {
		y = y.Content[0]
	}
	if y.Kind == yaml.AliasNode {
		y = y.Alias
	}
	c.nodes++
	switch {
	case depth > maxDepth:
		return nil, c.problem(y, "nested more than 100 deep", "a line file needs about six levels; does an anchor contain its own alias?")
	case c.nodes > maxNodes:
		return nil, c.problem(y, "more than 20000 values", "a line file has a few hundred; do aliases multiply here?")
	case y.Style&yaml.TaggedStyle != 0:
		return nil, c.problem(y, fmt.Sprintf("the tag %s is not read", y.Tag), "remove it; put a text in quotes instead")
	}
	if r := deceptive(y.Value); r != 0 && y.Kind == yaml.ScalarNode {
		return nil, c.problem(y, fmt.Sprintf("the text holds %U, which shows nothing of itself but changes what is shown around it", r), "take it out")
	}
	n := &Node{text: y.Value, tag: y.ShortTag(), style: y.Style, at: c.origin.at(y.Line, y.Column)}
	var problem *Problem
	switch y.Kind {
	case yaml.MappingNode:
		n.kind = Map
		problem = c.pairs(n, y.Content, depth)
	case yaml.SequenceNode:
		n.kind = List
		problem = c.items(n, y.Content, depth)
	}
	n.adopt()
	return n, problem
}

// deceptive is the first control character in a text, line breaks and tabs aside, or the first mark that turns the direction of writing
// (Unicode Standard Annex 9); 0 where there is none.
func deceptive(text string) rune {
	for _, r := range text {
		switch {
		case r == '\n', r == '\t', r == '\r':
		case r < ' ', r >= 0x7f && r < 0xa0, r == 0x061c, r == 0x200e, r == 0x200f, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return r
		}
	}
	return 0
}

func (c *converter) items(n *Node, content []*yaml.Node, depth int) *Problem {
	for _, y := range content {
		v, problem := c.node(y, depth+1)
		if problem != nil {
			return problem
		}
		n.values = append(n.values, v)
	}
	return nil
}

func (c *converter) pairs(n *Node, content []*yaml.Node, depth int) *Problem {
	for i := 0; i+1 < len(content); i += 2 {
		if key := content[i]; key.Tag == "!!merge" {
			return c.problem(key, "merge keys (<<) are not read", "write the keys out, or use an alias for the whole value")
		}
		if key := content[i]; key.Kind != yaml.ScalarNode || strings.TrimSpace(key.Value) == "" {
			return c.problem(key, "a key is not a plain word", "write key: value")
		}
		if len(content[i].Value) > maxKey {
			return c.problem(content[i], "a key of more than 200 letters", "write key: value")
		}
		k, problem := c.node(content[i], depth+1)
		if problem != nil {
			return problem
		}
		n.keys = append(n.keys, k)
		if problem := c.items(n, content[i+1:i+2], depth); problem != nil {
			return problem
		}
	}
	return nil
}

func (c *converter) problem(y *yaml.Node, message, hint string) *Problem {
	return &Problem{At: c.origin.at(y.Line, y.Column), Message: message, Hint: hint}
}
