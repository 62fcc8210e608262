package bottleneck

import "time"

// account adds up the shares of successive bottleneck periods. Their starts
// and their ends both increase, so a period is sole between the end of the
// one before it and the start of the one after it.
type account struct {
	shares  Shares
	from    time.Duration
	station int           // of the last bottleneck period; -1 before the first
	last    Period        // the last bottleneck period
	alone   time.Duration // where the last one stops overlapping its predecessor
}

func newAccount(stations int, from time.Duration) account {
	a := account{shares: Shares{
		Sole:     make([]time.Duration, stations),
		Shifting: make([]time.Duration, stations),
	}}
	a.reset(from)
	return a
}

// reset empties the account without allocating.
func (a *account) reset(from time.Duration) {
	clear(a.shares.Sole)
	clear(a.shares.Shifting)
	a.shares.Shift, a.shares.None = 0, 0
	a.from, a.station = from, -1
	a.last, a.alone = Period{from, from}, from
}

// end is where the last bottleneck period ends, which is where the next
// bottleneck is chosen.
func (a *account) end() time.Duration { return a.last.End }

// follow makes p, of the given station, the next bottleneck period.
func (a *account) follow(station int, p Period) {
	a.settle(p.Start)
	a.shares.None += max(0, p.Start-a.last.End)
	a.alone = max(p.Start, a.last.End)
	a.station, a.last = station, p
}

// settle shares out the last bottleneck period, given the next one's start.
func (a *account) settle(next time.Duration) {
	if a.station < 0 {
		return
	}
	sole := max(0, min(a.last.End, next)-a.alone)
	a.shares.Sole[a.station] += sole
	a.shares.Shifting[a.station] += a.last.Length() - sole
}

// close ends the account at time to.
func (a *account) close(to time.Duration) Shares {
	a.settle(to)
	a.station = -1
	a.shares.None += max(0, to-a.last.End)
	a.shares.Shift = to - a.from - a.shares.None
	for _, sole := range a.shares.Sole {
		a.shares.Shift -= sole
	}
	return a.shares
}
