package stations

import "time"

// delay is time by which a stop made the act of a unit on its own late, while the pace period still ran.
type delay struct {
	why Reason
	by  time.Duration
}

// delay notes that a stop made the act in hand late.
func (u *soloUnit) delay(why Reason, by time.Duration) {
	if by > 0 && u.sim.Line.Setting > 0 {
		u.late = append(u.late, delay{why, by})
	}
}

// loseLate charges so much of the lost time to the stops that made the act late, the last ones first, each with its delay at the most:
// without them the act would have ended in time. It returns what was charged.
func (u *soloUnit) loseLate(lost time.Duration) time.Duration {
	rest := lost
	for i := len(u.late) - 1; i >= 0 && rest > 0; i-- {
		d := min(rest, u.late[i].by)
		u.late[i].by -= d
		rest -= d
		u.sim.Tally.Lost[u.late[i].why] += int64(d)
	}
	return lost - rest
}
