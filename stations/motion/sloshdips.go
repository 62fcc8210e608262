package motion

import "math"

// dips are settings at which the wave of a few indexes is looked at: cycles in steps, several in the time in which the indexes that
// a wave remembers fall out of step with the first mode, and both sides of each jump of the cycle.
func (w *sloshLimit) dips(lo, hi CartonsPerHour) []CartonsPerHour {
	lanes, first := w.master.lanes(), w.tank.Mode(1)
	shortest, longest := PacePeriod(hi, lanes), PacePeriod(lo, lanes)
	memory := Seconds(stillAfter / first.Omega() / max(w.tank.Damping, 1e-9))
	var found []CartonsPerHour
	for t := shortest; t < longest; {
		found = append(found, SettingFor(t, lanes))
		together := min(float64(w.indexes), 1+float64(memory/t))
		t += max(Seconds(1/first.Frequency/looksPerPeriod/together), (longest-shortest)/mostLooksAtWave)
	}
	return append(found, w.jumps(lo)...)
}

// jumps are the settings from lo up at which the cycle of a master that never stops jumps.
func (w *sloshLimit) jumps(lo CartonsPerHour) []CartonsPerHour {
	if !w.master.Continuous || w.master.Revolution == 0 {
		return nil
	}
	var found []CartonsPerHour
	for m := 1; m <= mostJumps; m++ {
		jump := SettingFor(Seconds(m)*w.master.Revolution, w.master.lanes())
		if jump < lo {
			break
		}
		found = append(found, jump*(1-1e-6), jump*(1+1e-6))
	}
	return found
}

// stillAfter is the natural logarithm of a thousand: after so many times of decay a thousandth of a wave is left.
const stillAfter = 6.9

// endlessDips are the settings between lo and hi whose cycle is a whole number of periods of an odd mode, as long as the wave of one
// cycle still meets the next.
func (w *sloshLimit) endlessDips(lo, hi CartonsPerHour) []CartonsPerHour {
	var found []CartonsPerHour
	t, perHour := w.tank, 3600*float64(w.master.lanes())
	for i := range t.modeCount() {
		f := t.Mode(2*i+1).Frequency * math.Sqrt(1-t.Damping*t.Damping)
		most := min(perHour*f/float64(lo), 1000, stillAfter/(2*math.Pi*max(t.Damping, 1e-9)))
		for m := math.Ceil(perHour * f / float64(hi)); m <= most; m++ {
			if m > 0 {
				found = append(found, CartonsPerHour(perHour*f/m))
			}
		}
	}
	return append(found, w.jumps(lo)...)
}
