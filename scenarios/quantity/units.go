package quantity

import (
	"math/big"
	"strings"
)

// A unit is a product of unit words with its exact size in base units
// (s, m, kg, deg, K, each, money).
type unit struct {
	text   string   // as written, spacing tidied
	powers powers   // exponents
	factor *big.Rat // base units in one
	offset *big.Rat // base units at zero; nil but for degC and degF
}

// word is one line of the table of units.
type word struct {
	names  string // every spelling, separated by blanks, the usual one first
	size   string // exact size in base units, a fraction or a decimal
	powers powers
	offset string // base units at zero, "" for none
}

// words lists every unit. The day's, the hour's and the 365-day year's seconds, the inch, the pound and the
// degree Fahrenheit are exact by definition (NIST SP 811, 2008, App. B, from memory), as are the gallon of
// 231 cubic inches with its quarts, pints and 128 fluid ounces (NIST Handbook 44, App. C), and the pound-force, 0.45359237 kg at 9.80665 m/s2. Only the radian is rounded, to 33 digits.
var words = []word{
	{"s sec second seconds", "1", powers{seconds: 1}, ""},
	{"ms millisecond milliseconds", "1/1000", powers{seconds: 1}, ""},
	{"us microsecond microseconds", "1/1000000", powers{seconds: 1}, ""},
	{"ns nanosecond nanoseconds", "1/1000000000", powers{seconds: 1}, ""},
	{"min mins minute minutes", "60", powers{seconds: 1}, ""},
	{"h hr hrs hour hours", "3600", powers{seconds: 1}, ""},
	{"d day days", "86400", powers{seconds: 1}, ""},
	{"week weeks", "604800", powers{seconds: 1}, ""},
	{"year years", "31536000", powers{seconds: 1}, ""},
	{"Hz", "1", powers{seconds: -1}, ""},

	{"cartons carton", "1", powers{each: 1}, ""},
	{"blanks blank", "1", powers{each: 1}, ""},
	{"each ea", "1", powers{each: 1}, ""},
	{"pieces piece parts part items item", "1", powers{each: 1}, ""},
	{"acts act stops stop pulses pulse", "1", powers{each: 1}, ""},

	{"cpm", "1/60", powers{each: 1, seconds: -1}, ""},

	{"% percent", "1/100", powers{}, ""},
	{"ppm", "1/1000000", powers{}, ""},
	{"fraction", "1", powers{}, ""},

	{"m metre metres meter meters", "1", powers{metres: 1}, ""},
	{"cm", "1/100", powers{metres: 1}, ""},
	{"mm", "1/1000", powers{metres: 1}, ""},
	{"um", "1/1000000", powers{metres: 1}, ""},
	{"in inch inches", "0.0254", powers{metres: 1}, ""},
	{"ft foot feet", "0.3048", powers{metres: 1}, ""},

	{"deg degree degrees", "1", powers{degrees: 1}, ""},
	{"rev revs revolution revolutions turn turns", "360", powers{degrees: 1}, ""},
	{"rad", "57.2957795130823208767981548141051703", powers{degrees: 1}, ""},
	{"rpm", "6", powers{degrees: 1, seconds: -1}, ""},

	{"L l litre litres liter liters", "1/1000", powers{metres: 3}, ""},
	{"mL ml", "1/1000000", powers{metres: 3}, ""},
	{"gal gallon gallons", "0.003785411784", powers{metres: 3}, ""},
	{"qt quart quarts", "0.000946352946", powers{metres: 3}, ""},
	{"pt pint pints", "0.000473176473", powers{metres: 3}, ""},
	{"floz", "0.0000295735295625", powers{metres: 3}, ""},

	{"kg", "1", powers{kilograms: 1}, ""},
	{"g", "1/1000", powers{kilograms: 1}, ""},
	{"lb lbs", "0.45359237", powers{kilograms: 1}, ""},
	{"oz", "0.028349523125", powers{kilograms: 1}, ""},

	{"K", "1", powers{kelvins: 1}, ""},
	{"degC", "1", powers{kelvins: 1}, "273.15"},
	{"degF", "5/9", powers{kelvins: 1}, "45967/180"},

	{"N", "1", powers{kilograms: 1, metres: 1, seconds: -2}, ""},
	{"lbf", "4.4482216152605", powers{kilograms: 1, metres: 1, seconds: -2}, ""},
	{"ozf", "0.27801385095378125", powers{kilograms: 1, metres: 1, seconds: -2}, ""},
	{"Nm", "1", powers{kilograms: 1, metres: 2, seconds: -2}, ""},
	{"J", "1", powers{kilograms: 1, metres: 2, seconds: -2}, ""},
	{"kJ", "1000", powers{kilograms: 1, metres: 2, seconds: -2}, ""},
	{"W", "1", powers{kilograms: 1, metres: 2, seconds: -3}, ""},
	{"kW", "1000", powers{kilograms: 1, metres: 2, seconds: -3}, ""},
	{"Pa", "1", powers{kilograms: 1, metres: -1, seconds: -2}, ""},
	{"kPa", "1000", powers{kilograms: 1, metres: -1, seconds: -2}, ""},
	{"bar", "100000", powers{kilograms: 1, metres: -1, seconds: -2}, ""},

	{"money", "1", powers{money: 1}, ""},
}

var unitOf, unitNames = indexWords()

// indexWords spreads the table over its spellings.
func indexWords() (map[string]unit, []string) {
	index := map[string]unit{}
	var names []string
	for _, w := range words {
		u := unit{powers: w.powers, factor: exactly(w.size)}
		if w.offset != "" {
			u.offset = exactly(w.offset)
		}
		for _, name := range strings.Fields(w.names) {
			u.text = name
			index[name] = u
			names = append(names, name)
		}
	}
	return index, names
}

// exactly reads a number of the table.
func exactly(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("quantity: bad number in the table of units: " + text)
	}
	return r
}
