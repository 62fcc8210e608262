package chart

// sample is an entry of a legend: what is drawn and what it means.
type sample struct {
	words string
	draw  func(d *Drawing, b box)
}

// Sizes of a sample in points.
const (
	sampleWidth  = 26.0
	sampleHeight = 11.0
)

// legend sets samples in rows between x and right, from y downwards, and tells where they end.
func (d *Drawing) legend(samples []sample, x, right, y float64) float64 {
	at, row := x, 0.0
	for _, s := range samples {
		lines := wrap(s.words, small, false, right-x-sampleWidth-6)
		w := sampleWidth + 5 + widest(lines, small, false)
		if at > x && at+w > right {
			at, y, row = x, y+row, 0
		}
		s.draw(d, box{at, y + 1, at + sampleWidth, y + 1 + sampleHeight})
		d.paragraph(lines, label{at: point{at + sampleWidth + 5, y + 10}, size: small, ink: text})
		at += w + 14
		row = max(row, leading*small*float64(len(lines))+3)
	}
	if len(samples) == 0 {
		return y
	}
	return y + row + 4
}
