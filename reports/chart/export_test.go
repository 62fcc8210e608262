package chart

// Text is a label of a drawing with its measured extent, for the tests.
type Text struct {
	Words          string
	X0, Y0, X1, Y1 float64
}

// Texts lists the labels of a drawing, measured with the room kept for wider fonts.
func (d *Drawing) Texts() []Text {
	var out []Text
	for _, s := range d.shapes {
		if l, ok := s.(label); ok {
			b := l.box()
			out = append(out, Text{l.words, b.x0, b.y0, b.x1, b.y1})
		}
	}
	return out
}

// Internals that the tests look at.
var (
	TextWidth = textWidth
	Step      = step
	Ticks     = ticks
	Brief     = brief
	Slackness = slack
)

// Contour gives the contour lines of a grid.
func (g Grid) Contour(level float64) [][][2]float64 {
	var out [][][2]float64
	for _, run := range g.contour(level) {
		var line [][2]float64
		for _, p := range run {
			line = append(line, [2]float64{p.x, p.y})
		}
		out = append(out, line)
	}
	return out
}

// HatchLength is the length of all hatch lines in a box.
func HatchLength(x0, y0, x1, y1, angle, apart float64) float64 {
	sum := 0.0
	for _, l := range hatchLines((box{x0, y0, x1, y1}).corners(), angle, apart) {
		sum += distance(l[0], l[1])
	}
	return sum
}

// ClipLine keeps what of a run lies in a box.
func ClipLine(run [][2]float64, x0, y0, x1, y1 float64) [][][2]float64 {
	var points []point
	for _, p := range run {
		points = append(points, point{p[0], p[1]})
	}
	var out [][][2]float64
	for _, piece := range clipLine(points, box{x0, y0, x1, y1}) {
		var line [][2]float64
		for _, p := range piece {
			line = append(line, [2]float64{p.x, p.y})
		}
		out = append(out, line)
	}
	return out
}
