package decisions

import "math"

// CashFlow is a first cost paid now and the net amounts that come in at the end of each year after it. Amounts are in one currency,
// at the prices of today.
type CashFlow struct {
	// First is the first cost, 0 or more.
	First float64
	// Years are the net amounts at the end of years 1, 2, ...
	Years []float64
	// Salvage comes in with the last year; below 0 it is the cost of disposal.
	Salvage float64
}

// PresentWorthFactor is (P/A, i, n): what one unit at the end of each of n years is worth now, at a discount rate of i a year above
// -1: (1 - (1+i)^-n) / i, and n at a rate of 0. It stands in the factor tables of any textbook of engineering economy.
func PresentWorthFactor(i, n float64) float64 {
	if i == 0 {
		return n
	}
	return -math.Expm1(-n*math.Log1p(i)) / i
}

// CapitalRecoveryFactor is (A/P, i, n), the inverse of PresentWorthFactor: the yearly amount that one unit now is worth.
func CapitalRecoveryFactor(i, n float64) float64 { return 1 / PresentWorthFactor(i, n) }

// PresentValue is what amounts at the end of years 1, 2, ... are worth now.
func PresentValue(i float64, years []float64) float64 {
	sum := 0.0
	for k := len(years) - 1; k >= 0; k-- {
		sum = float64(sum+years[k]) / (1 + i)
	}
	return sum
}

// NetPresentValue is what the whole is worth now.
func (c CashFlow) NetPresentValue(i float64) float64 {
	n := float64(len(c.Years))
	return PresentValue(i, c.Years) + float64(c.Salvage*math.Exp(-n*math.Log1p(i))) - c.First
}

// EquivalentAnnual is the same amount at the end of every year of the life that is worth as much; it compares lives of different
// length, on the assumption that each is renewed by its like.
func (c CashFlow) EquivalentAnnual(i float64) float64 {
	return c.NetPresentValue(i) * CapitalRecoveryFactor(i, float64(len(c.Years)))
}

// Payback is after how many years the amounts, discounted at i a year, have paid the first cost back; a rate of 0 gives the simple
// payback. Within a year the amount counts as growing like an annuity, so that equal amounts give the closed form
// -ln(1 - i First/A) / ln(1+i). Salvage does not count. It is NaN where the life is too short, or nothing has to be paid back.
func (c CashFlow) Payback(i float64) float64 {
	owed := c.First // in values of the end of year k
	if owed <= 0 {
		return math.NaN()
	}
	for k, amount := range c.Years {
		if amount > 0 && owed <= amount/(1+i) {
			return float64(k) + partOfYear(i, owed, amount)
		}
		owed = owed*(1+i) - amount
	}
	return math.NaN()
}

// partOfYear is the time t with amount (P/A, i, t) = owed.
func partOfYear(i, owed, amount float64) float64 {
	if i == 0 {
		return owed / amount
	}
	return -math.Log1p(-i*owed/amount) / math.Log1p(i)
}

// RateOfReturn is the internal rate of return: the discount rate at which the net present value is 0. It is NaN where the amounts
// change their sign more than once, which may give several, or not at all, which gives none.
func (c CashFlow) RateOfReturn() float64 {
	if c.First <= 0 || c.signChanges() != 1 {
		return math.NaN()
	}
	worth := func(x float64) float64 { return c.NetPresentValue(1/x - 1) }
	low, high := 0.0, 1.0
	for worth(high) < 0 {
		if low, high = high, 2*high; high > 1e6 {
			return math.NaN()
		}
	}
	for range 200 {
		if mid := (low + high) / 2; mid <= 0 || worth(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return 1/high - 1
}

// signChanges counts them along the years, zeros left aside.
func (c CashFlow) signChanges() int {
	changes, sign := 0, -1.0
	for k, amount := range c.Years {
		if k == len(c.Years)-1 {
			amount += c.Salvage
		}
		if amount*sign < 0 {
			changes, sign = changes+1, -sign
		}
	}
	return changes
}
