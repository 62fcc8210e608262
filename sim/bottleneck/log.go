package bottleneck

import (
	"cmp"
	"slices"
	"time"
)

// Period is a stretch of time in which a station was active, from Start up
// to but not including End.
type Period struct {
	Start, End time.Duration
}

// Length is the time from Start to End.
func (p Period) Length() time.Duration { return p.End - p.Start }

// Log holds the active periods of each station, in any order.
type Log [][]Period

// uninterrupted is the log as the rules see it: cut to from..to, sorted, with
// periods that touch or overlap joined into one and empty ones dropped.
func (l Log) uninterrupted(from, to time.Duration) Log {
	joined := make(Log, len(l))
	for i, periods := range l {
		sorted := slices.Clone(periods)
		slices.SortFunc(sorted, func(a, b Period) int { return cmp.Compare(a.Start, b.Start) })
		for _, p := range sorted {
			joined[i] = join(joined[i], Period{max(p.Start, from), min(p.End, to)})
		}
	}
	return joined
}

// join appends p to sorted periods, or lengthens the last by it.
func join(periods []Period, p Period) []Period {
	last := len(periods) - 1
	switch {
	case p.End <= p.Start:
		return periods
	case last >= 0 && p.Start <= periods[last].End:
		periods[last].End = max(periods[last].End, p.End)
		return periods
	}
	return append(periods, p)
}
