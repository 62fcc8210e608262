package bottleneck

import "time"

// ring lists stations in order of the start of their periods and, where
// these are equal, of their number. Entry n, for n stations, closes the ring.
type ring struct {
	next, prev []int
}

func newRing(stations int) ring {
	r := ring{next: make([]int, stations+1), prev: make([]int, stations+1)}
	r.clear()
	return r
}

// clear empties the list.
func (r ring) clear() {
	end := len(r.next) - 1
	r.next[end], r.prev[end] = end, end
}

// first is the station whose period started first, or -1.
func (r ring) first() int {
	end := len(r.next) - 1
	if r.next[end] == end {
		return -1
	}
	return r.next[end]
}

// add puts in station i, whose start is not before that of any other.
func (r ring) add(i int, start []time.Duration) {
	end := len(r.next) - 1
	at := r.prev[end]
	for at != end && before(i, at, start) {
		at = r.prev[at]
	}
	r.next[i], r.prev[i] = r.next[at], at
	r.prev[r.next[i]], r.next[at] = i, i
}

// remove takes out station i.
func (r ring) remove(i int) {
	r.next[r.prev[i]], r.prev[r.next[i]] = r.next[i], r.prev[i]
}

// before reports whether the period of station i comes before that of j.
func before(i, j int, start []time.Duration) bool {
	return start[i] < start[j] || start[i] == start[j] && i < j
}
