package scenarios

import (
	"slices"
	"strings"
)

// Studies lists the embedded study files by name.
func Studies() []string {
	var names []string
	entries, err := embedded.ReadDir("examples")
	if err != nil {
		panic(err) // the folder is part of the program
	}
	for _, e := range entries {
		if name := strings.TrimSuffix(e.Name(), ".yaml"); !slices.Contains(Examples(), name) {
			names = append(names, name)
		}
	}
	return names
}
