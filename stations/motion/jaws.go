package motion

// TimedMove is a move whose time is known: given, or that of a Move.
type TimedMove struct {
	Time Seconds // 0 or more
	Law  Law     // the zero Law: at constant speed
}

// Timed is the move with its time and law.
func (m Move) Timed() TimedMove { return TimedMove{m.Time(), m.Law()} }

// share of the way done a time after the start, 0..1.
func (m TimedMove) share(after Seconds) float64 {
	switch {
	case after >= m.Time:
		return 1
	case after <= 0:
		return 0
	case m.Law.IsZero():
		return float64(after / m.Time)
	}
	return m.Law.Position(float64(after / m.Time))
}

// until is the time after which a share of the way, 0..1, is done.
func (m TimedMove) until(share float64) Seconds {
	if m.Law.IsZero() {
		return Seconds(share) * m.Time
	}
	return Seconds(m.Law.Inverse(share)) * m.Time
}

// Jaws are the sealer's, which run on their own time from the moment when the photo-eye sees a carton that stands.
type Jaws struct {
	SensorLag   Seconds // 0 or more
	Close, Open TimedMove
	Dwell       Seconds // jaws closed
	Stroke      float64 // m of full opening, more than 0
	ClearAt     float64 // m of opening from which the carton may move; 0: the full opening
}

// Cycle is the time from the carton's stand until the jaws are fully open.
func (j Jaws) Cycle() Seconds { return j.closedUntil() + j.Open.Time }

// Needed is the time from the carton's stand until the jaws are open as far as ClearAt.
func (j Jaws) Needed() Seconds { return j.closedUntil() + j.Open.until(j.clearAt()/j.Stroke) }

// closedUntil is when the dwell ends.
func (j Jaws) closedUntil() Seconds { return j.SensorLag + j.Close.Time + j.Dwell }

func (j Jaws) clearAt() float64 {
	if j.ClearAt <= 0 || j.ClearAt > j.Stroke {
		return j.Stroke
	}
	return j.ClearAt
}

// Opening of the jaws, m, a time after the carton came to a stand.
func (j Jaws) Opening(after Seconds) float64 {
	if after < j.SensorLag+j.Close.Time {
		return j.Stroke * (1 - j.Close.share(after-j.SensorLag))
	}
	return j.opened(after)
}

// opened is the opening that the opening move alone has made.
func (j Jaws) opened(after Seconds) float64 {
	return j.Stroke * j.Open.share(after-j.closedUntil())
}

// ClearBeforeIndex is the margin of "jaws open before the conveyor moves on", for a stand that lasts stand and ends
// at the angle next. Distance is the opening at that moment beyond ClearAt.
func (j Jaws) ClearBeforeIndex(stand Seconds, next Degrees, revolution Seconds) Margin {
	left := stand - j.Needed()
	return Margin{
		Name: "jaws open before the next index", Angle: left.Angle(revolution), Time: left,
		Distance: j.opened(stand) - j.clearAt(), AngleAt: next.Within(), DistanceAt: next.Within(),
	}
}
