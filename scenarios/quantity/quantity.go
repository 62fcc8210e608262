// Package quantity reads and prints physical quantities that carry their unit, such as "0.95 s",
// "1450 cartons/h", "10 floz/in" or "0.4 %". Sizes of units are exact fractions, so that a time comes out
// right to the nanosecond.
package quantity

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// A Quantity is a number with its unit. The zero value is no quantity.
type Quantity struct {
	number *big.Rat
	digits string // the number as written
	unit   unit
}

// Parse reads a number and its unit. The error is an *Error.
func Parse(text string) (Quantity, error) {
	return parse(text, []string{"s", "cartons/h", "%"})
}

// ParseAs reads a quantity of a dimension. The error is an *Error; where the unit is missing or of another
// dimension, its hint is fit for the dimension.
func ParseAs(text string, want Dimension) (Quantity, error) {
	q, err := parse(text, want.measure().units)
	if err != nil {
		return q, err
	}
	if want == Torque {
		q = q.asForce()
	}
	return q, q.Need(want)
}

func parse(text string, offers []string) (Quantity, error) {
	digits, rest, err := splitNumber(strings.TrimSpace(text))
	if err != nil {
		return Quantity{}, err
	}
	if rest == "" {
		return Quantity{}, missingUnit(digits, offers)
	}
	u, err := parseUnit(rest)
	if err != nil {
		return Quantity{}, err.after(digits, strings.TrimSpace(text))
	}
	if u.text == "" {
		return Quantity{}, missingUnit(digits, offers)
	}
	q := Quantity{exactly(digits), digits, u}
	if err := q.thousands(); err != nil {
		return Quantity{}, err
	}
	return q, nil
}

// thousands refuses a number of cartons with three decimals: 1.500 cartons/h may be meant as 1500.
func (q Quantity) thousands() error {
	if q.unit.powers[each] != 1 || !groupedByPoint.MatchString(q.digits) {
		return nil
	}
	whole, decimal := strings.Replace(q.digits, ".", "", 1), strings.TrimRight(strings.TrimRight(q.digits, "0"), ".")
	if groupedByPoint.MatchString(decimal) {
		decimal += "0"
	}
	return badNumber(q.String(), "has a point before three digits, which may part thousands", "write "+whole+" "+q.unit.text+", or "+decimal+" "+q.unit.text)
}

var groupedByPoint = regexp.MustCompile(`^[+-]?[1-9][0-9]{0,2}\.[0-9]{3}$`)

// asForce takes a mass in a torque for its weight, as in 20 lb in, 60 oz in or 5 ft lb.
func (q Quantity) asForce() Quantity {
	if q.unit.powers == (powers{kilograms: 1, metres: 1}) && strings.ContainsAny(q.unit.text, "lo") {
		q.unit.powers[seconds] = -2
		q.unit.factor = new(big.Rat).Mul(q.unit.factor, exactly("9.80665"))
	}
	return q
}

// Of makes a quantity of a number in a unit: Of(0.95, "s"). The number is taken at its shortest decimal form.
func Of(number float64, unit string) (Quantity, error) {
	digits, _, err := splitNumber(strconv.FormatFloat(number, 'g', -1, 64))
	if err != nil {
		return Quantity{}, err
	}
	u, err := parseUnit(unit)
	if err != nil {
		return Quantity{}, err
	}
	if u.text == "" {
		return Quantity{}, missingUnit(digits, []string{"s"})
	}
	return Quantity{exactly(digits), digits, u}, nil
}

// IsZero says whether q is no quantity at all (not whether its number is 0).
func (q Quantity) IsZero() bool { return q.number == nil }

// Unit is the unit as written, spelling tidied: "s", "cartons/h", "floz/in"; empty for no quantity.
func (q Quantity) Unit() string { return q.unit.text }

// String is the number as written and the unit; Parse reads it back to an equal quantity.
func (q Quantity) String() string {
	if q.number == nil {
		return ""
	}
	return q.digits + " " + q.unit.text
}

// decimalText prints a fraction exactly where 18 decimals are enough, otherwise to 12 digits.
func decimalText(r *big.Rat) string {
	if decimals, exact := r.FloatPrec(); exact && decimals <= 18 {
		if text := r.FloatString(decimals); len(text) <= maxDigits {
			return text
		}
	}
	f, _ := r.Float64()
	return strconv.FormatFloat(f, 'g', 12, 64)
}
