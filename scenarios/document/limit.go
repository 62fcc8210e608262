package document

import (
	"math/big"

	"dwellcast/scenarios/quantity"
)

// A Limit bounds a value. Its texts are written like the values: Limit{Min: "0.05 s", Max: "60 s"}; empty
// texts bound nothing. A text that does not parse is a mistake in the program and panics.
type Limit struct {
	Min, Max string // the value may reach these
	Above    string // the value must be larger than this
	Below    string // the value must be smaller than this
	Hint     string // replaces the hint that names the bound
}

// within reports a value outside its limits; compare gives the sign of value minus limit.
func within(n *Node, p *Problems, limits []Limit, compare func(limit string) int) bool {
	for _, l := range limits {
		message, hint := "", ""
		switch {
		case l.Above != "" && compare(l.Above) <= 0:
			message, hint = "is not more than "+l.Above, "write more than "+l.Above
		case l.Min != "" && compare(l.Min) < 0:
			message, hint = "is less than "+l.Min, "write "+l.Min+" or more"
		case l.Below != "" && compare(l.Below) >= 0:
			message, hint = "is not less than "+l.Below, "write less than "+l.Below
		case l.Max != "" && compare(l.Max) > 0:
			message, hint = "is more than "+l.Max, "write "+l.Max+" or less"
		}
		if message == "" {
			continue
		}
		if l.Hint != "" {
			hint = l.Hint
		}
		p.Add(n, message, hint)
		return false
	}
	return true
}

// plain reads a limit without a unit.
func plain(limit string) *big.Rat {
	r, err := quantity.Number(limit)
	if err != nil {
		panic("document: bad limit " + limit + ": " + err.Error())
	}
	return r
}

// compareTo compares a quantity with a limit.
func compareTo(q quantity.Quantity) func(limit string) int {
	return func(limit string) int {
		bound, err := quantity.Parse(limit)
		if q.Is(quantity.Count) {
			bound, err = parseCount(limit) // with or without a unit
		}
		if err != nil {
			panic("document: bad limit " + limit + ": " + err.Error())
		}
		sign, err := q.Compare(bound)
		if err != nil {
			panic("document: limit of another kind: " + err.Error())
		}
		return sign
	}
}
