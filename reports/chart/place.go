package chart

import (
	"cmp"
	"math"
	"slices"
)

// spread moves centres of labels of given heights apart until none overlap, inside low to high where they fit, keeping their
// order. Each group of touching labels stands as near to its wanted places as it can.
func spread(wanted, heights []float64, low, high float64) []float64 {
	order := make([]int, len(wanted))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(wanted[a], wanted[b]) })
	out := slices.Clone(wanted)
	top := low
	for _, i := range order {
		out[i] = max(out[i], top+heights[i]/2)
		top = out[i] + heights[i]/2
	}
	bottom := high
	for _, i := range slices.Backward(order) {
		out[i] = min(out[i], bottom-heights[i]/2)
		bottom = out[i] - heights[i]/2
	}
	return out
}

// crowd remembers what a free label has to keep clear of.
type crowd struct {
	inside box
	boxes  []box
	points []point
}

// keepClear adds a curve, sampled closely.
func (c *crowd) keepClear(run []point) {
	for i := 1; i < len(run); i++ {
		p, q := run[i-1], run[i]
		n := int(distance(p, q)/4) + 1
		for k := range n {
			t := float64(k) / float64(n)
			c.points = append(c.points, point{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)})
		}
	}
	if len(run) > 0 {
		c.points = append(c.points, run[len(run)-1])
	}
}

// cost counts what a box would cover; a box that is partly outside or on another label costs most.
func (c *crowd) cost(b box) float64 {
	sum := 0.0
	if !b.within(c.inside) {
		sum += 1e6
	}
	for _, o := range c.boxes {
		if b.overlaps(o) {
			sum += 1e4
		}
	}
	for _, p := range c.points {
		if p.x > b.x0 && p.x < b.x1 && p.y > b.y0 && p.y < b.y1 {
			sum++
		}
	}
	return sum
}

// near finds the freest place for a block of a size around a point, the nearer the better, and takes it.
func (c *crowd) near(p point, width, height float64) box {
	best, least := box{}, math.Inf(1)
	for ring := range 9 {
		away := 8 + 10*float64(ring)
		for turn := range 16 {
			// The first try is up and to the right.
			sin, cos := math.Sincos((45 + 22.5*float64(turn)) * math.Pi / 180)
			m := point{p.x + cos*(away+width/2), p.y - sin*(away+height/2)}
			b := box{m.x - width/2, m.y - height/2, m.x + width/2, m.y + height/2}
			if cost := c.cost(b.grown(2)) + 0.3*float64(ring); cost < least {
				best, least = b, cost
			}
		}
	}
	c.boxes = append(c.boxes, best)
	return best
}

// distance of two points.
func distance(p, q point) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }
