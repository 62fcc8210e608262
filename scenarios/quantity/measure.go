package quantity

import (
	"math"
	"math/big"
	"time"
)

// Is says whether q is of a dimension. A bare 1/time, such as 1200 /h, is a rate too.
func (q Quantity) Is(want Dimension) bool {
	if q.number == nil {
		return false
	}
	return q.unit.powers.like(want.measure().powers)
}

// like says whether two units can be compared; 1/time is taken for count/time.
func (p powers) like(other powers) bool { return p.ofPieces() == other.ofPieces() }

func (p powers) ofPieces() powers {
	if p == (powers{seconds: -1}) {
		p[each] = 1
	}
	return p
}

// Need returns an *Error unless q is of the dimension.
func (q Quantity) Need(want Dimension) error {
	if q.Is(want) {
		return nil
	}
	return wrong(q, "is "+nameOf(q.unit.powers)+" where "+want.String()+" is wanted", "write for example "+want.Example())
}

// base is the size of q in base units, exactly.
func (q Quantity) base() *big.Rat {
	r := new(big.Rat)
	if q.number == nil {
		return r
	}
	r.Mul(q.number, q.unit.factor)
	if q.unit.offset != nil {
		r.Add(r, q.unit.offset)
	}
	return r
}

// SI is q in SI units: s, m, kg, rad, K and products of these; a ratio as a fraction, a rate per second, a
// count in pieces, a temperature on the absolute scale.
func (q Quantity) SI() float64 { return q.radians(q.base()) }

// Difference is q in kelvins as a step of temperature: 10 degC and 18 degF are both 10.
func (q Quantity) Difference() (float64, error) {
	if err := q.Need(TemperatureDifference); err != nil {
		return 0, err
	}
	k, _ := new(big.Rat).Mul(q.number, q.unit.factor).Float64()
	return k, nil
}

// radians turns a size in base units, which count degrees, into SI.
func (q Quantity) radians(size *big.Rat) float64 {
	f, _ := size.Float64()
	return f * math.Pow(math.Pi/180, float64(q.unit.powers[degrees]))
}

// In is the number of q in another unit of the same dimension; the exact quotient, rounded once.
func (q Quantity) In(unitText string) (float64, error) {
	u, err := parseUnit(unitText)
	if err != nil {
		return 0, err
	}
	if q.number == nil || !u.powers.like(q.unit.powers) {
		return 0, wrong(q, "cannot be given in "+unitText, "ask for a unit of the same kind")
	}
	size := q.base()
	if u.offset != nil {
		size.Sub(size, u.offset)
	}
	f, _ := size.Quo(size, u.factor).Float64()
	return f, nil
}

// Duration is q as a length of time, rounded to the nanosecond (halves away from zero).
func (q Quantity) Duration() (time.Duration, error) {
	if err := q.Need(Time); err != nil {
		return 0, err
	}
	return q.nanoseconds(q.base())
}

// Period is the time that one piece takes at the rate q: 1450 cartons/h gives 2.482758621 s.
func (q Quantity) Period() (time.Duration, error) {
	if err := q.Need(Rate); err != nil {
		return 0, err
	}
	rate := q.base()
	if rate.Sign() <= 0 {
		return 0, outOfRange(q, "has no period", "give a rate above 0")
	}
	return q.nanoseconds(rate.Inv(rate))
}

func (q Quantity) nanoseconds(size *big.Rat) (time.Duration, error) {
	n := round(size.Mul(size, big.NewRat(int64(time.Second), 1)))
	if !n.IsInt64() {
		return 0, outOfRange(q, "is too long", "the longest time is 292 years")
	}
	return time.Duration(n.Int64()), nil
}

// round is the nearest whole number, halves away from zero.
func round(r *big.Rat) *big.Int {
	twice := new(big.Int).Lsh(r.Num(), 1)
	if r.Sign() < 0 {
		twice.Sub(twice, r.Denom())
	} else {
		twice.Add(twice, r.Denom())
	}
	return twice.Quo(twice, new(big.Int).Lsh(r.Denom(), 1))
}

// PerHour is a rate in pieces per hour.
func (q Quantity) PerHour() (float64, error) {
	if err := q.Need(Rate); err != nil {
		return 0, err
	}
	f, _ := new(big.Rat).Mul(q.base(), big.NewRat(3600, 1)).Float64()
	return f, nil
}

// Ratio is a share as a fraction: 0.4 % gives 0.004.
func (q Quantity) Ratio() (float64, error) {
	if err := q.Need(Ratio); err != nil {
		return 0, err
	}
	f, _ := q.base().Float64()
	return f, nil
}

// Count is a whole number of pieces.
func (q Quantity) Count() (int64, error) {
	if err := q.Need(Count); err != nil {
		return 0, err
	}
	size := q.base()
	if !size.IsInt() {
		return 0, outOfRange(q, "is not a whole number", "write a whole number such as 24 cartons")
	}
	if !size.Num().IsInt64() {
		return 0, outOfRange(q, "is too many", "write a smaller number")
	}
	return size.Num().Int64(), nil
}

// Compare is -1, 0 or 1 as q is smaller than, as large as or larger than other, exactly. It is an error when
// the two are of different dimensions.
func (q Quantity) Compare(other Quantity) (int, error) {
	if !q.unit.powers.like(other.unit.powers) || q.IsZero() != other.IsZero() {
		return 0, wrong(q, "cannot be compared with "+other.String(), "give both the same kind of unit")
	}
	return q.base().Cmp(other.base()), nil
}

// Equal says whether both are of the same size and dimension: 60 min equals 1 h.
func (q Quantity) Equal(other Quantity) bool {
	c, err := q.Compare(other)
	return err == nil && c == 0
}
