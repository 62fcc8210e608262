package scenarios_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"github.com/google/go-cmp/cmp"
)

// TestKeysReference: the reference and the schema that are kept beside the code are those of its table.
func TestKeysReference(t *testing.T) {
	for path, made := range map[string]string{"keys.md": scenarios.KeyReference(), "line.schema.json": string(scenarios.LineSchema())} {
		if *update {
			if err := os.WriteFile(path, []byte(made), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(kept), made); diff != "" {
			t.Errorf("%s: make it again with -update\n%s", path, diff)
		}
	}
}

// TestKeysAreThoseThatAreRead: files that are read without a mistake fit the schema, and use every key in it.
func TestKeysAreThoseThatAreRead(t *testing.T) {
	s := newSchema(t)
	texts := map[string]string{"everything": everything, "everything that moves": everyMotion, "glued": glued, "long run": "run: {length: 2 h, warm_up: auto, batches: 10}\nstations: [{name: a, kind: fill, fill: 1 s}]"}
	for _, name := range scenarios.Examples() {
		text, err := scenarios.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		texts[name] = string(text)
	}
	for name, text := range texts {
		f := readLine(t, text)
		if faults := s.check(f.Document, object{"$ref": s.root["$ref"]}); len(faults) > 0 {
			t.Errorf("%s: %s", name, strings.Join(faults, "\n"))
		}
	}
	for name, definition := range s.root["$defs"].(object) {
		properties, _ := definition.(object)["properties"].(object)
		for key := range properties {
			if name != "law" && !s.seen[name+"."+key] {
				t.Errorf("no file here uses %s.%s", name, key)
			}
		}
	}
}

// TestReadersKeysAreInTheTable: what the readers of a line file take by name stands in the table, in whatever map.
func TestReadersKeysAreInTheTable(t *testing.T) {
	known := map[string]bool{}
	for _, definition := range newSchema(t).root["$defs"].(object) {
		properties, _ := definition.(object)["properties"].(object)
		for key := range properties {
			known[key] = true
		}
	}
	taken := regexp.MustCompile(`\b(?:Take|Require|Has|side|positive)\((?:[\w.]+, )?"(\w+)"`)
	files := append(sure[[]string](t)(filepath.Glob("line*.go")), sure[[]string](t)(filepath.Glob("mechanics*.go"))...)
	count := 0
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") || strings.HasPrefix(path, "linelaw") {
			continue // the parameters of laws are shown by their forms
		}
		for _, key := range taken.FindAllStringSubmatch(string(sure[[]byte](t)(os.ReadFile(path))), -1) {
			if count++; !known[key[1]] {
				t.Errorf("%s reads %s, which is not in the table", path, key[1])
			}
		}
	}
	if count < 100 {
		t.Errorf("found only %d places where keys are read", count)
	}
}

