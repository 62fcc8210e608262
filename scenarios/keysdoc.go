package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"dwellcast/stations/motion"
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
	fmt.Fprintf(&b, "\n## Motion laws\n\nHow an axis speeds up and slows down between two stands: %s. The shares of a law may be others, as in "+
		"trapezoidal velocity 1/4-1/2-1/4, or modified sine, 20 %% constant velocity.\n", strings.Join(motion.LawNames(), "; "))
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
Most likely values may be called likely instead of value. Low, high and source may each be left out. A law goes in there
too: ` + "`{value: {exponential: 20 s}, source: measured}`" + `.

A file needs no more than stations with their times. What says how the line moves (cams, drives, dosing, jaws, moves, a
liquid) adds the timing chart's margins and the highest setting that they allow.

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
			words[i] = "[list of maps](" + anchor(w) + ")"
		case strings.HasPrefix(w, "{"):
			words[i] = "map of names, each with its " + strings.Trim(w, "{}")
		case keyValues[w] == "":
			words[i] = "[map](" + anchor(w) + ")"
		}
	}
	return strings.Join(words, ", or ")
}

// anchor links to the section of a group, as Markdown renderers name it.
func anchor(name string) string {
	for _, g := range lineKeys {
		if g.name == strings.Trim(name, "[]") {
			return "#" + strings.NewReplacer(" ", "-", ".", "", ",", "").Replace(strings.ToLower(g.title))
		}
	}
	return "#"
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
