package document

import (
	"slices"
	"strings"

	"dwellcast/scenarios/quantity"
)

// Fields are the keys of a map while they are taken one after another.
type Fields struct {
	node  *Node // nil where there is no map to take from
	p     *Problems
	known []string // keys that were asked for
}

// An Entry is a key of a map with its value; the key can be read like any single value.
type Entry struct{ Key, Value *Node }

// Map begins to take the keys of a map; finish with Done. It reports a node of another shape and every key
// that is written twice. On an absent node nothing can be taken and nothing is reported.
func (n *Node) Map(p *Problems) *Fields {
	if !n.shaped(p, Map, "write key: value lines, or {key: value, ...}") {
		return &Fields{p: p}
	}
	seen := map[string]*Node{}
	for _, k := range n.keys {
		if first := seen[k.text]; first != nil {
			p.Report(Problem{At: k.at, Path: n.Path(), Text: k.text, Message: "is written twice", Hint: "keep one; the first is at " + first.at.String()})
			continue
		}
		seen[k.text] = k
	}
	return &Fields{node: n, p: p}
}

// shaped says whether the node is there and of a shape, and reports it if it is there in another shape.
func (n *Node) shaped(p *Problems, want Kind, hint string) bool {
	switch {
	case n == nil:
		return false
	case n.kind == want && !n.IsEmpty():
		return true
	case n.IsEmpty():
		p.Report(Problem{At: n.at, Path: n.Path(), Message: "has no value", Hint: hint})
	default:
		p.Add(n, "is "+n.kind.String()+" where "+want.String()+" is wanted", hint)
	}
	return false
}

// Node is the map itself, nil where there is none.
func (f *Fields) Node() *Node { return f.node }

// Has says whether the key is there; the key counts as known.
func (f *Fields) Has(key string) bool { return f.Take(key) != nil }

// Take is the value of a key, nil where the key is absent. The key counts as known.
func (f *Fields) Take(key string) *Node {
	if !slices.Contains(f.known, key) {
		f.known = append(f.known, key)
	}
	if f.node == nil {
		return nil
	}
	return f.node.value(key)
}

// Require is Take for a key that must be there. The example, if given, is its value in the hint.
func (f *Fields) Require(key string, example ...string) *Node {
	n := f.Take(key)
	if n == nil && f.node != nil {
		hint := "add " + key + ":"
		if len(example) > 0 {
			hint += " " + example[0]
		}
		f.p.Report(Problem{At: f.node.at, Path: f.node.Path(), Text: key, Message: "is missing", Hint: hint})
	}
	return n
}

// Entries takes all keys, for a map whose keys are data, such as a table from setting to factor.
func (f *Fields) Entries() []Entry {
	if f.node == nil {
		return nil
	}
	var entries []Entry
	for i, k := range f.node.keys {
		f.known = append(f.known, k.text)
		entries = append(entries, Entry{k, f.node.values[i]})
	}
	return entries
}

// Done reports every key that nobody asked for.
func (f *Fields) Done() {
	if f.node == nil {
		return
	}
	for i, k := range f.node.keys {
		if !slices.Contains(f.known, k.text) {
			f.p.Report(Problem{At: k.at, Path: f.node.Path(), Text: k.text, Message: "is an unknown key", Hint: f.hint(i)})
		}
	}
}

// hint is what an unknown key was probably meant to be.
func (f *Fields) hint(i int) string {
	key := f.node.keys[i].text
	if i > 0 && f.node.values[i].IsEmpty() && endsInDigit(f.node.values[i-1].text) && '0' <= key[0] && key[0] <= '9' {
		return "a comma parts the keys in braces; write " + f.node.values[i-1].text + "." + key + " with a decimal point"
	}
	if near := quantity.Nearest(key, f.known); near != "" {
		return "did you mean " + near + "?"
	}
	if f.node.parent == nil && f.node.keys[i].at.Override != "" {
		if path := f.elsewhere(key); path != "" {
			return "did you mean " + path + "?"
		}
	}
	known := slices.Sorted(slices.Values(f.known))
	return "known here: " + strings.Join(known, ", ")
}

// elsewhere is the first path in the document that ends in the key, for an override that forgot the station.
func (f *Fields) elsewhere(key string) string {
	for _, path := range allPaths(f.node, nil, false) {
		if strings.HasSuffix(path, "."+key) {
			return path
		}
	}
	return ""
}

func endsInDigit(text string) bool {
	return text != "" && '0' <= text[len(text)-1] && text[len(text)-1] <= '9'
}
