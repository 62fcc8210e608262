package stations

import "time"

// Glue is what a station closes that another has laid open on the same conveyor: it holds only where it is closed in time.
type Glue struct {
	// From is the index of the station that lays it, on the same conveyor and not behind the one that closes it. It lies open from when
	// the conveyor comes to a stand there.
	From int
	// Open is how long it may lie open, more than 0.
	Open time.Duration
	// Closes is how many of the first parts of the act pass until it is closed.
	Closes int
	// Scraps loses a carton that is closed too late; otherwise it goes on as one that is not good.
	Scraps bool
}

// lastStands remembers when the last cycles of a conveyor came to a stand, as many as the longest way from where glue is laid to where it
// is closed.
type lastStands struct {
	at  []time.Duration // a ring
	now int             // the present cycle
}

// reach makes room for so many cycles before the present one.
func (l *lastStands) reach(cycles int) {
	if cycles+1 > len(l.at) {
		l.at = make([]time.Duration, cycles+1)
	}
}

// add notes a new cycle.
func (l *lastStands) add(at time.Duration) {
	if len(l.at) == 0 {
		return
	}
	l.now = (l.now + 1) % len(l.at)
	l.at[l.now] = at
}

// ago is when the conveyor came to a stand so many cycles ago.
func (l *lastStands) ago(cycles int) time.Duration {
	return l.at[(l.now-cycles+len(l.at))%len(l.at)]
}

// skip notes n cycles of equal length.
func (l *lastStands) skip(n int64, period time.Duration) {
	if len(l.at) == 0 {
		return
	}
	last := l.at[l.now] + time.Duration(n)*period
	for k := min(n, int64(len(l.at))) - 1; k >= 0; k-- {
		l.add(last - time.Duration(k)*period)
	}
}

// tooLate says that glue closed at an instant has lain open for too long.
func (u *beltUnit) tooLate(closed time.Duration) bool {
	return closed-u.belt.stood.ago(u.laid) > u.spec.Glue.Open
}

// closesInTime says that the glue of the next cycles, equal ones of that length, is sure to be closed in time.
func (u *beltUnit) closesInTime(period time.Duration) bool {
	if u.spec.Glue == nil {
		return true
	}
	stood := &u.belt.stood
	for next := 1; next <= max(u.laid, 1); next++ {
		laid := stood.ago(0) + time.Duration(next-u.laid)*period
		if next < u.laid {
			laid = stood.ago(u.laid - next)
		}
		if stood.ago(0)+time.Duration(next)*period+u.closes-laid > u.spec.Glue.Open {
			return false
		}
	}
	return true
}

// closeGlue finds the cartons of a cycle, which ends at end, whose glue was closed too late.
func (c *conveyor) closeGlue(end time.Duration) {
	if !c.glues {
		return
	}
	for _, u := range c.units {
		if u.spec.Glue == nil || !u.loaded {
			continue
		}
		if closed := u.closedAt(); closed > end || !u.tooLate(closed) {
			continue
		}
		pitch := c.pitch(u.at)
		for i := range pitch {
			switch place := &pitch[i]; {
			case !place.present():
			case u.spec.Glue.Scraps:
				u.scrap(place, u.dried)
			case place.kind == good:
				place.kind, place.why = reject, u.dried
				u.count(Rejects, 1)
			}
		}
	}
}

// closedAt is when the act of this cycle first closes the glue: its work until then, with the stops that fall into it.
func (u *beltUnit) closedAt() time.Duration {
	at := u.belt.begun + u.belt.spec.Index
	var done time.Duration // of the act since it began, or began again
	for _, s := range u.stands {
		left := u.closes - done
		if s.restarts {
			left = s.closes - done
		}
		if at+left <= s.from {
			return at + left
		}
		if s.to == never {
			return never
		}
		done += max(0, s.from-at)
		at = max(at, s.to)
		if s.restarts {
			done = 0
		}
	}
	return at + u.closes - done
}
