package quantity

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

const (
	maxText     = 80 // bytes in a quantity
	maxDigits   = 25 // digits in a number
	maxExponent = 30 // power of ten of a number, either way
)

// decimal matches a plain decimal number at the start of a text.
var decimal = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE]([+-]?[0-9]+))?`)

// Number reads a plain decimal number without a unit, exactly. Hexadecimal numbers, underscores, NaN,
// infinities, decimal commas, more than 25 digits and powers of ten above 30 are refused with a hint.
func Number(text string) (*big.Rat, error) {
	digits, rest, err := splitNumber(strings.TrimSpace(text))
	if err != nil && err.Hint == wellFormed {
		err.Hint = "write a plain number such as 3 or 0.9"
	}
	if err != nil {
		return nil, err
	}
	if rest != "" {
		return nil, badNumber(text, "has a unit where a plain number is wanted", "write "+digits)
	}
	return exactly(digits), nil
}

// splitNumber cuts a text into its number and what follows.
func splitNumber(text string) (digits, rest string, err *Error) {
	text = strings.Replace(text, "−", "-", 1)
	if len(text) > maxText {
		return "", "", badNumber(strings.ToValidUTF8(text[:20], "")+"...", "is too long for a quantity", wellFormed)
	}
	found := decimal.FindStringSubmatch(text)
	if found == nil {
		return "", "", notANumber(text)
	}
	digits, rest = found[0], text[len(found[0]):]
	if err := oddNumber(text, digits, rest); err != nil {
		return "", "", err
	}
	if power, err := strconv.Atoi(found[1]); found[1] != "" && (err != nil || power > maxExponent || power < -maxExponent) {
		return "", "", badNumber(text, "has a power of ten out of range", "write a number such as 6e6")
	}
	return digits, strings.TrimSpace(rest), nil
}

// wellFormed is the hint where nothing better can be said.
const wellFormed = "write a number and its unit, as in 0.95 s or 1450 cartons/h"

// oddNumber finds what makes a number unfit although it starts well.
func oddNumber(text, digits, rest string) *Error {
	switch {
	case commaGroups.MatchString(rest):
		groups := commaGroups.FindString(rest)
		whole := "write " + digits + strings.ReplaceAll(groups, ",", "") + rest[len(groups):]
		if strings.Count(groups, ",") == 1 {
			whole += ", or " + digits + "." + rest[1:] + " if the comma is a decimal one"
		}
		return badNumber(text, "has a comma in the number", whole)
	case decimalComma.MatchString(rest):
		return badNumber(text, "has a comma in the number", "write "+digits+"."+rest[1:])
	case blankGroup.MatchString(rest):
		return badNumber(text, "has a blank in the number", "write "+digits+strings.TrimSpace(rest))
	case strings.HasPrefix(rest, "_"):
		return badNumber(text, "has an underscore in the number", "write "+strings.ReplaceAll(text, "_", ""))
	case strings.Trim(digits, "+-") == "0" && strings.HasPrefix(strings.ToLower(rest), "x"):
		return badNumber(text, "is a hexadecimal number", "write it in decimal digits")
	case spanned.MatchString(rest):
		return badNumber(text, "is a range", "write {uniform: {from: "+digits+unitAfter(rest)+", to: "+strings.TrimLeft(rest[1:], " -–")+"}}, or one value")
	case strings.HasPrefix(rest, "."):
		return badNumber(text, "has a point out of place", wellFormed)
	case len(digits) > maxDigits:
		return badNumber(text, "has too many digits", "round it to what can be measured")
	}
	return nil
}

// notANumber says what a text is that does not start with a number.
func notANumber(text string) *Error {
	if text == "" {
		return badNumber(text, "is empty", wellFormed)
	}
	first := strings.Trim(strings.Fields(text)[0], "+-.")
	for _, name := range []string{"nan", "inf", "infinity"} {
		if strings.EqualFold(first, name) {
			return badNumber(text, "is not a finite number", wellFormed)
		}
	}
	return badNumber(text, "does not start with a number", wellFormed)
}

var (
	commaGroups  = regexp.MustCompile(`^(?:,[0-9]{3})+\b`)
	decimalComma = regexp.MustCompile(`^,[0-9]`)
	spanned      = regexp.MustCompile(`^\s*[-–]\s*[0-9]`)
	blankGroup   = regexp.MustCompile(`^\s+[0-9]`)
)

// unitAfter is the unit behind the second number of a range such as "2-5 s".
func unitAfter(rest string) string {
	return " " + strings.TrimLeft(rest, " -–0123456789.")
}
