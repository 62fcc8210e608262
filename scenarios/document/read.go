package document

import (
	"math/big"
	"strings"

	"dwellcast/scenarios/quantity"
)

// List is the items of a list; nil, and a report, where the node is no list.
func (n *Node) List(p *Problems) []*Node {
	if !n.shaped(p, List, "write a line with a dash for each item, or [...]") {
		return nil
	}
	return n.values
}

// Text is a single value as text. An empty text is reported.
func (n *Node) Text(p *Problems) string {
	if !n.shaped(p, Scalar, "write a text") {
		return ""
	}
	if strings.TrimSpace(n.text) == "" {
		p.Add(n, "is an empty text", "write a text")
	}
	return n.text
}

// Bool is true or false, also written yes or no.
func (n *Node) Bool(p *Problems) bool {
	if !n.shaped(p, Scalar, "write yes or no") {
		return false
	}
	switch n.text {
	case "true", "yes":
		return true
	case "false", "no":
		return false
	}
	p.Add(n, "is neither yes nor no", "write yes or no")
	return false
}

// OneOf is one of the allowed words; empty, and a report, for any other.
func (n *Node) OneOf(p *Problems, allowed ...string) string {
	hint := "write " + choice(allowed)
	if !n.shaped(p, Scalar, hint) {
		return ""
	}
	for _, word := range allowed {
		if n.text == word {
			return word
		}
	}
	if near := quantity.Nearest(n.text, allowed); near != "" {
		hint = "did you mean " + near + "? otherwise " + hint
	}
	p.Add(n, "is not one of the words allowed here", hint)
	return ""
}

// choice joins words: a, b or c.
func choice(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// Int is a plain whole number, at most a thousand million either way unless the limits say less.
func (n *Node) Int(p *Problems, limits ...Limit) int {
	value := n.number(p, append(limits, Limit{Min: "-1000000000", Max: "1000000000"}))
	if value == nil {
		return 0
	}
	if !value.IsInt() {
		p.Add(n.scalar(), "is not a whole number", "write a whole number")
		return 0
	}
	return int(value.Num().Int64())
}

// Number is a plain number without a unit, such as a coefficient of variation.
func (n *Node) Number(p *Problems, limits ...Limit) float64 {
	value := n.number(p, limits)
	if value == nil {
		return 0
	}
	f, _ := value.Float64()
	return f
}

// number reads a plain number; nil, and a report, where there is none fit.
func (n *Node) number(p *Problems, limits []Limit) *big.Rat {
	read := func(n *Node) *big.Rat {
		if !n.shaped(p, Scalar, "write a plain number") {
			return nil
		}
		value, err := quantity.Number(n.text)
		if err != nil {
			p.addQuantity(n, err)
			return nil
		}
		if !within(n, p, limits, func(limit string) int { return value.Cmp(plain(limit)) }) {
			return nil
		}
		return value
	}
	return assumed(n, p, read, func(a, b *big.Rat) int { return a.Cmp(b) })
}
