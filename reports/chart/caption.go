package chart

// Sizes of the fonts and the distance of lines, in points.
const (
	large   = 15.0
	normal  = 11.0
	small   = 9.5
	leading = 1.3 // of the font's size
	rim     = 12.0
)

// begin starts a drawing of a width with its title and tells where the chart may begin.
func (c Caption) begin(width float64) (*Drawing, float64) {
	d := &Drawing{Title: c.Title, Description: c.Description, Width: width}
	// The ground is painted first; its height is known at the end.
	d.add(path{})
	y := rim
	y = d.block(c.Title, large, true, text, y)
	y = d.block(c.Subtitle, normal, false, muted, y)
	return d, y + 6
}

// block sets words across the whole width from y downwards and tells where they end.
func (d *Drawing) block(words string, size float64, bold bool, ink ink, y float64) float64 {
	for _, l := range wrap(words, size, bold, d.Width-2*rim) {
		d.write(label{at: point{rim, y + capHeight*size + 1}, words: l, size: size, bold: bold, ink: ink})
		y += leading * size
	}
	return y
}

// finish sets the foot below y, closes the height and paints the ground.
func (c Caption) finish(d *Drawing, y float64) *Drawing {
	if c.Foot != "" {
		y = d.block(c.Foot, small, false, muted, y+4)
	}
	d.Height = y + rim/2
	ground := box{0, 0, d.Width, d.Height}
	d.shapes[0] = path{runs: [][]point{ground.corners()}, closed: true, look: look{fill: paper}}
	return d
}

// paragraph sets lines of a size at a place and tells where they end.
func (d *Drawing) paragraph(lines []string, l label) float64 {
	for _, words := range lines {
		l.words = words
		d.write(l)
		l.at.y += leading * l.size
	}
	return l.at.y
}

// widthOr takes a given width or a usual one.
func widthOr(given, usual float64) float64 {
	if given > 0 {
		return given
	}
	return usual
}
