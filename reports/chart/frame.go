package chart

// frame is a plotting area with its two axes.
type frame struct {
	area   box
	x, y   scale
	xt, yt axisTicks
	ax, ay Axis
	// title is the y axis' title in lines, written upwards along the left edge.
	title []string
}

// newFrame gives a plotting area between y and y+height its axes. The left margin is as wide as the numbers need.
func newFrame(ax, ay Axis, xs, ys [2]float64, left, right, y, height float64) frame {
	f := frame{ax: ax, ay: ay}
	f.yt = newTicks(ys[0], ys[1], int(height/34))
	f.title = wrap(ay.name(f.yt.power), normal, false, height)
	left += float64(len(f.title))*leading*normal + widest(f.yt.words, small, false) + 10
	f.area = box{left, y, right, y + height}
	f.xt = fitTicks(xs[0], xs[1], right-left)
	f.x = scale{xs[0], xs[1], left, right}
	f.y = scale{ys[0], ys[1], y + height, y}
	return f
}

// at is the place of a pair of values.
func (f frame) at(x, y float64) point { return point{f.x.at(x), f.y.at(y)} }

// grid draws the fine lines behind the data.
func (f frame) grid(d *Drawing) {
	l := look{line: hair, width: 0.7}
	for _, v := range f.xt.values {
		d.line(l, point{f.x.at(v), f.area.y0}, point{f.x.at(v), f.area.y1})
	}
	for _, v := range f.yt.values {
		d.line(l, point{f.area.x0, f.y.at(v)}, point{f.area.x1, f.y.at(v)})
	}
}

// axes draws edges, numbers and titles and tells where they end.
func (f frame) axes(d *Drawing) float64 {
	l := look{line: edge, width: 1}
	a := f.area
	d.line(l, point{a.x0, a.y0}, point{a.x0, a.y1}, point{a.x1, a.y1})
	for i, v := range f.yt.values {
		y := f.y.at(v)
		d.line(l, point{a.x0 - 4, y}, point{a.x0, y})
		d.write(label{at: point{a.x0 - 7, y + capHeight*small/2}, words: f.yt.words[i], size: small, anchor: end, ink: text})
	}
	left := a.x0 - 10 - widest(f.yt.words, small, false) - float64(len(f.title)-1)*leading*normal
	for _, words := range f.title {
		d.write(label{at: point{left, a.middle().y}, words: words, size: normal, anchor: middle, angle: 90, ink: text})
		left += leading * normal
	}
	return d.xAxis(f.xt, f.x, a.y1, f.ax.name(f.xt.power))
}

// xAxis draws marks, numbers and the title below an edge at y and tells where they end.
func (d *Drawing) xAxis(t axisTicks, x scale, y float64, title string) float64 {
	for i, v := range t.values {
		at := x.at(v)
		d.line(look{line: edge, width: 1}, point{at, y}, point{at, y + 4})
		d.write(label{at: point{at, y + 6 + capHeight*small + 1}, words: t.words[i], size: small, anchor: middle, ink: text})
	}
	y += 6 + leading*small + 3
	middleOf := (x.lo + x.hi) / 2
	room := 2 * min(middleOf-rim, d.Width-rim-middleOf)
	lines := wrap(title, normal, false, room)
	return d.paragraph(lines, label{at: point{middleOf, y + capHeight*normal}, size: normal, anchor: middle, ink: text}) - capHeight*normal
}
