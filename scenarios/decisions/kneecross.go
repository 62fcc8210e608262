package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// crossing is where the straight lines meet that run before and behind the knee of a level of the zoom: the join of a two-phase
// regression (Hinkley 1971; Feder 1975), fitted within the window of the level before, where the curve is as good as straight. Both
// lines are fitted shift by shift, so that the join is a ratio of two means, with the interval of Fieller (1954). It is widened by
// what the fit does not explain: by a third of the way that the join moved when the window was halved, which is what the curve's own
// bend, going with the square of the window, still moves it; and by the misfit of the lines, as far as it is more than chance.
// (References from memory.)
func (b *bending) crossing(levels []zoomed, i int) stats.Interval {
	now, before := b.join(levels, i), b.join(levels, i-1)
	wider := math.Abs(now.at.Mean-before.at.Mean)/3 + now.misfit
	iv := now.at
	iv.Low, iv.High = iv.Low-wider, iv.High+wider
	return iv
}

// join is where two lines meet, and how far their misfit may move that.
type join struct {
	at     stats.Interval
	misfit float64
}

// join fits the lines to the places of a level and of the one before, on either side of the cell with the knee.
func (b *bending) join(levels []zoomed, i int) join {
	z := levels[i]
	left, right := z.places[:z.cell+1], z.places[z.cell+1:]
	if i > 0 {
		left, right = b.also(levels[i-1], left, right)
	}
	at := (z.places[z.cell].x + z.places[z.cell+1].x) / 2
	n := len(z.places[0].shifts)
	rise, gap := make([]float64, n), make([]float64, n)
	for shift := range n {
		l, r := lineThrough(left, at, shift), lineThrough(right, at, shift)
		gap[shift], rise[shift] = r.level-l.level, r.slope-l.slope
	}
	iv := ratioInterval(gap, rise, b.conf)
	iv.Mean, iv.Low, iv.High = at-iv.Mean, at-iv.High, at-iv.Low
	misfit := max(b.misfit(left, at), b.misfit(right, at))
	if b.fixed(z.places) {
		misfit = max(misfit, b.carton)
	}
	return join{iv, 2 * misfit / math.Abs(average(rise))}
}

// also adds the places of a wider window that lie outside a narrower one.
func (b *bending) also(wide zoomed, left, right []place) (l, r []place) {
	for _, p := range wide.places[max(wide.cell-2, 0):min(wide.cell+4, len(wide.places))] {
		if p.x < left[0].x {
			l = append(l, p)
		}
		if p.x > right[len(right)-1].x {
			r = append(r, p)
		}
	}
	return append(l, left...), append(append([]place{}, right...), r...)
}

// straight is a line by its level at a place and its slope.
type straight struct{ level, slope float64 }

// lineThrough is the line of least squares through what one shift says.
func lineThrough(places []place, origin float64, shift int) straight {
	var mx, my, sxx, sxy float64
	n := float64(len(places))
	for _, p := range places {
		mx += (p.x - origin) / n
		my += p.shifts[shift] / n
	}
	for _, p := range places {
		d := p.x - origin - mx
		sxx += float64(d * d)
		sxy += float64(d * (p.shifts[shift] - my))
	}
	slope := sxy / sxx
	return straight{my - float64(slope*mx), slope}
}

// misfit is the largest distance of a place from the line, as far as chance does not explain it.
func (b *bending) misfit(places []place, origin float64) float64 {
	most := 0.0
	for _, p := range places {
		off := b.mean(places, b.conf, func(shift int) float64 {
			l := lineThrough(places, origin, shift)
			return p.shifts[shift] - l.level - float64(l.slope*(p.x-origin))
		})
		most = max(most, math.Abs(off.Mean)-off.HalfWidth())
	}
	return most
}

// ratioInterval is the interval of a ratio of two means (Fieller 1954): all values r for which the mean of top - r bottom is not
// told from 0. It is not assessed where the bottom is not told from 0.
func ratioInterval(top, bottom []float64, conf float64) stats.Interval {
	n := float64(len(top))
	t, b := average(top), average(bottom)
	iv := stats.Interval{Mean: t / b, Low: t / b, High: t / b, N: len(top), Confidence: conf}
	if len(top) < 2 {
		return iv
	}
	var tt, tb, bb float64
	for i := range top {
		dt, db := top[i]-t, bottom[i]-b
		tt, tb, bb = tt+float64(dt*dt), tb+float64(dt*db), bb+float64(db*db)
	}
	q := stats.StudentQuantile(0.5+conf/2, n-1)
	scale := float64(q*q) / float64(n*(n-1))
	quad, half, rest := float64(b*b)-float64(scale*bb), float64(t*b)-float64(scale*tb), float64(t*t)-float64(scale*tt)
	root := float64(half*half) - float64(quad*rest)
	if quad <= 0 || root < 0 {
		iv.Low, iv.High = math.Inf(-1), math.Inf(1)
		return iv
	}
	iv.Low, iv.High = (half-math.Sqrt(root))/quad, (half+math.Sqrt(root))/quad
	return iv
}
