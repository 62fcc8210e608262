package quantity

import (
	"math/big"
	"strings"
)

// Signed says that a text begins with a sign, so that it is a change of what is there: "+0.2 s", "-5 %".
func Signed(text string) bool {
	text = strings.TrimSpace(text)
	return strings.HasPrefix(text, "+") || strings.HasPrefix(text, "-") || strings.HasPrefix(text, "−")
}

// Changed is q after a change by a signed quantity, exactly, in the unit of q, or of the change where it takes no
// endless fraction. One of q's own dimension is added, so that 0.1 % more of
// a share are percentage points; a percentage of anything else is a share of q. The error is an *Error.
func (q Quantity) Changed(by Quantity) (Quantity, error) {
	number := new(big.Rat)
	switch {
	case by.unit.powers.like(q.unit.powers):
		ratio := new(big.Rat).Quo(by.unit.factor, q.unit.factor)
		number.Add(q.number, ratio.Mul(by.number, ratio))
		if _, exact := number.FloatPrec(); !exact && q.unit.offset == nil { // 1 min + 1 s is 61 s
			return Quantity{number.Mul(number, q.unit.factor).Quo(number, by.unit.factor), "", by.unit}.written(), nil
		}
	case by.Is(Ratio):
		number.Mul(q.number, by.base())
		number.Add(number, q.number)
	default:
		return Quantity{}, wrong(by, "is "+nameOf(by.unit.powers)+", and can't change "+nameOf(q.unit.powers), "write a change in "+q.unit.text+", or in %")
	}
	return Quantity{number, "", q.unit}.written(), nil
}

// written is q with its number in digits.
func (q Quantity) written() Quantity {
	q.digits = decimalText(q.number)
	return q
}
