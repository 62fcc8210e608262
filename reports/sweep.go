package reports

import (
	"fmt"
	"io"
	"math"
	"slices"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// Sweep writes a figure over one or two parameters. Style matters to the table format only.
func Sweep(w io.Writer, s *decisions.Sweep, origin Origin, format Format, style Style) error {
	return report{
		page:   func(style Style) *layout.Page { return sweepPage(s, origin, style) },
		json:   func() error { return sweepJSON(w, s, origin) },
		charts: func() []chart.Chart { return []chart.Chart{SweepChart(s, origin)} },
	}.write(w, format, style)
}

func sweepPage(s *decisions.Sweep, origin Origin, style Style) *layout.Page {
	n := notesOf(s.Warnings)
	p := &layout.Page{Title: titleOf(s.Title)}
	p.Add(n.answer(sweepAnswer(s)))
	p.Add(kneeFacts(s))
	if len(s.Vary) == 2 {
		p.Add(gridSection(s, style))
	} else {
		p.Add(curveSection(s))
	}
	p.Add(layout.Section{Heading: "Notes", Notes: slices.Concat(refusedWords(s), sweepNotes(s), n.rest())})
	p.Add(origin.foot(s.Replications, s.Seed, s.Confidence))
	return p
}

// figureScale is what a figure is multiplied by to be shown, and its unit in words.
func figureScale(f decisions.Figure) (float64, string) {
	if f.Share() {
		return 100, "%"
	}
	return 1, f.Unit
}

// shownFigure is an interval of the figure as it is shown.
func shownFigure(f decisions.Figure, iv interval) interval {
	if f.Share() {
		return layout.InPercent(iv)
	}
	return iv
}

// curveSection is the sweep over one parameter, value by value.
func curveSection(s *decisions.Sweep) layout.Section {
	_, unit := figureScale(s.Figure)
	name := layout.Words(s.Vary[0].Path)
	name.Right = true
	t := &layout.Table{Columns: []layout.Column{name, layout.Figures(s.Figure.Name, s.Figure.Name), layout.Aside("±"), layout.Drawn("unit"),
		layout.Told("bottleneck", "bottleneck"), layout.Figures("share", "bottleneck_share"), layout.Hidden("refused", "refused")}}
	digits := commonDecimals(s)
	for _, p := range s.Points {
		iv := shownFigure(s.Figure, p.Figure)
		t.Add(layout.Word(p.Values[0].String()).Marked(refusedMark(p.Refused)), layout.Value(pointText(iv, digits), iv).In(unit), layout.HalfWidth(iv), layout.Word(unit),
			layout.Word(p.Holder.Name), layout.Percents(layout.Interval{Mean: p.HolderShare}, 0).Lone(), layout.Word(p.Refused))
	}
	return layout.Section{Key: "point", Table: t}
}

// pointText is the figure at a point; without an interval it has three digits at least, and no decimals that nothing supports.
func pointText(iv interval, digits int) string {
	if iv.Assessed() || iv.Mean == 0 {
		return layout.Fixed(iv.Mean, digits)
	}
	return layout.Fixed(iv.Mean, max(2-int(math.Floor(math.Log10(math.Abs(iv.Mean)))), 0))
}

// commonDecimals is how many decimals the points of a sweep support, two where they have no spread.
func commonDecimals(s *decisions.Sweep) int {
	widest := 0.0
	for _, p := range s.Points {
		if iv := shownFigure(s.Figure, p.Figure); iv.Assessed() {
			widest = max(widest, iv.HalfWidth())
		}
	}
	if widest == 0 {
		return 2
	}
	return layout.Decimals(widest)
}

// gridSection is the sweep over two parameters, the first down and the second across; where there are too many values, some
// are left out.
func gridSection(s *decisions.Sweep, style Style) layout.Section {
	_, unit := figureScale(s.Figure)
	rows, columns := s.Vary[0].Values, s.Vary[1].Values
	digits := commonDecimals(s)
	cell := func(i, j int) layout.Cell {
		p := s.Points[i*len(columns)+j]
		iv := shownFigure(s.Figure, p.Figure)
		return layout.Value(pointText(iv, digits), iv).In(unit).Marked(shortMark(p.Refused))
	}
	across, down := shown(len(columns), gridRoom(s, cell, style)), shown(len(rows), 21)
	name := layout.Words(s.Vary[0].Path)
	name.Right = true
	t := &layout.Table{Columns: []layout.Column{name}}
	for j, value := range columns {
		column := layout.Figures(value.String(), s.Vary[1].Path+" "+value.String())
		column.Hidden = !slices.Contains(across, j)
		t.Columns = append(t.Columns, column)
	}
	for i, value := range rows {
		cells := []layout.Cell{layout.Word(value.String())}
		for j := range columns {
			cells = append(cells, cell(i, j))
		}
		if slices.Contains(down, i) {
			t.Add(cells...)
		} else {
			t.Spare(cells...)
		}
	}
	out := layout.Section{Key: "point", Heading: fmt.Sprintf("%s in %s, %s down and %s across", s.Figure.Name, unit, s.Vary[0].Path, s.Vary[1].Path), Table: t}
	if len(across) < len(columns) || len(down) < len(rows) {
		out.Notes = append(out.Notes, fmt.Sprintf("%d x %d of %d x %d points are shown; --format csv or json holds all", len(down), len(across), len(rows), len(columns)))
	}
	return out
}

// gridRoom is how many columns of a grid fit the screen, two at least.
func gridRoom(s *decisions.Sweep, cell func(i, j int) layout.Cell, style Style) int {
	widest, head := 0, len([]rune(s.Vary[0].Path))
	for i, row := range s.Vary[0].Values {
		head = max(head, len([]rune(row.String())))
		for j, column := range s.Vary[1].Values {
			widest = max(widest, len([]rune(column.String())), len([]rune(cell(i, j).Text())))
		}
	}
	return max((style.Columns()-2-head)/(widest+1), 2)
}

// shortMark stands behind a figure of a point beyond a limit.
func shortMark(refused string) string {
	if refused == "" {
		return ""
	}
	return "!"
}

// refusedWords says where a sweep's line is beyond a limit, and which.
func refusedWords(s *decisions.Sweep) []string {
	var words []string
	for _, why := range refusals(s) {
		words = append(words, "(!) beyond a limit: "+why)
	}
	return words
}

func refusals(s *decisions.Sweep) []string {
	var list []string
	for _, p := range s.Points {
		if p.Refused != "" && len(list) < 200 {
			list = append(list, p.Refused)
		}
	}
	slices.Sort(list)
	list = slices.Compact(list)
	return list[:min(len(list), 3)]
}

// shown picks at most so many of n places at equal distances, the first and the last among them.
func shown(n, most int) []int {
	var places []int
	if n <= most {
		most = n
	}
	for k := range most {
		places = append(places, (k*(n-1)+(most-1)/2)/max(most-1, 1))
	}
	return places
}
