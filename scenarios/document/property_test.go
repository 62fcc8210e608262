package document_test

import (
	"fmt"
	"strings"
	"testing"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestRandomDocuments: on any tree, a path leads back to its node, text written from the tree reads as the
// same tree, a clone is equal, and setting a value at a path changes this path only.
func TestRandomDocuments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := randomValue(t, 3)
		root, err := document.Load("random", strings.NewReader(text))
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		again := reload(t, root)
		if diff := cmp.Diff(outline(root), outline(again)); diff != "" {
			t.Fatalf("%s\n%s", text, diff)
		}
		if diff := cmp.Diff(outline(root), outline(root.Clone())); diff != "" {
			t.Fatalf("%s\n%s", text, diff)
		}
		for _, path := range document.Paths(root) {
			n, err := document.Find(root, path)
			if err != nil || n.Path() != path {
				t.Fatalf("%s: %q leads to %v, %v", text, path, n, err)
			}
		}
		if paths := document.Paths(root); len(paths) > 0 {
			changeOne(t, root, rapid.SampledFrom(paths).Draw(t, "path"))
		}
	})
}

func changeOne(t *rapid.T, root *document.Node, path string) {
	if strings.HasSuffix(path, "name") || strings.HasSuffix(path, "cause") {
		return // renames its parent
	}
	before := values(root)
	if err := document.Set(root, path, "9 min"); err != nil {
		t.Fatalf("%q: %v", path, err)
	}
	before[path] = "9 min"
	if diff := cmp.Diff(before, values(root)); diff != "" {
		t.Fatalf("%q\n%s", path, diff)
	}
}

func reload(t *rapid.T, root *document.Node) *document.Node {
	text, err := document.Render(root)
	if err != nil {
		t.Fatal(err)
	}
	again, err := document.Load("again", strings.NewReader(text))
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return again
}

// outline is every single value with its path and type, in order.
func outline(root *document.Node) []string {
	lines := []string{root.Kind().String() + root.Raw()}
	for _, path := range document.Paths(root) {
		n, _ := document.Find(root, path)
		lines = append(lines, fmt.Sprintf("%s %q %v", path, n.Raw(), n.IsEmpty()))
	}
	return lines
}

func values(root *document.Node) map[string]string {
	found := map[string]string{}
	for _, path := range document.Paths(root) {
		n, _ := document.Find(root, path)
		found[path] = n.Raw()
	}
	return found
}

var (
	someKeys    = []string{"name", "cause", "stations", "dwell", "a.b", "x=y", "2", "blank jam", "value", "null", "Größe"}
	someScalars = []string{"0.95 s", "1", "2", "true", "null", "~", "''", "\"two words\"", "'1'", "\"a: b\"", "0.4 %", "a.b", "sealer", "dwell", "'#1'", "\"x\\ny\"", "' lead'", "Öl", "'yes'", "2001-01-01", "'- a'", "\"q'\\\"\""}
)

// randomValue draws YAML text in flow style.
func randomValue(t *rapid.T, depth int) string {
	kind := rapid.IntRange(0, 2).Draw(t, "kind")
	if depth == 0 || kind == 0 {
		return rapid.SampledFrom(someScalars).Draw(t, "scalar")
	}
	n := rapid.IntRange(0, 4).Draw(t, "n")
	var parts []string
	if kind == 1 {
		for range n {
			parts = append(parts, randomValue(t, depth-1))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	for _, key := range rapid.SliceOfNDistinct(rapid.SampledFrom(someKeys), n, n, rapid.ID[string]).Draw(t, "keys") {
		parts = append(parts, "\""+key+"\": "+randomValue(t, depth-1))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// FuzzLoad: whatever the bytes, no panic; every refusal is a list with a message; what loads can be walked,
// written, read again and changed.
func FuzzLoad(f *testing.F) {
	for _, text := range []string{sample, "a: &x [1, {b: *x}]", "a: !!binary x", "[[[[", "- - -", "? a\n: b", "a: |\n  x\n", "\"\\x41\": ~", "{a: 1, b: {value: 1 s, source: guess}}"} {
		f.Add(text, "sealer.dwell=1.1s")
	}
	f.Add("stations: [{name: a}, {name: a}, {name: '2'}]", "stations+={}")
	f.Fuzz(func(t *testing.T, text, change string) {
		root, err := document.Load("fuzz", strings.NewReader(text))
		if err != nil {
			if list, ok := err.(document.ProblemList); !ok || len(list) == 0 || list[0].Message == "" {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		readEveryWay(root, &document.Problems{}, 0)
		if _, err := document.Render(root); err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if err := document.Apply(root, change); err == nil {
			readEveryWay(root, &document.Problems{}, 0)
		}
	})
}

// readEveryWay calls each reader on each node.
func readEveryWay(n *document.Node, p *document.Problems, depth int) {
	n.Duration(p)
	n.Rate(p)
	n.Ratio(p)
	n.Count(p)
	n.Int(p)
	n.Bool(p)
	n.Text(p)
	n.OneOf(p, "a", "b")
	n.Quantity(p, quantity.Volume)
	f := n.Map(p)
	for _, e := range f.Entries() {
		readEveryWay(e.Key, p, depth+1)
		readEveryWay(e.Value, p, depth+1)
	}
	n.Map(p).Done()
	for _, item := range n.List(&document.Problems{}) {
		readEveryWay(item, p, depth+1)
	}
	if depth == 0 && p.Err() != nil {
		_ = p.Err().Error()
	}
}
