package bottleneck

// candidate is a closed period that may turn out to be the bottleneck.
type candidate struct {
	station int
	period  Period
}

// closeStopped closes the periods that stopped at the present moment. Of
// those only the first to have started can matter.
func (k *Tracker) closeStopped() {
	first := -1
	for _, i := range k.closing {
		if k.state[i] == resumed {
			k.state[i] = active
			continue
		}
		k.state[i] = idle
		k.open.remove(i)
		if first < 0 || before(i, first, k.start) {
			first = i
		}
	}
	k.closing = k.closing[:0]
	if first < 0 {
		return
	}
	if open := k.open.first(); open < 0 || k.start[open] > k.start[first] {
		k.keep(first)
		k.choose()
	}
}

// keep keeps the period of a station that ends now, unless it is empty.
func (k *Tracker) keep(i int) {
	if p := (Period{k.start[i], k.now}); p.Length() > 0 {
		k.kept = append(k.kept, candidate{i, p})
	}
}

// choose makes the choices for which every candidate is known. The kept
// periods are in order of start and of end.
func (k *Tracker) choose() {
	for len(k.kept) > 0 {
		at := max(k.account.end(), k.kept[0].period.Start)
		if open := k.open.first(); open >= 0 && k.start[open] <= at {
			return
		}
		longest := 0
		for j, c := range k.kept {
			if c.period.Start <= at && c.beats(k.kept[longest]) {
				longest = j
			}
		}
		k.account.follow(k.kept[longest].station, k.kept[longest].period)
		k.kept = k.kept[:copy(k.kept, k.kept[longest+1:])]
	}
}

// beats reports whether c is chosen rather than other.
func (c candidate) beats(other candidate) bool {
	a, b := c.period.Length(), other.period.Length()
	return a > b || a == b && c.station < other.station
}
