package random

// Left returns how many acts are sure to come without the event.
func (t *Trials) Left() int64 { return max(0, t.left-1) }

// Skip makes n acts at once, at most as many as Left says.
func (t *Trials) Skip(n int64) { t.left -= n }
