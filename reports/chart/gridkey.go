package chart

import "math"

// keyTicks numbers the levels and the ends of the range.
func (g Grid) keyTicks(low, high float64) axisTicks {
	t := axisTicks{power: thousands(max(math.Abs(low), math.Abs(high))), values: g.Levels}
	factor := math.Pow(10, float64(-t.power))
	for _, v := range g.Levels {
		t.words = append(t.words, brief(v*factor))
	}
	if len(g.Levels) == 0 {
		t.words = []string{brief(low * factor)}
	}
	return t
}

// keyWidth is the room for the key right of the plotting area.
func (g Grid) keyWidth(t axisTicks) float64 {
	return 22 + 18 + 6 + widest(t.words, small, false) + 6 + leading*normal*float64(len(g.keyTitle(t)))
}

func (g Grid) keyTitle(t axisTicks) []string {
	return wrap(g.Z.name(t.power), normal, false, widthOr(g.Height, 360))
}

// key draws the inks one above the other with the levels between them.
func (g Grid) key(d *Drawing, t axisTicks, b box) {
	bands := len(g.Levels) + 1
	tall := b.height() / float64(bands)
	for n := range bands {
		tone := heat4
		if len(g.Levels) > 0 {
			tone = heat0 + ink(math.Round(float64(n)*float64(heats-1)/float64(bands-1)))
		}
		y := b.y1 - float64(n)*tall
		d.rect(look{fill: tone, line: edge, width: 0.5}, box{b.x0, y - tall, b.x1, y})
		place, words := y-tall, ""
		if n < len(g.Levels) {
			words = t.words[n]
		} else if len(g.Levels) == 0 {
			place, words = b.middle().y, t.words[0]
		}
		d.write(label{at: point{b.x1 + 5, place + capHeight*small/2}, words: words, size: small, ink: text})
	}
	x := b.x1 + 6 + widest(t.words, small, false) + 6 + capHeight*normal
	for _, words := range g.keyTitle(t) {
		d.write(label{at: point{x, b.middle().y}, words: words, size: normal, anchor: middle, angle: 90, ink: text})
		x += leading * normal
	}
}
