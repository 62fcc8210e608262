package bottleneck

import "time"

// AverageActivePeriod finds the bottleneck by the longest mean uninterrupted
// active period (Roser, Nakano & Tanaka 2001) within from..to. It gives each
// station's mean, zero for one that was never active, and the station of the
// longest: of equal ones the first, and -1 when none was active. Means are
// compared exactly and given to the nanosecond below.
func AverageActivePeriod(l Log, from, to time.Duration) (means []time.Duration, station int) {
	means = make([]time.Duration, len(l))
	station = -1
	var longest, count time.Duration
	for i, periods := range l.uninterrupted(from, to) {
		if len(periods) == 0 {
			continue
		}
		var total time.Duration
		n := time.Duration(len(periods))
		for _, p := range periods {
			total += p.Length()
		}
		means[i] = total / n
		if station < 0 || longer(total, n, longest, count) {
			station, longest, count = i, total, n
		}
	}
	return means, station
}

// longer reports whether a/n > b/m, without rounding.
func longer(a, n, b, m time.Duration) bool {
	if a/n != b/m {
		return a/n > b/m
	}
	return a%n*m > b%m*n
}