// TestSchemaRefuses: mistakes of form that an editor can show while a file is written.
func TestSchemaRefuses(t *testing.T) {
	for _, name := range []string{"unknown keys", "wrong and missing units", "unknown kind", "stations missing", "a station that is no map",
		"release by an unknown word", "target without a unit", "a list as the whole file", "long run with breaks; batches in words"} {
		text := "run: {length: 2 h, batches: many}\nstations: []\n"
		for _, section := range readSections(t, "testdata/mistakes.txt") {
			if section.name == name {
				text = section.text
			}
		}
		root, err := document.Load("line.yaml", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		s := newSchema(t)
		if faults := s.check(root, object{"$ref": s.root["$ref"]}); len(faults) == 0 {
			t.Errorf("%s: fits the schema", name)
		}
	}
}

type object = map[string]any

// schema checks documents against the part of JSON Schema that LineSchema uses.
type schema struct {
	root object
	seen map[string]bool // definition.key
}

func newSchema(t *testing.T) *schema {
	s := &schema{seen: map[string]bool{}}
	if err := json.Unmarshal(scenarios.LineSchema(), &s.root); err != nil {
		t.Fatal(err)
	}
	return s
}

// check returns what does not fit.
func (s *schema) check(n *document.Node, rule object) []string { return s.against(n, rule, "") }

func (s *schema) against(n *document.Node, rule object, name string) []string {
	if ref, ok := rule["$ref"].(string); ok {
		name := pointed(ref)
		return s.against(n, s.root["$defs"].(object)[name].(object), name)
	}
	if choices, ok := rule["anyOf"].([]any); ok {
		var all []string
		for _, choice := range choices {
			faults := s.against(n, choice.(object), name)
			if len(faults) == 0 {
				return nil
			}
			all = append(all, faults...)
		}
		return all
	}
	fault := []string{n.At().String() + ": " + n.Path() + " " + n.Raw()}
	if words, ok := rule["enum"].([]any); ok && !slices.ContainsFunc(words, func(w any) bool { return text(w) == n.Raw() }) {
		return fault
	}
	if pattern, ok := rule["pattern"].(string); ok && !regexp.MustCompile(pattern).MatchString(n.Raw()) {
		return fault
	}
	switch rule["type"] {
	case "object":
		return s.object(n, rule, name, fault)
	case "array":
		return s.list(n, rule, fault)
	case "number":
		if _, err := strconv.ParseFloat(n.Raw(), 64); err != nil {
			return fault
		}
	}
	return nil
}

// pointed is the definition that a reference names.
func pointed(ref string) string {
	path := strings.Split(ref, "/")
	return strings.NewReplacer("%20", " ", "~1", "/").Replace(path[2])
}

func text(w any) string {
	out, _ := json.Marshal(w)
	return strings.Trim(string(out), `"`)
}

func (s *schema) list(n *document.Node, rule object, fault []string) []string {
	if n.Kind() != document.List {
		return fault
	}
	var p document.Problems
	var faults []string
	for _, item := range n.List(&p) {
		faults = append(faults, s.against(item, rule["items"].(object), "")...)
	}
	return faults
}

func (s *schema) object(n *document.Node, rule object, name string, fault []string) []string {
	if n.Kind() != document.Map {
		return fault
	}
	var p document.Problems
	var faults []string
	properties, _ := rule["properties"].(object)
	others, named := rule["additionalProperties"].(object)
	for _, e := range n.Map(&p).Entries() {
		property, ok := properties[e.Key.Raw()].(object)
		if !ok && named {
			property, ok = others, true
		}
		if !ok {
			faults = append(faults, e.Key.At().String()+": unknown key "+e.Key.Raw())
			continue
		}
		s.seen[name+"."+e.Key.Raw()] = true
		faults = append(faults, s.against(e.Value, property, "")...)
	}
	required, _ := rule["required"].([]any)
	for _, key := range required {
		if !n.Has(key.(string)) {
			faults = append(faults, n.At().String()+": no "+key.(string))
		}
	}
	return faults
}

// TestLawForms: each law is read as the reference writes it, with the mean that the form states or implies.
func TestLawForms(t *testing.T) {
	forms := regexp.MustCompile("`(\\{[a-z]+: .*\\})` \\|").FindAllStringSubmatch(scenarios.KeyReference(), -1)
	means := map[string]float64{"constant": 0.95, "uniform": 0.95, "triangular": (0.8 + 0.95 + 1.2) / 3, "exponential": 20, "erlang": 20, "gamma": 20,
		"weibull": 5 * 3600 * math.Gamma(1+1/1.5), "lognormal": 55, "normal": 2.05, "geometric": 10, "empirical": 196. / 3, "recorded": 6.5 / 3}
	if len(forms) != len(means) {
		t.Fatalf("%d forms, %d laws", len(forms), len(means))
	}
	for _, form := range forms {
		f := readLine(t, "stations: [{name: a, kind: machine, cycle: "+form[1]+"}]")
		law := regexp.MustCompile("[a-z]+").FindString(form[1])
		if got, want := f.Line.Stations[0].Parts[0].Time.Mean().Seconds(), means[law]; math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s has a mean of %v, want %v", form[1], got, want)
		}
	}
}
