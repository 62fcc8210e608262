package reports

import (
	"fmt"
	"math"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// SweepChart draws a sweep: a curve with its band over one parameter, contours over two.
func SweepChart(s *decisions.Sweep, origin Origin) chart.Chart {
	caption := chart.Caption{
		Title: s.Figure.Name + " over " + s.Vary[0].Path, Subtitle: titleOf(s.Title),
		Foot: fmt.Sprintf("%d shifts a point, seed %d, dwellcast %s", s.Replications, s.Seed, origin.Version),
	}
	if len(s.Vary) == 2 {
		caption.Title += " and " + s.Vary[1].Path
		return gridChart(s, caption)
	}
	return curveChart(s, caption)
}

func axisOf(v decisions.Vary) chart.Axis {
	return chart.Axis{Title: v.Path, Unit: v.Values[0].Unit()}
}

func figureAxis(f decisions.Figure) chart.Axis {
	_, unit := figureScale(f)
	return chart.Axis{Title: f.Name, Unit: unit}
}

func numbers(v decisions.Vary) []float64 {
	var xs []float64
	for _, value := range v.Values {
		xs = append(xs, value.Number())
	}
	return xs
}

func curveChart(s *decisions.Sweep, caption chart.Caption) chart.Line {
	series := chart.Series{Name: s.Figure.Name, X: numbers(s.Vary[0])}
	assessed := true
	for _, p := range s.Points {
		iv := shownFigure(s.Figure, p.Figure)
		series.Y, series.Low, series.High = append(series.Y, iv.Mean), append(series.Low, iv.Low), append(series.High, iv.High)
		assessed = assessed && iv.Assessed()
	}
	line := chart.Line{Caption: caption, X: axisOf(s.Vary[0]), Y: figureAxis(s.Figure), Band: layout.Confidence(s.Confidence) + " interval"}
	if !assessed || s.Fixed {
		series.Low, series.High, line.Band = nil, nil, ""
	}
	line.Series = []chart.Series{series}
	if s.Knee != nil {
		line.Caption.Subtitle += ". " + kneeSentence(s)
		line.References = append(line.References, chart.Reference{Label: "knee " + placeOf(s, s.Knee.At), At: s.Knee.At.Mean, Vertical: true})
	}
	line.References = append(line.References, standing(s)...)
	return line
}

// standing are lines for today's value, if it lies within the sweep, and for the target, where the figure has one.
func standing(s *decisions.Sweep) []chart.Reference {
	var list []chart.Reference
	xs := numbers(s.Vary[0])
	if s.Today != nil && s.Today.Number() >= xs[0] && s.Today.Number() <= xs[len(xs)-1] {
		list = append(list, chart.Reference{Label: "today " + s.Today.String(), At: s.Today.Number(), Vertical: true})
	}
	if !math.IsNaN(s.Target) {
		_, unit := figureScale(s.Figure)
		list = append(list, chart.Reference{Label: "target " + layout.Exactly(s.Target) + " " + unit, At: s.Target})
	}
	return list
}

func gridChart(s *decisions.Sweep, caption chart.Caption) chart.Grid {
	scale, _ := figureScale(s.Figure)
	xs, ys := numbers(s.Vary[0]), numbers(s.Vary[1])
	values := make([][]float64, len(ys))
	for j := range ys {
		for i := range xs {
			values[j] = append(values[j], scale*s.Points[i*len(ys)+j].Figure.Mean)
		}
	}
	return chart.Grid{Caption: caption, X: axisOf(s.Vary[0]), Y: axisOf(s.Vary[1]), Z: figureAxis(s.Figure), XS: xs, YS: ys, Values: values}
}
