package bottleneck

import (
	"fmt"
	"math"
)

// Arrows is the outcome of the arrow rule.
type Arrows struct {
	Stations []int     // bottlenecks: stations from which no arrow points away, ascending
	Primary  int       // the bottleneck of greatest severity, of equal ones the first; -1 without stations
	Severity []float64 // by station, 0 to 2
}

// ArrowRule finds bottlenecks from the shares of time (0 to 1) that each
// station is blocked and starved (Kuo, Lim & Meerkov 1996). An arrow points
// from station i to i+1 when i is blocked more than i+1 is starved, and back
// when it is blocked less; shares that differ by no more than noise (>= 0)
// give no arrow. Severity, which ranks several bottlenecks, is the sum over
// a station's neighbours of |starved of the later - blocked of the earlier|
// (Li & Meerkov, Production Systems Engineering, 2009). It panics when the
// lengths differ.
func ArrowRule(blocked, starved []float64, noise float64) Arrows {
	n := sameLength(blocked, starved)
	points := make([]bool, n) // an arrow points away from the station
	a := Arrows{Severity: make([]float64, n), Primary: -1}
	for i := range max(0, n-1) {
		gap := blocked[i] - starved[i+1]
		a.Severity[i] += math.Abs(gap)
		a.Severity[i+1] += math.Abs(gap)
		points[i] = points[i] || gap > noise
		points[i+1] = points[i+1] || gap < -noise
	}
	for i := range n {
		if points[i] {
			continue
		}
		a.Stations = append(a.Stations, i)
		if a.Primary < 0 || a.Severity[i] > a.Severity[a.Primary]+noise {
			a.Primary = i
		}
	}
	return a
}

// TurningPoint finds the stations at which the line turns from being blocked
// more than starved to being starved more than blocked (Li, Chang & Ni
// 2009): all before are blocked more, all after are starved more, and the
// station is idle less than either neighbour. Comparisons within noise (>= 0,
// a share of time) fail. None need exist. It panics when the lengths differ.
func TurningPoint(blocked, starved []float64, noise float64) (stations []int) {
	n := sameLength(blocked, starved)
	idle := func(i int) float64 { return blocked[i] + starved[i] }
	for j := range n {
		turns := true
		for i := range n {
			gap := blocked[i] - starved[i]
			turns = turns && (i >= j || gap > noise) && (i <= j || gap < -noise)
		}
		for _, i := range []int{j - 1, j + 1} {
			turns = turns && (i < 0 || i >= n || idle(j) < idle(i)-noise)
		}
		if turns {
			stations = append(stations, j)
		}
	}
	return stations
}

func sameLength(blocked, starved []float64) int {
	if len(blocked) != len(starved) {
		panic(fmt.Sprintf("bottleneck: %d blocked shares and %d starved shares", len(blocked), len(starved)))
	}
	return len(blocked)
}
