package decisions

import (
	"math"

	"dwellcast/sim/stats"
)

// place is the figure at one value of the parameter.
type place struct {
	x, y   float64
	shifts []float64 // the figure shift by shift, with the same luck at all places; one stands for all where chance plays no part
	holder Holder    // of the bottleneck
}

// bending looks for the knee of a curve.
type bending struct {
	// at runs the line at a value; nil without an error where the parameter can't take one that differs from both ends.
	at   func(x, low, high float64) (*place, error)
	conf float64
	// carton is what one carton a shift is in the figure's unit: figures are counted in whole ones.
	carton float64
}

// zoomed is the curve in a window about its sharpest bend, and the cell between two of its places in which that lies.
type zoomed struct {
	places []place
	cell   int // from this place to the next
	// change is how much steeper the cell behind it is than the cell before it.
	change stats.Interval
	// noise is what chance, or counting whole cartons, could make of a straight line.
	noise float64
}

// enoughPoints is how many places a curve has before its sharpest bend is looked for: among fewer a branch that is bent itself, such
// as output over a cycle time, can bend more from cell to cell than at its knee.
const enoughPoints = 11

// mostLevels is how often a window is halved at most.
const mostLevels = 9

// zoom halves the window about the sharpest bend until chance, whole cartons or the parameter allow no more.
func (b *bending) zoom(places []place) (levels []zoomed, coarse bool, err error) {
	for len(places) < enoughPoints && !coarse {
		if places, coarse, err = b.halved(places); err != nil {
			return nil, false, err
		}
	}
	for range mostLevels {
		z := b.sharpest(places)
		levels = append(levels, z)
		if math.Abs(z.change.Mean) < 2*z.noise {
			return levels, false, nil
		}
		if places, coarse, err = b.halved(z.places[z.cell-1 : z.cell+3]); err != nil || coarse {
			return levels, coarse, err
		}
	}
	return levels, false, nil
}

// halved puts a place into the middle of every cell; coarse says that the parameter takes no value in one of them, and then none is
// added.
func (b *bending) halved(places []place) (finer []place, coarse bool, err error) {
	finer = []place{places[0]}
	for k := range len(places) - 1 {
		middle, err := b.at((places[k].x+places[k+1].x)/2, places[k].x, places[k+1].x)
		if err != nil || middle == nil {
			return places, true, err
		}
		finer = append(finer, *middle, places[k+1])
	}
	return finer, false, nil
}

// sharpest finds the cell across which the slope changes most.
func (b *bending) sharpest(places []place) zoomed {
	z := zoomed{places: places, cell: 1}
	for i := 1; i+2 < len(places); i++ {
		if c := b.change(places, i); math.Abs(c.Mean) > math.Abs(z.change.Mean) || i == 1 {
			z.cell, z.change = i, c
		}
	}
	width := math.Min(places[z.cell].x-places[z.cell-1].x, places[z.cell+2].x-places[z.cell+1].x)
	z.noise = z.change.HalfWidth()
	if b.fixed(places) {
		z.noise = 2 * b.carton / width
	}
	return z
}

// fixed says that one shift stands for all.
func (b *bending) fixed(places []place) bool { return len(places[0].shifts) == 1 }

// change is the slope of the cell behind cell i less that of the cell before it.
func (b *bending) change(places []place, i int) stats.Interval {
	return b.mean(places, sure, func(shift int) float64 { return slopeOf(places, i+1, shift) - slopeOf(places, i-1, shift) })
}

// slope is the slope of a cell.
func (b *bending) slope(places []place, i int) stats.Interval {
	return b.mean(places, b.conf, func(shift int) float64 { return slopeOf(places, i, shift) })
}

func slopeOf(places []place, i, shift int) float64 {
	return (places[i+1].shifts[shift] - places[i].shifts[shift]) / (places[i+1].x - places[i].x)
}

// mean is the interval of what each shift says; without width where one stands for all.
func (b *bending) mean(places []place, conf float64, of func(shift int) float64) stats.Interval {
	var values []float64
	for shift := range places[0].shifts {
		values = append(values, of(shift))
	}
	if b.fixed(places) {
		values = append(values, values[0])
	}
	return stats.MeanInterval(values, conf)
}
