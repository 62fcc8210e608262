package document

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"dwellcast/scenarios/quantity"
)

// stations is the list whose items may be addressed without naming the list.
const stations = "stations"

// Path names the node within its document, such as sealer.stops.blank jam.every: keys joined by points, a
// list item by its name or cause, else by its number from 1. The word stations is left out where the rest is
// clear without it. The root's path is empty.
func (n *Node) Path() string {
	var steps []string
	for ; n.parent != nil; n = n.parent {
		steps = append([]string{n.step()}, steps...)
	}
	if len(steps) > 1 && steps[0] == stations && n.stationList() != nil && n.value(unquote(steps[1])) == nil && !isNumber(steps[1]) {
		steps = steps[1:]
	}
	return strings.Join(steps, ".")
}

// step is the node's own part of its path.
func (n *Node) step() string {
	if n.parent.kind == Map {
		return quote(n.parent.keys[n.place].text)
	}
	name := n.name()
	if name == "" || len(name) > maxName || isNumber(name) || strings.ContainsAny(name, "\"\n") || n.parent.item(name) != n {
		return strconv.Itoa(n.place + 1)
	}
	return quote(name)
}

// maxName is the longest name, in bytes, that stands for its item in a path.
const maxName = 100

// name is what a list item is called, by its key name or cause.
func (n *Node) name() string {
	for _, key := range []string{"name", "cause"} {
		if v := n.value(key); n.kind == Map && v != nil && v.kind == Scalar && !v.IsEmpty() {
			return v.text
		}
	}
	return ""
}

// item is the list item of a name, or of a number from 1; nil where there is none.
func (n *Node) item(step string) *Node {
	if i, err := strconv.Atoi(step); err == nil {
		if 1 <= i && i <= len(n.values) {
			return n.values[i-1]
		}
		return nil
	}
	for _, v := range n.values {
		if v.name() == step {
			return v
		}
	}
	return nil
}

// child is the node one step further, nil where there is none.
func (n *Node) child(step string) *Node {
	switch {
	case n.kind == List:
		return n.item(step)
	case n.value(step) != nil:
		return n.value(step)
	case n.stationList() != nil && !isNumber(step):
		return n.stationList().item(step)
	}
	return nil
}

// stationList is the list of stations of a root, nil where there is none.
func (n *Node) stationList() *Node {
	if list := n.value(stations); n.parent == nil && list != nil && list.kind == List {
		return list
	}
	return nil
}

// Find is the node of a path. Where there is none, the error is a ProblemList with the nearest path as hint.
func Find(root *Node, path string) (*Node, error) {
	steps, err := splitPath(path)
	if err != nil {
		return nil, err
	}
	return walk(root, steps, len(steps), Position{Override: path})
}

// walk follows the first steps of a path; the label stands for the caller in an error.
func walk(root *Node, steps []string, first int, label Position) (*Node, error) {
	n := root
	for i, step := range steps[:first] {
		next := n.child(step)
		if next == nil {
			return nil, noSuchPath(root, n, steps, i, label)
		}
		n = next
	}
	return n, nil
}

// noSuchPath says that step i of a path leads nowhere from the last node, and what is near.
func noSuchPath(root, last *Node, steps []string, i int, label Position) error {
	path := joinPath(steps)
	problem := Problem{At: label, Path: path, Message: "names nothing in the file", Hint: last.has(steps, i)}
	near := quantity.Nearest(path, allPaths(root, nil, false))
	if sibling := quantity.Nearest(steps[i], last.steps()); near == "" && sibling != "" {
		near = strings.TrimPrefix(joinPath(steps[:i])+"."+sibling, ".")
	}
	if near != "" {
		problem.Hint = "did you mean " + near + "?"
	}
	return ProblemList{problem}
}

// has says what a node has instead of step i.
func (n *Node) has(steps []string, i int) string {
	path := joinPath(steps[:i])
	switch {
	case i == 0 && len(steps) > 1:
		return "the file has " + enumerate(n.steps()) + "; to add " + steps[0] + " give it whole, as in " + quote(steps[0]) + "={" + steps[1] + ": ...}"
	case i == 0:
		return "the file has " + enumerate(n.steps())
	case n.kind == Scalar:
		return fmt.Sprintf("%s is %q and has no parts", path, shorten(n.text))
	case len(n.values) == 0:
		return path + " is empty"
	}
	return path + " has " + enumerate(n.steps())
}

// steps lists the parts of a node by name; at the root the stations too.
func (n *Node) steps() []string {
	var names []string
	if list := n.stationList(); list != nil {
		names = list.steps()
	}
	for _, v := range n.values {
		names = append(names, v.step())
	}
	return names
}

// Paths lists the paths of all single values, in the order of the file.
func Paths(root *Node) []string { return allPaths(root, nil, true) }

func allPaths(n *Node, paths []string, scalars bool) []string {
	if n.parent != nil && (!scalars || n.kind == Scalar) {
		paths = append(paths, n.Path())
	}
	for _, v := range n.values {
		paths = allPaths(v, paths, scalars)
	}
	return paths
}

// splitPath cuts a path at its points; a step in double quotes may hold points.
func splitPath(path string) ([]string, error) {
	var steps []string
	for rest := strings.TrimSpace(path); ; {
		m := pathStep.FindStringSubmatch(rest)
		if m == nil {
			return nil, ProblemList{{At: Position{Override: path}, Message: "is not a path", Hint: "write names joined by points, as in sealer.dwell"}}
		}
		steps = append(steps, m[1]+strings.TrimSpace(m[2]))
		if rest = rest[len(m[0]):]; m[3] == "" {
			return steps, nil
		}
	}
}

// pathStep matches a step in quotes or a bare one, and the point behind it.
var pathStep = regexp.MustCompile(`^(?:"([^"]+)"|([^".]*[^". ][^".]*))(\.|$)`)

func joinPath(steps []string) string {
	quoted := make([]string, len(steps))
	for i, s := range steps {
		quoted[i] = quote(s)
	}
	return strings.Join(quoted, ".")
}

// quote protects a step that would be cut or misread.
func quote(step string) string {
	if strings.ContainsAny(step, ".=+") || strings.TrimSpace(step) != step {
		return `"` + step + `"`
	}
	return step
}

func unquote(step string) string { return strings.Trim(step, `"`) }

func isNumber(step string) bool {
	_, err := strconv.Atoi(step)
	return err == nil
}

// enumerate lists a dozen words at most.
func enumerate(words []string) string {
	const most = 12
	if len(words) > most {
		return strings.Join(words[:most], ", ") + ", ..."
	}
	return strings.Join(words, ", ")
}
