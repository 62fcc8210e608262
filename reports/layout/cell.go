package layout

import (
	"math"

	"dwellcast/sim/stats"
)

// Interval is short for the statistics' own.
type Interval = stats.Interval

// Cell is one word or figure of a table. A figure carries its value beside its text, so that data have all its digits and readers
// those that it supports.
type Cell struct {
	text, mark string
	value      Interval
	// figure says that there is a value, which may be one that could not be assessed; lone that it has no interval.
	figure, lone bool
	// percent says that a share is shown in percent.
	percent bool
	// scaled says that the text is in another unit than the value.
	scaled bool
	// again says that readers have read the text a row above.
	again bool
	unit  string
}

// Word is a name or words.
func Word(text string) Cell { return Cell{text: text} }

// Blank is a cell in which nothing stands.
var Blank = Cell{}

// Unseen stands where no difference shows or nothing could be assessed.
func Unseen() Cell { return Cell{text: None, value: unassessed, figure: true} }

var unassessed = Interval{Mean: math.NaN(), Low: math.NaN(), High: math.NaN()}

// Number is a figure without an interval, printed with so many decimals.
func Number(x float64, decimals int) Cell {
	return Cell{text: Fixed(x, decimals), value: Interval{Mean: x}, figure: true, lone: true}
}

// Exact is a figure without spread, printed with up to two decimals.
func Exact(x float64) Cell {
	return Cell{text: Exactly(x), value: Interval{Mean: x}, figure: true, lone: true}
}

// Count is a whole number.
func Count[N int | int64](n N) Cell { return Number(float64(n), 0) }

// Estimate is a figure with its interval, printed to the digits that the interval supports.
func Estimate(iv Interval) Cell { return Cell{text: Mean(iv), value: iv, figure: true} }

// Percent is a share, from 0 to 1, printed in percent with one decimal; a bare dash stands for nothing at all.
func Percent(share Interval) Cell {
	return Cell{text: percent(share.Mean), value: share, figure: true, percent: true, unit: "1"}
}

// Share is a share without an interval, printed as Percent does.
func Share(x float64) Cell { return Percent(Interval{Mean: x}).Lone() }

// Percents is a share in percent with so many decimals and the sign behind it.
func Percents(share Interval, decimals int) Cell {
	c := Percent(share)
	c.text = Fixed(100*share.Mean, decimals)
	if c.text != None {
		c.text += " %"
	}
	return c
}

// HalfWidth is the ± of an estimate. Data have it with the estimate.
func HalfWidth(iv Interval) Cell { return Cell{text: exactWidth(iv)} }

// Measure is a figure without an interval in its unit, printed with both: 12.5 mm.
func Measure(x float64, decimals int, unit string) Cell {
	c := Number(x, decimals).In(unit)
	if c.text != None {
		c.text += " " + unit
	}
	return c
}

// Shown is a figure without an interval whose words are made elsewhere, in the same unit.
func Shown(text string, x float64) Cell {
	return Cell{text: text, value: Interval{Mean: x}, figure: true, lone: true}
}

// Scaled is a figure without an interval whose words are in another unit than its value, as data have it.
func Scaled(text string, x float64) Cell {
	c := Shown(text, x)
	c.scaled = true
	return c
}

// Value is a figure whose words are made elsewhere, in the same unit.
func Value(text string, iv Interval) Cell { return Cell{text: text, value: iv, figure: true} }

// Lone returns a figure that has no interval.
func (c Cell) Lone() Cell {
	c.lone = true
	return c
}

// Again is a name that stands a row above: data repeat it, readers are spared it.
func (c Cell) Again() Cell {
	c.again = true
	return c
}

// Marked returns the cell with marks behind it, such as " [1]".
func (c Cell) Marked(mark string) Cell {
	c.mark += mark
	return c
}

// In returns the cell with a unit, for data: "cartons/h", "1" for a share.
func (c Cell) In(unit string) Cell {
	c.unit = unit
	return c
}

// Hazy returns a figure printed as ~, since no difference shows; data have it all the same.
func (c Cell) Hazy() Cell {
	c.text = None
	return c
}

// To returns an estimate printed with so many decimals, whatever its interval supports.
func (c Cell) To(decimals int) Cell {
	c.text = Fixed(c.value.Mean, decimals)
	return c
}

// Signed returns a figure printed with a sign before it where it is positive.
func (c Cell) Signed() Cell {
	if c.value.Mean > 0 && c.text != None {
		c.text = "+" + c.text
	}
	return c
}

// Text is what a reader sees.
func (c Cell) Text() string {
	if c.again {
		return ""
	}
	return c.text + c.mark
}

// Figure is the value of a cell; false for words.
func (c Cell) Figure() (Interval, bool) { return c.value, c.figure }

// Unit is that of the figure; empty for words.
func (c Cell) Unit() string { return c.unit }

// bounded says that a figure has an interval that was assessed.
func (c Cell) bounded() bool { return c.figure && !c.lone && c.value.Assessed() }
