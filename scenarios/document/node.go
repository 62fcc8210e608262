// Package document reads a YAML file into a tree that remembers where everything stood, so that every
// mistake can be reported with file, line and column. It is strict: no unknown or double keys, no anchors
// that explode, no tags, no second document. It is the only package that knows YAML.
//
// A caller walks the tree by hand:
//
//	var p document.Problems
//	f := root.Map(&p)
//	setting := f.Require("setting").Rate(&p)
//	shift := f.Take("shift").Map(&p)
//	...
//	f.Done()
//	if err := p.Err(); err != nil { ... }
//
// Readers of an absent (nil) node return the zero value and report nothing.
package document

import (
	"fmt"
	"slices"

	"go.yaml.in/yaml/v4"
)

// A Kind is the shape of a node.
type Kind int

// The shapes of nodes.
const (
	Scalar Kind = iota // a single value
	List               // items in order
	Map                // keys with values
)

// String is the shape in words.
func (k Kind) String() string {
	return [...]string{"a single value", "a list", "a map"}[k]
}

// A Position says where a node was written: in a file, or in an override that replaces a line number.
type Position struct {
	File         string // name as given to Load
	Line, Column int    // counted from 1; 0 where the whole file is meant
	Override     string // such as "--set sealer.dwell"; empty for a node of the file
}

// String is file:line:column, or the override.
func (at Position) String() string {
	switch {
	case at.Override != "":
		return at.Override
	case at.Line == 0:
		return at.File
	}
	return fmt.Sprintf("%s:%d:%d", at.File, at.Line, at.Column)
}

// A Node is one value of the document with its position. A document is walked by one goroutine at a time,
// since reading notes assumptions; give each its Clone.
type Node struct {
	kind   Kind
	text   string     // of a scalar
	tag    string     // resolved YAML type of a scalar
	style  yaml.Style // how it was written, for Render
	keys   []*Node    // of a map, beside values
	values []*Node    // of a map or list
	parent *Node      // nil at the root
	place  int        // among the parent's values
	at     Position

	missing     bool         // stands for a value that should be there, after that was said
	assumptions []Assumption // noted by readers, at the root
}

// Kind is the node's shape.
func (n *Node) Kind() Kind { return n.kind }

// At is where the node was written.
func (n *Node) At() Position { return n.at }

// Raw is the text of a scalar as YAML gives it, without quotes; empty for a list or map.
func (n *Node) Raw() string { return n.text }

// IsEmpty says whether the node has no value: nothing after the colon, ~ or null.
func (n *Node) IsEmpty() bool { return n.kind == Scalar && n.tag == "!!null" }

// Has says whether the node is a map with the key; unlike Fields.Has it asks nothing of Done.
func (n *Node) Has(key string) bool { return n != nil && n.value(key) != nil }

// value is the value of a key, nil where there is none.
func (n *Node) value(key string) *Node {
	for i, k := range n.keys {
		if k.text == key {
			return n.values[i]
		}
	}
	return nil
}

// root is the top of the node's document.
func (n *Node) root() *Node {
	for n.parent != nil {
		n = n.parent
	}
	return n
}

// adopt makes the node the parent of its keys and values, after any change of these.
func (n *Node) adopt() {
	for i, v := range n.values {
		v.parent, v.place = n, i
	}
	for i, k := range n.keys {
		k.parent, k.place = n, i
	}
}

// Clone is a deep copy of the node and all below it, as a document of its own without noted assumptions.
func (n *Node) Clone() *Node {
	c := *n
	c.parent, c.assumptions = nil, nil
	c.keys, c.values = cloneAll(n.keys), cloneAll(n.values)
	c.adopt()
	return &c
}

func cloneAll(nodes []*Node) []*Node {
	var copies []*Node
	for _, n := range nodes {
		copies = append(copies, n.Clone())
	}
	return copies
}

// Leaves are the single values of the node and all below it, in the order of the file.
func (n *Node) Leaves() []*Node {
	if n == nil || n.kind == Scalar && n.IsEmpty() {
		return nil
	}
	if n.kind == Scalar {
		return []*Node{n}
	}
	var leaves []*Node
	for _, v := range n.values {
		leaves = append(leaves, v.Leaves()...)
	}
	return leaves
}

// Keys are the keys of a map in the order of the file; none for another shape.
func (n *Node) Keys() []*Node { return slices.Clone(n.keys) }
