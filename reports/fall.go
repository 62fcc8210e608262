package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
)

// fall is a step down from ideal to good output.
type fall struct {
	name    string
	cartons float64
}

// mostFalls is how many losses are shown one by one; the rest are summed.
const mostFalls = 7

// falls are the largest losses of a sheet in its order, each as the sheet has it, and the sum of the others.
func (s sheet) falls() []fall {
	order := make([]int, len(s.losses))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.shown[b], s.shown[a]) })
	large := order[:min(mostFalls, len(order))]
	slices.Sort(large)
	var falls []fall
	rest := s.ideal - s.good
	for _, i := range large {
		if s.shown[i] > 0 {
			falls = append(falls, fall{s.losses[i].Where + " " + s.losses[i].Cause, s.shown[i]})
			rest -= s.shown[i]
		}
	}
	if rest = rounded(rest, s.digits); rest != 0 {
		falls = append(falls, fall{"all others", rest})
	}
	return falls
}

// fallSection draws in plain characters how ideal output comes down to good, and how single shifts spread.
func fallSection(f *scenarios.Forecast, style Style) layout.Section {
	sheet := sheetOf(f)
	ideal, good, falls := sheet.ideal, sheet.good, sheet.falls()
	if ideal-good < 1 {
		return layout.Section{}
	}
	names := len("all others")
	for _, step := range falls {
		names = max(names, len([]rune(step.name)))
	}
	width := style.Columns() - 4
	names = min(names, width/3)
	from := math.Max(good-(ideal-good)/8, 0)
	bar := scaleBar{from, ideal, width - names - 11}
	line := func(name string, figure, low, high float64, mark string) string {
		return fmt.Sprintf("%s %8s |%s|", padded(name, names), layout.Fixed(figure, sheet.digits), bar.span(low, high, mark))
	}
	lines := []string{line("ideal", ideal, from, ideal, "#")}
	at := ideal
	for _, step := range falls {
		lines = append(lines, line(step.name, -step.cartons, at-step.cartons, at, "="))
		at -= step.cartons
	}
	lines = append(lines, line("good", good, from, good, "#"))
	left, right := layout.Fixed(from, 0), layout.Fixed(ideal, 0)
	lines = append(lines, strings.Repeat(" ", names+10)+left+strings.Repeat(" ", max(bar.room+2-len(left)-len(right), 1))+right)
	return layout.Section{Heading: "From ideal to good cartons a shift", Plain: append(lines, spreadLines(f, names, width)...)}
}

// scaleBar places amounts on so many characters.
type scaleBar struct {
	from, to float64
	room     int
}

func (b scaleBar) place(x float64) int {
	return min(max(int(math.Round((x-b.from)/(b.to-b.from)*float64(b.room))), 0), b.room)
}

// span marks what lies between two amounts; something is never shown as nothing.
func (b scaleBar) span(low, high float64, mark string) string {
	from, to := b.place(min(low, high)), b.place(max(low, high))
	if from == to && to < b.room {
		to++
	} else if from == to {
		from--
	}
	return strings.Repeat(" ", from) + strings.Repeat(mark, to-from) + strings.Repeat(" ", b.room-to)
}

// spreadLines draw how single shifts lie about their middle, and about the target; nothing where they do not spread.
func spreadLines(f *scenarios.Forecast, names, width int) []string {
	g := f.GoodPerShift
	if spreadOf(f) == "" || g.P90 <= g.P10 {
		return nil
	}
	low, high := g.P10, g.P90
	legend := "[ P10   + P50   ] P90"
	if f.Target != nil {
		low, high = math.Min(low, f.Target.PerShift), math.Max(high, f.Target.PerShift)
		legend += "   T target"
	}
	edge := (high - low) / 8
	bar := scaleBar{low - edge, high + edge, width - names - 12} // so that a mark at the end has its place
	marks := []rune(bar.span(g.P10, g.P90, "-") + " ")
	put := func(x float64, mark rune) { marks[bar.place(x)] = mark }
	put(g.P10, '[')
	put(g.P90, ']')
	put(g.P50, '+')
	if f.Target != nil {
		put(f.Target.PerShift, 'T')
	}
	left, right := layout.Fixed(bar.from, 0), layout.Fixed(bar.to, 0)
	indent := strings.Repeat(" ", names+10)
	if len(indent)+len(legend) > width {
		legend, indent = strings.Join(strings.Fields(legend), " "), "" // at the left, on a narrow screen
	}
	return []string{"", padded("single shifts", names+10) + "|" + string(marks) + "|",
		strings.Repeat(" ", names+10) + left + strings.Repeat(" ", max(bar.room+3-len(left)-len(right), 1)) + right, indent + legend}
}
