package reports

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/document"
)

// Basis is what an answer rests on: the quantities that carry a source or a range in the files that were read.
type Basis []document.Assumption

// mostBasis is how many of them a page lists.
const mostBasis = 15

// untagged stands for a source that was not given.
const untagged = "not said"

// section lists them, money in the currency's word, the least certain first: guesses, then what a supplier says, then what was measured.
func (b Basis) section(currency string) layout.Section {
	if len(b) == 0 {
		return layout.Section{}
	}
	t := &layout.Table{Columns: []layout.Column{layout.Words("quantity"), layout.Told("value", "value"), layout.Told("source", "source")}}
	sorted := b.sorted()
	for i, a := range sorted {
		add := t.Add
		if i >= mostBasis {
			add = t.Spare
		}
		add(layout.Word(shortPath(a.Path)), layout.Word(inCurrency(valueWords(a), currency)), layout.Word(sourceOf(a)))
	}
	s := layout.Section{Key: "assumption", Heading: "What the answer rests on", Text: []string{b.counted()}, Table: t}
	if len(sorted) > mostBasis {
		s.Notes = []string{fmt.Sprintf("and %d more", len(sorted)-mostBasis)}
	}
	return s
}

// counted is: 2 guesses, 1 from a supplier, 3 measured.
func (b Basis) counted() string {
	count := map[string]int{}
	for _, a := range b {
		count[a.Source]++
	}
	var words []string
	add := func(source, one, many string) {
		switch n := count[source]; {
		case n == 1:
			words = append(words, "1 "+one)
		case n > 1:
			words = append(words, fmt.Sprintf("%d %s", n, many))
		}
	}
	add("guess", "guess", "guesses")
	add("supplier", "from a supplier", "from a supplier")
	add("measured", "measured", "measured")
	add("", "with a range alone", "with a range alone")
	return "Quantities that carry a source or a range: " + strings.Join(words, ", ") + "; nothing is said of the others"
}

func (b Basis) sorted() Basis {
	sorted := slices.Clone(b)
	rank := map[string]int{"guess": 0, "": 1, "supplier": 2, "measured": 3}
	slices.SortStableFunc(sorted, func(x, y document.Assumption) int { return cmp.Compare(rank[x.Source], rank[y.Source]) })
	return sorted
}

// shortPath leaves out the sections that a path leads through.
func shortPath(path string) string {
	return strings.TrimPrefix(strings.TrimPrefix(path, "size."), "candidates.")
}

// valueWords is a value with its range: 0.85 (0.80 to 0.95) s.
func valueWords(a document.Assumption) string {
	if a.Value == "" {
		return "a law"
	}
	number, unit := splitUnit(a.Value)
	var ends []string
	for _, end := range []struct{ word, text string }{{"from ", a.Low}, {"to ", a.High}} {
		if end.text == "" {
			continue
		}
		x, u := splitUnit(end.text)
		if u != unit {
			x = end.text
		}
		ends = append(ends, end.word+x)
	}
	if len(ends) == 0 {
		return a.Value
	}
	return strings.TrimSpace(fmt.Sprintf("%s (%s) %s", number, strings.TrimPrefix(strings.Join(ends, " "), "from "), unit))
}

// splitUnit parts a quantity as written into its number and its unit.
func splitUnit(text string) (number, unit string) {
	at := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.+-", r) })
	if at < 0 {
		return text, ""
	}
	return text[:at], strings.TrimSpace(text[at:])
}

func sourceOf(a document.Assumption) string {
	if a.Source == "" {
		return untagged
	}
	return a.Source
}

// inCurrency prints the word for the currency where a quantity says money.
func inCurrency(text, currency string) string {
	if currency == "" {
		return text
	}
	return strings.ReplaceAll(text, "money", currency)
}

// jsonAssumption is a quantity with its source and range as written, empty where not given.
type jsonAssumption struct {
	Path   string `json:"path"`
	Value  string `json:"value"`
	Low    string `json:"low"`
	High   string `json:"high"`
	Source string `json:"source"`
}

func (b Basis) json() []jsonAssumption {
	list := []jsonAssumption{}
	for _, a := range b {
		list = append(list, jsonAssumption{a.Path, a.Value, a.Low, a.High, a.Source})
	}
	return list
}
