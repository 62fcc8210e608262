package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
)

// sheet is what leads from ideal to good output, in printed figures that add up: what rounding leaves over goes to the rows that it has
// wronged most.
type sheet struct {
	ideal, good float64
	digits      int
	losses      []scenarios.Loss // in the order of the sheet
	shown       []float64        // what is printed of each
}

func sheetOf(f *scenarios.Forecast) sheet {
	s := sheet{digits: sheetDecimals(f.GoodPerShift.Interval), losses: slices.Clone(f.Losses)}
	s.ideal, s.good = rounded(f.IdealPerShift, s.digits), rounded(f.GoodPerShift.Mean, s.digits)
	slices.SortStableFunc(s.losses, inSheetOrder)
	s.shown = apportion(s.losses, s.ideal-s.good, s.digits)
	return s
}

// lossSection is the sheet as a table.
func lossSection(f *scenarios.Forecast, n *notes) layout.Section {
	s := layout.Section{Key: "loss", Heading: "Loss sheet, cartons a shift" + n.mark("losses")}
	if f.IdealPerShift == 0 {
		return layout.Section{}
	}
	sheet := sheetOf(f)
	ideal, good, digits, losses, shown := sheet.ideal, sheet.good, sheet.digits, sheet.losses, sheet.shown

	t := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("cause"), layout.Aside("cartons"), layout.Aside("±"), layout.Aside("% of ideal"),
		layout.Aside("leaves"), layout.Hidden("lost", "cartons")}}
	t.Add(layout.Word("ideal"), layout.Word(idealWords(f)), layout.Number(ideal, digits), layout.Blank, layout.Number(100, 1), layout.Number(ideal, digits), layout.Blank)
	leaves, small := ideal, 0
	for i, loss := range losses {
		lost := layout.Estimate(loss.Cartons).In(cartonsAShift)
		mark := n.mark("loss " + loss.Where + "/" + loss.Cause)
		if shown[i] == 0 {
			if loss.Total != 0 {
				small++
			}
			if mark == "" {
				t.Spare(layout.Word(loss.Where), layout.Word(loss.Cause), layout.Blank, layout.Blank, layout.Blank, layout.Blank, lost)
				continue
			}
		}
		leaves -= shown[i]
		t.Add(layout.Word(loss.Where), layout.Word(loss.Cause).Marked(mark), layout.Number(-shown[i], digits), layout.Word(sheetWidth(loss.Cartons)),
			layout.Number(-100*shown[i]/ideal, 1), layout.Number(leaves, digits), lost)
	}
	t.Foot = []layout.Cell{layout.Word("good"), layout.Blank, layout.Number(good, digits), layout.Word(sheetWidth(f.GoodPerShift.Interval)),
		layout.Number(100*good/ideal, 1), layout.Number(leaves, digits), layout.Blank}
	s.Table = t
	s.Notes = n.take()
	s.Notes = append(s.Notes, indicatorWords(f.Indicators))
	if small > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("Left out: %s of less than %s a shift",
			quantity.FormatCount(int64(small), "cause"), map[int]string{0: "half a carton", 1: "0.05 cartons"}[digits]))
	}
	return s
}

// indicatorWords sums the sheet up in the terms of ISO 22400-2, over planned busy time.
func indicatorWords(i scenarios.Indicators) string {
	percent := func(x float64) string { return layout.Fixed(100*x, 1) + " %" }
	return fmt.Sprintf("In the terms of ISO 22400-2, over planned busy time: availability %s x effectiveness %s x quality %s = OEE %s",
		percent(i.Availability), percent(i.Effectiveness), percent(i.Quality), percent(i.OEE))
}

func idealWords(f *scenarios.Forecast) string {
	if f.Setting == 0 {
		return "nominal rate x " + lengthOf(f.Scheduled)
	}
	return "setting " + quantity.FormatRate(f.Setting) + " x " + lengthOf(f.Scheduled)
}

// inSheetOrder puts planned stops first and then goes kind by kind, the largest first.
func inSheetOrder(a, b scenarios.Loss) int {
	if a.Kind != b.Kind {
		return cmp.Compare(a.Kind, b.Kind)
	}
	return bySize(a, b)
}

// sheetDecimals is 0 where good output is uncertain by a carton or more, else 1.
func sheetDecimals(good interval) int {
	if good.Assessed() && good.HalfWidth() < 1 {
		return 1
	}
	return 0
}

// sheetWidth is a half-width to a tenth at most, since the sheet is in whole cartons or tenths.
func sheetWidth(iv interval) string {
	if !iv.Assessed() {
		return layout.None
	}
	return layout.Fixed(iv.HalfWidth(), min(layout.Decimals(iv.HalfWidth()), 1))
}

// apportion rounds the losses so that they sum to the rounded total: each down, then the largest remainders up.
func apportion(losses []scenarios.Loss, total float64, digits int) []float64 {
	unit := math.Pow10(-digits)
	shown, order := make([]float64, len(losses)), make([]int, len(losses))
	remainder := make([]float64, len(losses))
	over := math.Round(total / unit)
	for i, loss := range losses {
		down := math.Floor(loss.Cartons.Mean/unit + 1e-9)
		shown[i], order[i], remainder[i] = down*unit, i, loss.Cartons.Mean/unit-down
		over -= down
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(remainder[b], remainder[a]) })
	for k := 0; k < len(order) && float64(k) < over; k++ {
		shown[order[k]] += unit
	}
	return shown
}

func rounded(x float64, digits int) float64 {
	unit := math.Pow10(digits)
	return math.Round(x*unit) / unit
}
