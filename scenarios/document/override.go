package document

import (
	"slices"
	"strings"
)

// Apply changes the document as an override says: "sealer.dwell=1.1s" sets, "sealer.stops+={...}" appends.
// See Set and Append.
func Apply(root *Node, assignment string) error {
	path, value, ok := cutAssignment(assignment)
	switch {
	case !ok:
		return problemOf(label(assignment), "has no =", "write path=value, as in sealer.dwell=1.1s")
	case strings.TrimSuffix(path, "+") == "":
		return problemOf(label(assignment), "has no path before the =", "write path=value, as in sealer.dwell=1.1s")
	case strings.HasSuffix(path, "+"):
		return Append(root, strings.TrimSuffix(path, "+"), value)
	}
	return Set(root, path, value)
}

// cutAssignment cuts at the first = outside double quotes.
func cutAssignment(text string) (path, value string, ok bool) {
	quoted := false
	for i, r := range text {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '=' && !quoted:
			return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1:]), true
		}
	}
	return text, "", false
}

// Set gives the value at a path, which is parsed as YAML and so may be a map or list. A signed quantity, such as "+0.2 s" or "-5 %", is
// a change of what is there (see changed). A key that the file
// leaves out is added to its map, which must be there; whether the key exists is for the reader of the tree to
// say. Messages about the value name the override instead of a line. The error is a ProblemList.
func Set(root *Node, path, value string) error {
	n, err := parseValue(label(path), value)
	if err != nil {
		return err
	}
	return set(root, path, n, label(path))
}

// SetNode is Set with a copy of a node of another document, which keeps its position there.
func SetNode(root *Node, path string, value *Node) error {
	return set(root, path, value.Clone(), value.at)
}

// Append adds a value at the end of the list at a path, or, where the path leads to an item of a list, behind
// that item. A list that the file leaves out is made. The error is a ProblemList.
func Append(root *Node, path, value string) error {
	n, err := parseValue(label(path), value)
	if err != nil {
		return err
	}
	return add(root, path, n, label(path))
}

// AppendNode is Append with a copy of a node of another document, which keeps its position there.
func AppendNode(root *Node, path string, value *Node) error {
	return add(root, path, value.Clone(), value.at)
}

// Delete removes a key or a list item. The error is a ProblemList.
func Delete(root *Node, path string) error {
	steps, err := splitPath(path)
	if err != nil {
		return err
	}
	n, err := walk(root, steps, len(steps), label(path))
	if err != nil {
		return err
	}
	i, parent := n.place, n.parent
	parent.values = slices.Delete(parent.values, i, i+1)
	if parent.kind == Map {
		parent.keys = slices.Delete(parent.keys, i, i+1)
	}
	parent.adopt()
	return nil
}

func label(path string) Position { return Position{Override: "--set " + path} }

func problemOf(at Position, message, hint string) error {
	return ProblemList{{At: at, Message: message, Hint: hint}}
}

func parseValue(at Position, value string) (*Node, error) {
	if strings.TrimSpace(value) == "" {
		return nil, problemOf(at, "has no value", "write path=value, as in sealer.dwell=1.1s")
	}
	return parse(at, []byte(value))
}

// set puts a value at a path; at stands for the change in an error.
func set(root *Node, path string, value *Node, at Position) error {
	steps, err := splitPath(path)
	if err != nil {
		return err
	}
	last := len(steps) - 1
	parent, err := walk(root, steps, last, at)
	if err != nil {
		return err
	}
	if old := parent.child(steps[last]); old != nil {
		if value.isChange() {
			if value, err = changed(old, value, at); err != nil {
				return err
			}
		}
		old.parent.values[old.place] = value
		old.parent.adopt()
		return nil
	}
	if parent.kind != Map {
		return noSuchPath(root, parent, steps, last, at)
	}
	if value.isChange() {
		return nothingThere(path, value, at)
	}
	parent.addKey(steps[last], value)
	return nil
}

// addKey adds a key at the end of a map, at the value's position.
func (n *Node) addKey(key string, value *Node) {
	n.keys = append(n.keys, &Node{text: key, tag: "!!str", at: value.at})
	n.values = append(n.values, value)
	n.adopt()
}

// add puts a value into the list at a path, or behind the item at the path.
func add(root *Node, path string, value *Node, at Position) error {
	steps, err := splitPath(path)
	if err != nil {
		return err
	}
	n, err := walk(root, steps, len(steps), at)
	if err != nil {
		return set(root, path, listOf(value), at)
	}
	list, i := n, len(n.values)
	if n.kind != List && n.parent.kind == List {
		list, i = n.parent, n.place+1
	}
	if list.kind != List {
		return ProblemList{{At: at, Path: n.Path(), Text: n.text, Message: "is " + n.kind.String() + ", not a list", Hint: "write path=value to set it"}}
	}
	list.values = slices.Insert(list.values, i, value)
	list.adopt()
	return nil
}

func listOf(value *Node) *Node {
	list := &Node{kind: List, tag: "!!seq", at: value.at, values: []*Node{value}}
	list.adopt()
	return list
}
