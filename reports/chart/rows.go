package chart

// nameWidth is the room for the names of rows, as a share of a drawing's width.
const nameWidth = 0.3

// nameColumn is a column of names, broken into lines where they are long.
type nameColumn struct {
	lines [][]string
	width float64
}

// newNameColumn breaks names to fit the column.
func newNameColumn(names []string, width float64) nameColumn {
	c := nameColumn{}
	for _, n := range names {
		lines := wrap(n, normal, false, nameWidth*width)
		c.lines = append(c.lines, lines)
		c.width = max(c.width, widest(lines, normal, false))
	}
	return c
}

// height is the room that a row needs, for its name and at least so much.
func (c nameColumn) height(row int, least float64) float64 {
	return max(least, leading*normal*float64(len(c.lines[row]))+4)
}

// draw sets a name right-aligned at x, in the middle of a row.
func (c nameColumn) draw(d *Drawing, row int, x, mid float64, bold bool) {
	lines := c.lines[row]
	first := mid - leading*normal*float64(len(lines)-1)/2 + capHeight*normal/2
	d.paragraph(lines, label{at: point{x, first}, size: normal, bold: bold, anchor: end, ink: text})
}

// inMiddle is the baseline of a small line of text whose middle is at y.
func inMiddle(y float64) float64 { return y + capHeight*small/2 }
