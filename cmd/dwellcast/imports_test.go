package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers is the direction of imports: what each folder may import of this module. Below a folder that ends in /... anything goes.
var layers = []struct {
	folder string
	may    []string
}{
	{"cmd/dwellcast", []string{"reports", "reports/chart", "reports/layout", "scenarios/...", "stations/...", "sim/..."}},
	{"reports", []string{"reports/chart", "reports/layout", "scenarios/...", "stations/...", "sim/..."}},
	{"reports/layout", []string{"sim/stats"}},
	{"reports/chart", nil},
	{"scenarios/decisions", []string{"scenarios", "scenarios/document", "scenarios/quantity", "stations/...", "sim/..."}},
	{"scenarios", []string{"scenarios/document", "scenarios/quantity", "stations/...", "sim/..."}},
	{"scenarios/document", []string{"scenarios/quantity", "stations/...", "sim/..."}},
	{"scenarios/quantity", nil},
	{"stations", []string{"stations/motion", "sim/..."}},
	{"stations/motion", nil},
	{"sim", []string{"sim/random", "sim/stats", "sim/bottleneck"}},
	{"sim/random", nil},
	{"sim/stats", nil},
	{"sim/lifedata", []string{"sim/stats"}},
	{"sim/acceptance", []string{"sim/stats"}},
	{"sim/bottleneck", nil},
}

// keptIn is where a library is kept, so that it can be replaced in one place.
var keptIn = map[string]string{
	"go.yaml.in/yaml/":              "scenarios/document",
	"github.com/olekukonko/":        "reports/layout",
	"github.com/xuri/":              "reports/layout",
	"github.com/spf13/":             "cmd/dwellcast",
	"golang.org/x/term":             "cmd/dwellcast",
	"github.com/invopop/jsonschema": "scenarios",
	"codeberg.org/go-pdf/":          "reports/chart",
	"gonum.org/v1/plot":             "reports/chart",
}

const module = "dwellcast"

func TestImportsRunDownwards(t *testing.T) {
	seen := map[string]bool{}
	for _, file := range goFiles(t, "../..") {
		folder := filepath.ToSlash(filepath.Dir(file))
		seen[folder] = true
		for _, path := range importsOf(t, filepath.Join("../..", file)) {
			if fault := faultOf(folder, path, strings.HasSuffix(file, "_test.go")); fault != "" {
				t.Errorf("%s imports %s: %s", file, path, fault)
			}
		}
	}
	for _, layer := range layers {
		if !seen[layer.folder] {
			t.Errorf("the table names %s, which holds no Go file", layer.folder)
		}
	}
}

func TestImportFaults(t *testing.T) {
	for _, c := range []struct {
		folder, path string
		test, wrong  bool
	}{
		{"sim", "dwellcast/stations", false, true},
		{"stations", "dwellcast/scenarios/quantity", false, true},
		{"reports", "dwellcast/cmd/dwellcast", false, true},
		{"sim/random", "dwellcast/sim/stats", false, true},
		{"nowhere", "dwellcast/sim", false, true},
		{"scenarios", "github.com/olekukonko/tablewriter", false, true},
		{"sim", "dwellcast/sim", false, true},
		{"sim", "dwellcast/sim", true, false},
		{"cmd/dwellcast", "dwellcast/sim/stats", false, false},
		{"reports/layout", "github.com/olekukonko/tablewriter/tw", false, false},
		{"stations", "time", false, false},
	} {
		if fault := faultOf(c.folder, c.path, c.test); (fault != "") != c.wrong {
			t.Errorf("%s importing %s: %q, want a fault: %v", c.folder, c.path, fault, c.wrong)
		}
	}
}

// faultOf says what is wrong with an import; "" when nothing is. A test may also import the package that it tests.
func faultOf(folder, path string, test bool) string {
	for library, home := range keptIn {
		if strings.HasPrefix(path, library) && folder != home {
			return "only " + home + " may"
		}
	}
	inside, ours := strings.CutPrefix(path, module+"/")
	if !ours || test && inside == folder {
		return ""
	}
	for _, layer := range layers {
		if layer.folder == folder {
			if slices.ContainsFunc(layer.may, func(pattern string) bool { return inside != folder && matches(pattern, inside) }) {
				return ""
			}
			return "imports run downwards only"
		}
	}
	return "the folder is not in the table of layers"
}

func matches(pattern, folder string) bool {
	if root, below := strings.CutSuffix(pattern, "/..."); below {
		return folder == root || strings.HasPrefix(folder, root+"/")
	}
	return folder == pattern
}

// goFiles lists the Go files of the module, by paths from its root.
func goFiles(t *testing.T, root string) []string {
	t.Helper()
	var files []string
	err := fs.WalkDir(os.DirFS(root), ".", func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || path != "." && strings.HasPrefix(entry.Name(), ".")):
			return fs.SkipDir
		case strings.HasSuffix(path, ".go"):
			files = append(files, path)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func importsOf(t *testing.T, file string) []string {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, spec := range parsed.Imports {
		path, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	return paths
}
