package reports

import (
	"fmt"
	"slices"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// notes numbers the warnings of a report as their figures come up, so that a mark stands at the figure and the text under
// its table.
type notes struct {
	open   []scenarios.Warning // not yet shown
	shown  int
	unsaid []string // marked since the last call of take
}

func notesOf(warnings []scenarios.Warning) *notes {
	return &notes{open: slices.Clone(warnings)}
}

// mark returns the marks of a figure's warnings, such as " [1]"; "" when there are none.
func (n *notes) mark(about string) string {
	marks := ""
	rest := n.open[:0]
	for _, warning := range n.open {
		if warning.About != about {
			rest = append(rest, warning)
			continue
		}
		marks += n.number(warning.Text)
	}
	n.open = rest
	if marks != "" {
		return " " + marks
	}
	return ""
}

func (n *notes) number(text string) string {
	n.shown++
	mark := fmt.Sprintf("[%d]", n.shown)
	n.unsaid = append(n.unsaid, mark+" "+text)
	return mark
}

// answer is a section that is read first, with the warnings of the good rate, on which all decisions rest, at its first sentence; but
// is what it may not be read without.
func (n *notes) answer(text []string, but ...string) layout.Section {
	if len(text) > 0 {
		text[0] += n.mark("good_rate")
	}
	return layout.Section{Answer: true, Text: text, But: but, Notes: n.take()}
}

// take returns the texts marked since the last call.
func (n *notes) take() []string {
	texts := n.unsaid
	n.unsaid = nil
	return texts
}

// rest marks every warning whose figure is not in the report, and returns them as notes.
func (n *notes) rest() []string {
	for _, warning := range n.open {
		text := warning.Text
		if warning.About != "" {
			text = warning.About + ": " + text
		}
		n.number(text)
	}
	n.open = nil
	return n.take()
}
