package chart

import "math"

// Drawing is a laid-out chart: shapes in the order of painting.
type Drawing struct {
	// Title and Description go into the file for readers that can't see it.
	Title, Description string
	// Width and Height are in points, above 0.
	Width, Height float64

	shapes []shape
}

// shape is a path, a disc or a label.
type shape any

// point is a place on the drawing, in points.
type point struct{ x, y float64 }

// box is an upright rectangle on the drawing.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) width() float64  { return b.x1 - b.x0 }
func (b box) height() float64 { return b.y1 - b.y0 }
func (b box) middle() point   { return point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }

// corners lists the corners of the box clockwise.
func (b box) corners() []point {
	return []point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}
}

// overlaps says whether two boxes share more than an edge.
func (b box) overlaps(o box) bool {
	return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1
}

// within says whether the box lies inside another one.
func (b box) within(o box) bool {
	return b.x0 >= o.x0 && b.x1 <= o.x1 && b.y0 >= o.y0 && b.y1 <= o.y1
}

// grown is the box with a margin all around.
func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by} }

// look says how a path or disc is painted.
type look struct {
	fill  ink
	line  ink
	width float64   // of the line, in points
	dash  []float64 // lengths of strokes and gaps, in points
	faint bool      // the fill lets what is below shine through
}

// path is one or several runs of straight pieces.
type path struct {
	runs   [][]point
	closed bool
	look   look
	tip    string // shown by a browser when the pointer rests on the path
}

// disc is a filled or open circle.
type disc struct {
	centre point
	radius float64
	look   look
}

// anchor says which end of a label stands at its place.
type anchor int

const (
	start anchor = iota
	middle
	end
)

// label is one line of text. Its place is the anchor on the baseline.
type label struct {
	at     point
	words  string
	size   float64 // of the font, in points
	bold   bool
	anchor anchor
	angle  float64 // in degrees, anticlockwise
	ink    ink
}

// box is the measured extent of a label whose angle is a multiple of 90 degrees.
func (l label) box() box {
	w := textWidth(l.words, l.size, l.bold)
	x := -w * map[anchor]float64{start: 0, middle: 0.5, end: 1}[l.anchor]
	flat := box{x, -capHeight * l.size, x + w, descent * l.size}
	sin, cos := math.Sincos(-l.angle * math.Pi / 180)
	out := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range flat.corners() {
		x, y := l.at.x+p.x*cos-p.y*sin, l.at.y+p.x*sin+p.y*cos
		out = box{min(out.x0, x), min(out.y0, y), max(out.x1, x), max(out.y1, y)}
	}
	return out
}

func (d *Drawing) add(s ...shape) { d.shapes = append(d.shapes, s...) }

// line draws one open run of straight pieces.
func (d *Drawing) line(l look, run ...point) { d.add(path{runs: [][]point{run}, look: l}) }

// area fills a polygon.
func (d *Drawing) area(l look, run ...point) {
	d.add(path{runs: [][]point{run}, closed: true, look: l})
}

// rect fills a box.
func (d *Drawing) rect(l look, b box) { d.area(l, b.corners()...) }

// write sets a line of text and tells its extent.
func (d *Drawing) write(l label) box {
	if l.words != "" {
		d.add(l)
	}
	return l.box()
}

// plate sets a line of text on a patch of the ground, so that it reads on whatever is below.
func (d *Drawing) plate(l label) box {
	b := l.box().grown(1.5)
	d.rect(look{fill: paper}, b)
	return d.write(l)
}
