package motion

import (
	"fmt"
	"math"
)

// CasesPerLayer is how many cases of length x width fit on a pallet layer of palletLength x palletWidth, all edges
// parallel, each case turned either way; whole units of any length (mm, in), 1 to 5000. It divides the layer into at
// most five blocks and each block again (Bischoff and Dowsland 1982, J. Opl Res. Soc. 33; Morabito and Morales 1998,
// J. Opl Res. Soc. 49), which finds the best arrangement of nearly every layer of fewer than 100 cases; it is never
// more than what fits.
func CasesPerLayer(palletLength, palletWidth, length, width int) (int, error) {
	for _, side := range []int{palletLength, palletWidth, length, width} {
		if side < 1 || side > 5000 {
			return 0, fmt.Errorf("pallet %dx%d, case %dx%d: sides must be 1 .. 5000", palletLength, palletWidth, length, width)
		}
	}
	if max(palletLength, palletWidth)/min(length, width) > 60 {
		return 0, fmt.Errorf("pallet %dx%d, case %dx%d: more than 60 cases along a side", palletLength, palletWidth, length, width)
	}
	l := layer{length: length, width: width, best: map[[2]int]int{}}
	l.fits = combinations(max(palletLength, palletWidth), length, width)
	return l.cases(palletLength, palletWidth), nil
}

// layer is the search for the best arrangement of one size of case.
type layer struct {
	length, width int
	fits          []int          // fits[x] is the largest sum of case sides that is x or less
	best          map[[2]int]int // by size of the block, the longer side first
}

// combinations is, for each x up to limit, the largest a m + b n that is no more than x.
func combinations(limit, a, b int) []int {
	reach := make([]int, limit+1)
	for x := 1; x <= limit; x++ {
		reach[x] = reach[x-1]
		if x >= a && reach[x-a] == x-a || x >= b && reach[x-b] == x-b {
			reach[x] = x
		}
	}
	return reach
}

// cases is the most that fit into a block.
func (l *layer) cases(x, y int) int {
	x, y = l.fits[x], l.fits[y]
	if x < y {
		x, y = y, x
	}
	if y < min(l.length, l.width) || x < max(l.length, l.width) {
		return 0
	}
	key := [2]int{x, y}
	if n, known := l.best[key]; known {
		return n
	}
	l.best[key] = 0 // a block is never divided into itself
	n := max((x/l.length)*(y/l.width), (x/l.width)*(y/l.length))
	if bound := l.bound(x, y); n < bound {
		n = l.divide(x, y, n, bound)
	}
	l.best[key] = n
	return n
}

// bound is by area, of the sides that cases can fill.
func (l *layer) bound(x, y int) int { return x * y / (l.length * l.width) }

// divide looks for the best division of a block into five: two cuts along each side, laid like a pinwheel. Cuts that
// coincide leave fewer blocks, down to a plain cut in two.
func (l *layer) divide(x, y, n, bound int) int {
	across, along := l.cuts(x), l.cuts(y)
	for i, x1 := range across {
		for _, x2 := range across[i:] {
			for k, y1 := range along {
				for _, y2 := range along[k:] {
					if n = max(n, l.five(x, y, x1, x2, y1, y2, n)); n >= bound {
						return n
					}
				}
			}
		}
	}
	return n
}

// cuts are the raster points of a side (Scheithauer and Terno 1996, J. Opl Res. Soc. 47): of all sums of case sides
// only those are kept that leave the other part no shorter than need be.
func (l *layer) cuts(side int) []int {
	var places []int
	for c := 0; c <= side; c++ {
		if l.fits[c] != c {
			continue
		}
		if p := l.fits[side-l.fits[side-c]]; len(places) == 0 || places[len(places)-1] != p {
			places = append(places, p)
		}
	}
	return places
}

// five is the sum over the five blocks of a pinwheel, or less if it cannot beat n.
func (l *layer) five(x, y, x1, x2, y1, y2, n int) int {
	blocks := [5][2]int{
		{x1, y - y1}, {x - x1, y - y2}, {x2 - x1, y2 - y1}, {x2, y1}, {x - x2, y2},
	}
	most := 0
	for _, b := range blocks {
		if b[0] == x && b[1] == y {
			return 0
		}
		most += l.bound(l.fits[b[0]], l.fits[b[1]])
	}
	if most <= n {
		return 0
	}
	sum := 0
	for _, b := range blocks {
		sum += l.cases(b[0], b[1])
	}
	return sum
}

// LayerFill is the share of a pallet layer's area that a number of cases covers.
func LayerFill(cases, palletLength, palletWidth, length, width int) float64 {
	return math.Min(1, float64(cases*length*width)/float64(palletLength*palletWidth))
}
