package quantity

import (
	"slices"
	"strings"
)

// customary are the units of the US customary system, by their usual names in the table of units.
var customary = strings.Fields("in ft gal qt pt floz lb oz degF lbf ozf")

var customaryNames = func() (names []string) {
	for _, w := range words {
		if spellings := strings.Fields(w.names); slices.Contains(customary, spellings[0]) {
			names = append(names, spellings...)
		}
	}
	return names
}()

// Customary says that a quantity is written in US customary units: one of them stands in its unit. What is no quantity is not.
func Customary(text string) bool {
	q, err := Parse(text)
	if err != nil {
		return false
	}
	for _, word := range strings.FieldsFunc(q.unit.text, func(r rune) bool { return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') }) {
		if slices.Contains(customaryNames, word) {
			return true
		}
	}
	return false
}

// Size is how many SI units one of a unit is, as the table of units has it: Size("in") is 0.0254. It panics where there is no such unit.
func Size(unit string) float64 {
	u, known := unitOf[unit]
	if !known {
		panic("quantity: no unit " + unit)
	}
	size, _ := u.factor.Float64()
	return size
}
