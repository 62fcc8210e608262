package document

import (
	"time"

	"dwellcast/scenarios/quantity"
)

// Quantity is a quantity of a dimension within the limits; the zero Quantity, and a report, where it is not.
func (n *Node) Quantity(p *Problems, want quantity.Dimension, limits ...Limit) quantity.Quantity {
	return n.quantity(p, want, limits, func(text string) (quantity.Quantity, error) {
		return quantity.ParseAs(text, want)
	})
}

// quantity reads with a parser of its own.
func (n *Node) quantity(p *Problems, want quantity.Dimension, limits []Limit, parse func(string) (quantity.Quantity, error)) quantity.Quantity {
	read := func(n *Node) quantity.Quantity {
		if !n.shaped(p, Scalar, "write for example "+want.Example()) {
			return quantity.Quantity{}
		}
		q, err := parse(n.text)
		if err != nil {
			p.addQuantity(n, err)
			return quantity.Quantity{}
		}
		if !within(n, p, limits, compareTo(q)) {
			return quantity.Quantity{}
		}
		return q
	}
	return assumed(n, p, read, func(a, b quantity.Quantity) int {
		sign, _ := a.Compare(b) // of one dimension
		return sign
	})
}

// Duration is a time of 0 or more, to the nanosecond.
func (n *Node) Duration(p *Problems, limits ...Limit) time.Duration {
	q := n.Quantity(p, quantity.Time, append(limits, Limit{Min: "0 s", Max: "100 years"})...)
	if q.IsZero() {
		return 0
	}
	d, err := q.Duration()
	if err != nil {
		p.addQuantity(n, err)
	}
	return d
}

// PositiveDuration is a time of more than 0, to the nanosecond.
func (n *Node) PositiveDuration(p *Problems, limits ...Limit) time.Duration {
	return n.Duration(p, append([]Limit{{Above: "0 s"}}, limits...)...)
}

// Rate is a rate above 0, in pieces per hour. For the exact time per piece take Quantity and its Period.
func (n *Node) Rate(p *Problems, limits ...Limit) float64 {
	q := n.Quantity(p, quantity.Rate, append(limits, Limit{Above: "0 cartons/h"})...)
	if q.IsZero() {
		return 0
	}
	perHour, err := q.PerHour()
	if err != nil {
		p.addQuantity(n, err)
	}
	return perHour
}

// Ratio is a share from 0 to 1, written in percent: 0.4 %. A plain 0 or 1 is read too.
func (n *Node) Ratio(p *Problems, limits ...Limit) float64 {
	limits = append(limits, Limit{Min: "0 %", Max: "100 %", Hint: "a share lies between 0 % and 100 %"})
	q := n.quantity(p, quantity.Ratio, limits, parseShare)
	if q.IsZero() {
		return 0
	}
	share, err := q.Ratio()
	if err != nil {
		p.addQuantity(n, err)
	}
	return share
}

// parseShare reads a share; a plain number gets a hint in percent.
func parseShare(text string) (quantity.Quantity, error) {
	plain, err := quantity.Number(text)
	if err != nil {
		return quantity.ParseAs(text, quantity.Ratio)
	}
	f, _ := plain.Float64()
	percent, err := quantity.Of(100*f, "%")
	if f == 0 || f == 1 || err != nil {
		return percent, err
	}
	hint := "write " + quantity.FormatRatio(f)
	if f > 1 || f < 0 {
		hint = "write a share between 0 % and 100 %, such as 0.4 %"
	}
	return percent, &quantity.Error{Kind: quantity.MissingUnit, Text: text, Message: "has no unit", Hint: hint}
}

// Count is a whole number of pieces of 0 or more, with its unit (24 cartons) or plain (24); at most a
// thousand million.
func (n *Node) Count(p *Problems, limits ...Limit) int {
	limits = append(limits, Limit{Min: "0", Max: "1000000000"})
	q := n.quantity(p, quantity.Count, limits, parseCount)
	if q.IsZero() {
		return 0
	}
	count, err := q.Count()
	if err != nil {
		p.addQuantity(n, err)
	}
	return int(count)
}

// parseCount reads a count with or without a unit.
func parseCount(text string) (quantity.Quantity, error) {
	if _, err := quantity.Number(text); err == nil {
		text += " each"
	}
	return quantity.ParseAs(text, quantity.Count)
}

// Measure is the number of a quantity in a unit, such as a volume in mL or an angle in deg.
func (n *Node) Measure(p *Problems, want quantity.Dimension, unit string, limits ...Limit) float64 {
	q := n.Quantity(p, want, limits...)
	if q.IsZero() {
		return 0
	}
	number, err := q.In(unit)
	if err != nil {
		panic("document: bad unit " + unit + ": " + err.Error())
	}
	return number
}

// Customary says that the node is a quantity written in US customary units.
func (n *Node) Customary() bool { return n != nil && quantity.Customary(n.scalar().raw()) }

// Length is a length in metres.
func (n *Node) Length(p *Problems, limits ...Limit) float64 {
	return n.Measure(p, quantity.Length, "m", limits...)
}

// Angle is an angle in degrees.
func (n *Node) Angle(p *Problems, limits ...Limit) float64 {
	return n.Measure(p, quantity.Angle, "deg", limits...)
}
