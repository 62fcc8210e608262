package decisions

import (
	"errors"
	"math"
	"strings"

	"dwellcast/scenarios/quantity"
)

// Value is a quantity as an override writes it: with its unit, or as a plain number where the file holds one.
type Value struct {
	quantity.Quantity
	plain bool
}

// plainUnit stands in for the unit that a plain number has not.
const plainUnit = "each"

// ParseValue reads a quantity with its unit, or a plain number.
func ParseValue(text string) (Value, error) {
	text = strings.TrimSpace(text)
	if _, err := quantity.Number(text); err == nil {
		q, err := quantity.Parse(text + " " + plainUnit)
		return Value{q, true}, err
	}
	q, err := quantity.Parse(text)
	return Value{q, false}, err
}

// valueOf makes a value of a number in the unit of another.
func valueOf(number float64, like Value) (Value, error) {
	q, err := quantity.Of(number, like.Quantity.Unit())
	return Value{q, like.plain}, err
}

// Unit is the unit, empty for a plain number.
func (v Value) Unit() string {
	if v.plain {
		return ""
	}
	return v.Quantity.Unit()
}

// String is the value as an override writes it. A number of cartons with three decimals gets a fourth, lest its point be taken for
// one that parts thousands.
func (v Value) String() string {
	if v.plain {
		return strings.TrimSuffix(v.Quantity.String(), " "+plainUnit)
	}
	text := v.Quantity.String()
	if _, err := quantity.Parse(text); err != nil {
		number, unit, _ := strings.Cut(text, " ")
		return number + "0 " + unit
	}
	return text
}

// Number is the value's number in its unit.
func (v Value) Number() float64 {
	x, _ := v.In(v.Quantity.Unit()) // its own unit always fits
	return x
}

// message takes the mistake out of a quantity's error, for a sentence of our own.
func message(err error) (text, hint string) {
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		return "\"" + e.Text + "\" " + e.Message, e.Hint
	}
	return err.Error(), ""
}

// tidy leaves a number so many digits.
func tidy(x float64, digits int) float64 {
	if x == 0 {
		return 0
	}
	unit := math.Pow10(digits - 1 - int(math.Floor(math.Log10(math.Abs(x)))))
	return math.Round(x*unit) / unit
}
