package scenarios

import (
	"fmt"
	"slices"
	"strings"
)

// KeyReference is the reference of a line file's keys, in Markdown.
func KeyReference() string {
	var b strings.Builder
	b.WriteString(keyPreface)
	for _, name := range sortedKeys(keyValues) {
		fmt.Fprintf(&b, "| %s | %s |\n", name, keyValues[name])
	}
	b.WriteString("\n## Laws\n\nA time that is drawn anew for each act, and an interval between stops, may follow a law:\n\n| law | |\n|---|---|\n")
	for _, law := range lawForms {
		fmt.Fprintf(&b, "| `%s` | %s |\n", law.form, law.meaning)
	}
	for _, g := range lineKeys {
		fmt.Fprintf(&b, "\n## %s\n\n", g.title)
		if g.about != "" {
			b.WriteString(g.about + "\n\n")
		}
		b.WriteString("| key | value | when left out | range | meaning |\n|---|---|---|---|---|\n")
		for _, k := range g.keys {
			fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", k.key, k.written(), k.without, k.limits, k.meaning)
		}
	}
	return b.String()
}

const keyPreface = `# Keys of a line file

Made from the table in keys.go; to make it again: ` + "`go test ./scenarios -run Keys -update`" + `.

Every quantity carries its unit. Any of them may be written with its source and range, which the tool then lists as an
assumption: ` + "`{value: 0.95 s, low: 0.8 s, high: 1.2 s, source: guess}`" + `, the source being guess, supplier or measured.
Most likely values may be called likely instead of value. A law goes in there too:
` + "`{value: {exponential: 20 s}, source: measured}`" + `.

| value | written |
|---|---|
`

// written says what may stand at a key, for a reader.
func (k lineKey) written() string {
	words := strings.Split(k.is, "|")
	for i, w := range words {
		switch {
		case strings.HasPrefix(w, `"`):
			words[i] = strings.Trim(w, `"`)
		case strings.HasPrefix(w, "["):
			words[i] = "list of maps"
		case keyValues[w] == "":
			words[i] = "map"
		}
	}
	return strings.Join(words, ", or ")
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
