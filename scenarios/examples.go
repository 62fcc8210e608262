package scenarios

import (
	"embed"
	"fmt"
	"path"
	"strings"

	"dwellcast/scenarios/quantity"
)

//go:embed examples/*.yaml
var embedded embed.FS

// Examples lists the embedded line files by name, the complete one first.
func Examples() []string {
	names := []string{firstExample}
	entries, err := embedded.ReadDir("examples")
	if err != nil {
		panic(err) // the folder is part of the program
	}
	for _, e := range entries {
		if name := strings.TrimSuffix(e.Name(), ".yaml"); name != firstExample && isLine(name) {
			names = append(names, name)
		}
	}
	return names
}

// firstExample is the complete line file that newcomers start from.
const firstExample = "oat-drink"

// isLine tells a line file from a study.
func isLine(name string) bool {
	text, err := Example(name)
	return err == nil && strings.Contains(string(text), "\nstations:")
}

// Example is the text of an embedded line file.
func Example(name string) ([]byte, error) {
	text, err := embedded.ReadFile(path.Join("examples", name+".yaml"))
	if err == nil {
		return text, nil
	}
	if near := quantity.Nearest(name, Examples()); near != "" {
		return nil, fmt.Errorf("no example is called %q, did you mean %q?", name, near)
	}
	return nil, fmt.Errorf("no example is called %q", name)
}

// ExampleTitle is the title of an embedded line file; empty where there is none.
func ExampleTitle(name string) string {
	text, err := Example(name)
	if err != nil {
		return ""
	}
	_, rest, _ := strings.Cut("\n"+string(text), "\ntitle:")
	title, _, _ := strings.Cut(rest, "\n")
	title, _, _ = strings.Cut(title, " #")
	return strings.Trim(strings.TrimSpace(title), `"`)
}
