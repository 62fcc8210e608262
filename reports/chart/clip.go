package chart

// clipLine keeps the parts of a run of straight pieces that lie inside a box (Liang and Barsky, 1984).
func clipLine(run []point, b box) [][]point {
	var out [][]point
	for i := 1; i < len(run); i++ {
		p, q, ok := clipPiece(run[i-1], run[i], b)
		if !ok {
			continue
		}
		if n := len(out); n > 0 && out[n-1][len(out[n-1])-1] == p {
			out[n-1] = append(out[n-1], q)
		} else {
			out = append(out, []point{p, q})
		}
	}
	return out
}

// clipPiece keeps the part of a straight piece inside a box.
func clipPiece(p, q point, b box) (point, point, bool) {
	dx, dy := q.x-p.x, q.y-p.y
	t0, t1 := 0.0, 1.0
	for _, side := range [4][2]float64{{-dx, p.x - b.x0}, {dx, b.x1 - p.x}, {-dy, p.y - b.y0}, {dy, b.y1 - p.y}} {
		toward, room := side[0], side[1]
		switch {
		case toward == 0 && room < 0:
			return p, q, false
		case toward < 0:
			t0 = max(t0, room/toward)
		case toward > 0:
			t1 = min(t1, room/toward)
		}
	}
	if t0 > t1 {
		return p, q, false
	}
	from, to := p, q
	if t0 > 0 {
		from = point{p.x + t0*dx, p.y + t0*dy}
	}
	if t1 < 1 {
		to = point{p.x + t1*dx, p.y + t1*dy}
	}
	return from, to, true
}

// clipArea keeps the part of a polygon inside a box (Sutherland and Hodgman, 1974).
func clipArea(poly []point, b box) []point {
	sides := []struct {
		inside func(point) bool
		cross  func(p, q point) point
	}{
		{func(p point) bool { return p.x >= b.x0 }, func(p, q point) point { return atX(p, q, b.x0) }},
		{func(p point) bool { return p.x <= b.x1 }, func(p, q point) point { return atX(p, q, b.x1) }},
		{func(p point) bool { return p.y >= b.y0 }, func(p, q point) point { return atY(p, q, b.y0) }},
		{func(p point) bool { return p.y <= b.y1 }, func(p, q point) point { return atY(p, q, b.y1) }},
	}
	for _, side := range sides {
		var kept []point
		for i, q := range poly {
			p := poly[(i+len(poly)-1)%len(poly)]
			if side.inside(p) != side.inside(q) {
				kept = append(kept, side.cross(p, q))
			}
			if side.inside(q) {
				kept = append(kept, q)
			}
		}
		poly = kept
	}
	return poly
}

// atX and atY give the point of a straight piece at a given x or y.
func atX(p, q point, x float64) point { return point{x, p.y + (q.y-p.y)*(x-p.x)/(q.x-p.x)} }
func atY(p, q point, y float64) point { return point{p.x + (q.x-p.x)*(y-p.y)/(q.y-p.y), y} }
