package document

import "slices"

// An Assumption is a value of the file that carries where it comes from or how far it may be off:
// {value: 0.95 s, source: guess} or {low: 0.8 s, likely: 0.95 s, high: 1.2 s, source: supplier}.
type Assumption struct {
	Path             string // of the whole, such as sealer.dwell
	At               Position
	Source           string // guess, supplier, measured, or empty
	Value, Low, High string // as written; Low and High may be empty
}

// Assumptions lists what the readers met so far, in the order of reading, each once.
func (n *Node) Assumptions() []Assumption { return slices.Clone(n.root().assumptions) }

// IsAssumption says whether the node is a map that wraps a value with its source or range.
func (n *Node) IsAssumption() bool {
	return n != nil && n.kind == Map && (n.Has("value") || n.Has("likely") || n.Has("source") || n.Has("low") && n.Has("high"))
}

// Assumed is the node itself, or the value inside an assumption, which is noted. The quantity readers do this
// themselves; it serves callers who tell a single value from a distribution.
func (n *Node) Assumed(p *Problems) *Node {
	if !n.IsAssumption() {
		return n
	}
	value, _, _ := n.unwrap(p)
	return value
}

// unwrap takes an assumption apart and notes it.
func (n *Node) unwrap(p *Problems) (value, low, high *Node) {
	f := n.Map(p)
	value = n.value("value")
	if likely := f.Take("likely"); value == nil {
		value = likely
	} else if likely != nil {
		p.Add(likely, "stands beside a value", "keep value or likely")
	}
	switch {
	case value == nil && n.Has("low") && n.Has("high"):
		p.Add(n, "has a low and a high, but no value", "add likely:, which lies between them; or write {uniform: {from: "+n.value("low").raw()+", to: "+n.value("high").raw()+"}}")
	case value == nil:
		f.Require("value", "0.95 s")
	}
	if value == nil {
		value = &Node{tag: "!!str", parent: n, at: n.at, missing: true}
	}
	low, high = f.Take("low"), f.Take("high")
	a := Assumption{Path: n.Path(), At: n.at, Value: value.raw(), Low: low.raw(), High: high.raw()}
	a.Source = f.Take("source").OneOf(p, "guess", "supplier", "measured")
	f.Take("value")
	f.Done()
	n.root().note(a)
	return value, low, high
}

// Range is the low and the high of an assumption that has them as single values; none for any other node.
func (n *Node) Range() []*Node {
	var ends []*Node
	for _, key := range []string{"low", "high"} {
		if n.IsAssumption() && n.Has(key) && n.value(key).kind == Scalar {
			ends = append(ends, n.value(key))
		}
	}
	return ends
}

// note keeps an assumption, in place of an earlier reading of the same path.
func (n *Node) note(a Assumption) {
	for i, old := range n.assumptions {
		if old.Path == a.Path {
			n.assumptions[i] = a
			return
		}
	}
	n.assumptions = append(n.assumptions, a)
}

// raw is the node's text, empty where it is absent.
func (n *Node) raw() string {
	if n == nil {
		return ""
	}
	return n.text
}

// scalar is the node, or the value that an assumption wraps, without noting it.
func (n *Node) scalar() *Node {
	switch {
	case !n.IsAssumption():
		return n
	case n.Has("value"):
		return n.value("value")
	case n.Has("likely"):
		return n.value("likely")
	}
	return n
}

// assumed reads a value that may be wrapped in an assumption, whose low and high must enclose it.
func assumed[T any](n *Node, p *Problems, read func(*Node) T, compare func(a, b T) int) T {
	if !n.IsAssumption() {
		return read(n)
	}
	before := p.Len()
	valueNode, lowNode, highNode := n.unwrap(p)
	value, low, high := read(valueNode), read(lowNode), read(highNode)
	if p.Len() > before {
		return value
	}
	if lowNode != nil && compare(low, value) > 0 {
		p.Add(lowNode, "is more than the value "+valueNode.text, "write low, likely and high in rising order")
	}
	if highNode != nil && compare(high, value) < 0 {
		p.Add(highNode, "is less than the value "+valueNode.text, "write low, likely and high in rising order")
	}
	return value
}
