package quantity

import "math/big"

// Spaced is n quantities from one to another at equal steps, both ends included, in the unit of the first.
// It needs two quantities of one dimension and n of at least 2, or n = 1 for the first alone. Numbers
// without a short decimal form are rounded to 12 digits.
func Spaced(from, to Quantity, n int) ([]Quantity, error) {
	if from.IsZero() || to.IsZero() || !from.unit.powers.like(to.unit.powers) {
		return nil, wrong(to, "cannot end a range that starts at "+from.String(), "give both ends the same kind of unit")
	}
	if n < 1 {
		return nil, outOfRange(to, "ends a range of no values", "ask for at least one value")
	}
	end := to.base()
	if from.unit.offset != nil {
		end.Sub(end, from.unit.offset)
	}
	end.Quo(end, from.unit.factor)
	span := end.Sub(end, from.number)
	values := make([]Quantity, n)
	for i := range values {
		step := big.NewRat(int64(i), int64(max(n-1, 1)))
		number := step.Add(step.Mul(step, span), from.number)
		digits := decimalText(number)
		values[i] = Quantity{exactly(digits), digits, from.unit}
	}
	return values, nil
}
