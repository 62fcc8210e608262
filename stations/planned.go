package stations

import "time"

// window returns the index of the planned stop that the instant lies in, or -1.
func (s *Shift) window(at time.Duration) int {
	for i := range s.Planned {
		w := &s.Planned[i]
		if at < w.From {
			break
		}
		if at < w.To {
			return i
		}
	}
	return -1
}

// nextPlanned returns the first instant from at on that lies in a planned stop, or the end of the shift.
func (s *Shift) nextPlanned(at time.Duration) time.Duration {
	for i := range s.Planned {
		if w := &s.Planned[i]; w.To > at {
			return max(w.From, at)
		}
	}
	return s.Length
}
