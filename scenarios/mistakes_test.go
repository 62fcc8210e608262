package scenarios_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// TestMistakes: what is said of each line file with mistakes in testdata/mistakes.txt, word for word.
func TestMistakes(t *testing.T) {
	const path, said = "testdata/mistakes.txt", ": said"
	sections := readSections(t, path)
	for i := 1; i+1 < len(sections); i += 2 {
		file, golden := sections[i], &sections[i+1]
		t.Run(file.name, func(t *testing.T) {
			if golden.name != file.name+said {
				t.Fatalf("%q is followed by %q", file.name, golden.name)
			}
			_, err := scenarios.Read("line.yaml", strings.NewReader(file.text), nil)
			if err == nil {
				t.Fatal("read without a mistake")
			}
			got := err.Error() + "\n"
			if *update {
				golden.text = got
			} else if diff := cmp.Diff(golden.text, got); diff != "" {
				t.Error(diff)
			}
		})
	}
	if *update {
		writeSections(t, path, sections)
	}
}

// section is a part of a file that holds several texts, each below a line -- name --.
type section struct{ name, text string }

// readSections cuts a file into its parts; the first is what stands above them.
func readSections(t *testing.T, path string) []section {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	sections := []section{{}}
	for line := range strings.Lines(string(data)) {
		if name, ok := strings.CutPrefix(line, "-- "); ok && strings.HasSuffix(name, " --\n") {
			sections = append(sections, section{name: strings.TrimSuffix(name, " --\n")})
			continue
		}
		sections[len(sections)-1].text += line
	}
	return sections
}

func writeSections(t *testing.T, path string, sections []section) {
	t.Helper()
	var b strings.Builder
	b.WriteString(sections[0].text)
	for _, s := range sections[1:] {
		b.WriteString("-- " + s.name + " --\n" + s.text)
	}
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
