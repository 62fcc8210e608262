package document

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"dwellcast/scenarios/quantity"
)

// A Problem is one mistake in a document. Messages start in lower case, have no full stop, and end in a
// hint that says what to do.
type Problem struct {
	At      Position
	Path    string // such as sealer.dwell; empty at the top
	Text    string // the offending text, empty where there is none
	Message string // what is wrong, to follow the text
	Hint    string // what to do
}

// Error is the problem on one line: position, path, text, message; hint.
func (p Problem) Error() string {
	if p.Hint == "" {
		return p.sentence()
	}
	return p.sentence() + "; " + p.Hint
}

func (p Problem) sentence() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: ", p.At)
	if p.Path != "" && !strings.HasSuffix(p.At.Override, p.Path) {
		fmt.Fprintf(&b, "%s: ", p.Path)
	}
	if p.Text != "" {
		fmt.Fprintf(&b, "%q ", shorten(p.Text))
	}
	return b.String() + p.Message
}

// shorten keeps a message readable when the offending text is long.
func shorten(text string) string {
	const longest = 60
	if letters := []rune(text); len(letters) > longest {
		return string(letters[:longest]) + "..."
	}
	return text
}

// A ProblemList is every mistake that was found, by position, each once. It is an error.
type ProblemList []Problem

// Error prints each problem on a line with its hint indented on the next.
func (list ProblemList) Error() string {
	var lines []string
	for _, p := range list {
		lines = append(lines, p.sentence())
		if p.Hint != "" {
			lines = append(lines, "    "+p.Hint)
		}
	}
	return strings.Join(lines, "\n")
}

// Problems gathers mistakes while a document is walked. The zero value is ready.
type Problems struct {
	found ProblemList
	// refused are single values about which something was said: what follows from them is not news.
	refused map[*Node]bool
	// unsaid is how many such followed.
	unsaid int
}

// Add notes a mistake at a node, the first only of a single value. The message follows the node's text, if it is a single value:
// "is longer than the shift".
func (p *Problems) Add(n *Node, message, hint string) {
	if n.kind == Scalar {
		if p.refused[n] || n.missing {
			p.unsaid++
			return
		}
		p.refuse(n)
	}
	p.Report(Problem{At: n.at, Path: n.Path(), Text: n.text, Message: message, Hint: hint})
}

func (p *Problems) refuse(n *Node) {
	if p.refused == nil {
		p.refused = map[*Node]bool{}
	}
	p.refused[n] = true
}

// Report notes a mistake as it is.
func (p *Problems) Report(problem Problem) { p.found = append(p.found, problem) }

// addQuantity notes what the quantity package found wrong with a single value.
func (p *Problems) addQuantity(n *Node, err error) {
	message, hint := err.Error(), ""
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		message, hint = e.Message, e.Hint
	}
	p.Add(n.scalar(), message, hint)
}

// Err is nil where nothing was found, otherwise a ProblemList sorted by position, overrides last.
func (p *Problems) Err() error {
	if len(p.found) == 0 {
		return nil
	}
	list := slices.Clone(p.found)
	slices.SortStableFunc(list, byPosition)
	seen := map[Problem]bool{}
	return slices.DeleteFunc(list, func(problem Problem) bool {
		before := seen[problem]
		seen[problem] = true
		return before
	})
}

func byPosition(a, b Problem) int {
	if a.At.Override != "" || b.At.Override != "" {
		return cmp.Compare(min(len(a.At.Override), 1), min(len(b.At.Override), 1))
	}
	return cmp.Or(cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
}

// Len is the number of mistakes noted so far, those included that only followed from others.
func (p *Problems) Len() int { return len(p.found) + p.unsaid }
