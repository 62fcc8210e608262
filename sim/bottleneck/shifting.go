package bottleneck

import (
	"sort"
	"time"
)

// Shares says how long each station was the bottleneck.
type Shares struct {
	Sole     []time.Duration // by station: the bottleneck alone
	Shifting []time.Duration // by station: while the bottleneck moved to or from it
	Shift    time.Duration   // total time in which the bottleneck moved
	None     time.Duration   // total time without a bottleneck, no station being active
}

// Shifting follows the bottleneck through from..to by the shifting rule
// (Roser, Nakano & Tanaka 2002): it is the station with the longest
// uninterrupted active period among those active at the moment, and stays so
// to the end of that period, when the next is chosen. Where two successive
// bottleneck periods overlap the bottleneck shifts, and both stations are
// credited with that time; the rest of a bottleneck period is sole. Where no
// station is active, the rule goes on at the next start. Of equally long
// periods that of the lowest-numbered station is chosen. The sole times,
// Shift and None add up to to - from.
func Shifting(l Log, from, to time.Duration) Shares {
	log := l.uninterrupted(from, to)
	a := newAccount(len(l), from)
	for now := from; now < to; {
		station, period := longestAt(log, now)
		if station < 0 {
			now = nextStart(log, now, to)
			continue
		}
		a.follow(station, period)
		now = period.End
	}
	return a.close(to)
}

// longestAt is the longest period in progress at t, and its station; -1 if
// none is.
func longestAt(log Log, t time.Duration) (station int, longest Period) {
	station = -1
	for i, periods := range log {
		next := following(periods, t)
		if next == 0 || periods[next-1].End <= t {
			continue
		}
		if p := periods[next-1]; p.Length() > longest.Length() {
			station, longest = i, p
		}
	}
	return station, longest
}

// nextStart is the first start of a period after t, at the latest the given
// end.
func nextStart(log Log, t, end time.Duration) time.Duration {
	for _, periods := range log {
		if next := following(periods, t); next < len(periods) {
			end = min(end, periods[next].Start)
		}
	}
	return end
}

// following is the place of the first period that starts after t.
func following(periods []Period, t time.Duration) int {
	return sort.Search(len(periods), func(j int) bool { return periods[j].Start > t })
}
