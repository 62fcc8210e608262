package chart

import (
	"fmt"
	"math"
	"strings"
)

// Axis says what is measured along an edge of a chart.
type Axis struct {
	// Title names the quantity, for instance "seal dwell".
	Title string
	// Unit stands in brackets behind the title; empty for a pure number.
	Unit string
	// From and To are the ends of the range in the unit, From below To; both zero takes them from the data.
	From, To float64
	// Zero asks for zero to be part of a range taken from the data.
	Zero bool
}

// name is the title with its unit, after numbers have been divided by ten to a power.
func (a Axis) name(power int) string {
	unit := a.Unit
	if power != 0 {
		unit = strings.TrimSpace(fmt.Sprintf("10^%d %s", power, unit))
	}
	if unit == "" {
		return a.Title
	}
	return strings.TrimSpace(a.Title + " (" + unit + ")")
}

// span is the range to draw for data between low and high.
func (a Axis) span(low, high float64) (from, to float64) {
	if a.From != 0 || a.To != 0 {
		return a.From, a.To
	}
	if a.Zero {
		low, high = min(low, 0), max(high, 0)
	}
	if !apart(low, high) {
		pad := max(0.05*math.Abs(low), 1e-9)
		if low == 0 {
			pad = 1
		}
		low, high = low-pad, high+pad
	}
	return low, high
}

// rounded widens a range taken from the data to whole steps.
func (a Axis) rounded(low, high float64, n int) (from, to float64) {
	from, to = a.span(low, high)
	if a.From != 0 || a.To != 0 {
		return from, to
	}
	s := step(to-from, n)
	return math.Floor(from/s+1e-9) * s, math.Ceil(to/s-1e-9) * s
}

// check refuses a range that can't be drawn.
func (a Axis) check(which string) error {
	if a.From == 0 && a.To == 0 || apart(a.From, a.To) {
		return nil
	}
	return fmt.Errorf("%s axis runs from %g to %g; the first must be below the second", which, a.From, a.To)
}

// apart says whether two finite values rise by enough to be drawn at different places.
func apart(low, high float64) bool {
	return finite(low, high) && high-low > 1e-12*max(math.Abs(low), math.Abs(high))
}

// finite says whether all values are numbers of finite size.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.Abs(v) > 1e300 {
			return false
		}
	}
	return true
}

// axisTicks are the numbers along an axis.
type axisTicks struct {
	values []float64
	words  []string
	power  int
}

// newTicks numbers a range with at most n steps.
func newTicks(from, to float64, n int) axisTicks {
	t := axisTicks{power: thousands(max(math.Abs(from), math.Abs(to)))}
	s := step(to-from, n)
	t.values = ticks(from, to, s)
	factor := math.Pow(10, float64(-t.power))
	scaled := make([]float64, len(t.values))
	for i, v := range t.values {
		scaled[i] = v * factor
	}
	t.words = tickWords(scaled, s*factor)
	return t
}

// fitTicks numbers a range so that the numbers side by side leave a gap.
func fitTicks(from, to, width float64) axisTicks {
	for n := int(width / 40); n > 1; n-- {
		t := newTicks(from, to, n)
		if len(t.values) < 2 || widest(t.words, small, false)+10 <= width*(t.values[1]-t.values[0])/(to-from) {
			return t
		}
	}
	return newTicks(from, to, 1)
}
