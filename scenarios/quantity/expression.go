package quantity

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// unitTerm matches one factor of a unit: a word with an exponent of one digit, or a whole number.
var unitTerm = regexp.MustCompile(`^(?:([A-Za-z%]+)(?:\^?([1-4]))?|([0-9]{1,9}))`)

// maxTerms is how many factors a unit may have.
const maxTerms = 8

// parseUnit reads a product of unit words. All that follows a slash is below it, so W/m2K, W/m2 K and
// W/(m2 K) are the same; "per" is a slash; a whole number may stand below it, as in money/1000 cartons.
func parseUnit(text string) (unit, *Error) {
	u := unit{text: tidy(text), factor: big.NewRat(1, 1)}
	above, below, slash := strings.Cut(strings.ReplaceAll(u.text, " per ", "/"), "/")
	if slash {
		below = strings.TrimSpace(strings.ReplaceAll(below, "/", " "))
		if strings.HasPrefix(below, "(") && strings.HasSuffix(below, ")") {
			below = below[1 : len(below)-1]
		}
		if below == "" {
			return u, badUnit(u.text, "has nothing below the slash", "write a unit such as cartons/h")
		}
	}
	if above == "" && below != "" && '0' <= below[0] && below[0] <= '9' {
		return u, badUnit(u.text, "is a fraction", "write a decimal number, as in 0.25 in")
	}
	if err := u.multiply(above, 1); err != nil {
		return u, err
	}
	if err := u.multiply(below, -1); err != nil {
		return u, err
	}
	if single, ok := unitOf[u.text]; ok {
		u.offset = single.offset
	}
	return u, nil
}

// multiply takes every term of a product into the unit, with its sign.
func (u *unit) multiply(product string, sign int) *Error {
	rest := strings.TrimSpace(product)
	for terms := 0; rest != ""; terms++ {
		m := unitTerm.FindStringSubmatch(rest)
		switch {
		case terms == maxTerms:
			return badUnit(u.text, "has too many parts", "write a unit such as cartons/h")
		case m == nil, m[3] != "" && (sign > 0 || terms > 0):
			return badUnit(u.text, "is not a unit", "write the number, a blank and the unit, as in 1.5 s or 1450 cartons/h")
		case m[3] != "":
			if err := u.divide(m[3]); err != nil {
				return err
			}
		default:
			if err := u.take(m[1], m[2], sign); err != nil {
				return err
			}
		}
		rest = strings.TrimLeft(rest[len(m[0]):], " *")
	}
	return nil
}

// divide takes a whole number below the slash into the unit.
func (u *unit) divide(digits string) *Error {
	n, _ := strconv.ParseInt(digits, 10, 64) // nine digits at most
	if n == 0 {
		return badUnit(u.text, "divides by zero", "write a unit such as money/1000 cartons")
	}
	u.factor.Mul(u.factor, big.NewRat(1, n))
	return nil
}

// take takes a unit word with its exponent into the unit.
func (u *unit) take(name, exponent string, sign int) *Error {
	known, ok := unitOf[name]
	if !ok {
		return unknownUnit(u.text, name)
	}
	n := 1
	if exponent != "" {
		n = int(exponent[0] - '0')
	}
	for i, p := range known.powers {
		u.powers[i] += p * int8(n*sign)
	}
	for range n {
		if sign > 0 {
			u.factor.Mul(u.factor, known.factor)
		} else {
			u.factor.Quo(u.factor, known.factor)
		}
	}
	return nil
}

// tidy brings the spellings of one unit together: "fl oz" and "floz", "°C" and "degC", "m²" and "m2".
func tidy(text string) string {
	text = strings.Join(strings.Fields(spellings.Replace(text)), " ")
	text = strings.ReplaceAll(text, "US ", "")
	text = strings.ReplaceAll(text, "fl. oz", "floz")
	text = strings.ReplaceAll(text, "fl oz", "floz")
	text = perKelvin.ReplaceAllString(text, "$1 K")
	return slashes.ReplaceAllString(text, "/")
}

var (
	perKelvin = regexp.MustCompile(`\b(m|kg|g)K\b`) // W/mK is W/(m K); no unit here is a millikelvin
	slashes   = regexp.MustCompile(` ?/ ?`)
	spellings = strings.NewReplacer("°C", "degC", "°F", "degF", "°", "deg", "²", "2", "³", "3", "·", " ",
		"µ", "u", "μ", "u", "\u00a0", " ", "\u202f", " ")
)
