package motion

import (
	"fmt"
	"slices"
)

// Finding is what one limit allows between two settings.
type Finding struct {
	Limit   Limit
	Highest Highest
	Bands   []Band // of a limit with dips
	Err     error  // not even the lowest setting is allowed
}

// Ceiling is what a set of limits allows, the lowest first: that one binds.
type Ceiling struct {
	Findings []Finding
	Setting  CartonsPerHour // the highest that all limits allow; 0: there is none
}

// FindCeiling ranks limits between lo and hi (0 < lo < hi).
func FindCeiling(limits []Limit, lo, hi CartonsPerHour) Ceiling {
	var c Ceiling
	for _, limit := range limits {
		c.Findings = append(c.Findings, assess(limit, lo, hi))
	}
	slices.SortStableFunc(c.Findings, func(a, b Finding) int {
		switch {
		case a.Highest.Setting < b.Highest.Setting:
			return -1
		case a.Highest.Setting > b.Highest.Setting:
			return 1
		}
		return 0
	})
	c.Setting = hi
	for _, f := range c.Findings {
		c.Setting = min(c.Setting, f.Highest.Setting)
	}
	c.Setting = c.belowBands(c.Setting, lo)
	return c
}

// assess finds what one limit allows.
func assess(limit Limit, lo, hi CartonsPerHour) Finding {
	f := Finding{Limit: limit}
	if limit.Dips == nil {
		f.Highest, f.Err = HighestAllowed(limit, lo, hi)
		return f
	}
	f.Bands = ForbiddenBands(limit, lo, hi)
	f.Highest = Highest{Setting: hi}
	if n := len(f.Bands); n > 0 && f.Bands[n-1].To >= hi {
		f.Highest = Highest{f.Bands[n-1].From - SettingTolerance, true}
		if f.Bands[n-1].From <= lo {
			f.Highest, f.Err = Highest{}, fmt.Errorf("%s: no setting from %.6g to %.6g cartons/h is allowed", limit.Name, lo, hi)
		}
	}
	return f
}

// AssessDips finds what a limit with Dips allows where it is looked at. Where that is nothing, it goes on below, by halves, until
// a setting is allowed, or to lowest.
func AssessDips(limit Limit, lowest CartonsPerHour) Finding {
	f := assess(limit, limit.From, limit.To)
	margin := limit.signed()
	for from := limit.From; f.Err != nil && from > lowest; {
		to := from
		from = max(from/2, lowest)
		if margin(float64(from)) < 0 {
			continue
		}
		f.Bands, f.Err = ForbiddenBands(limit, from, to), nil
		last := &f.Bands[len(f.Bands)-1] // it goes on beyond to
		last.To = limit.To
		f.Highest = Highest{last.From - SettingTolerance, true}
	}
	return f
}

// AssessAbout finds the band about a setting that a limit with Dips forbids, which is quicker than looking everywhere. Where the band
// goes on to the end of what is looked at, Highest is below it; else it does not bind.
func AssessAbout(limit Limit, setting, lowest CartonsPerHour) Finding {
	const stride = 1.02
	margin := limit.signed()
	forbidden := func(s CartonsPerHour) bool { return margin(float64(s)) < 0 }
	lo, hi, top := setting, setting, max(limit.To, setting)
	for lo > lowest && forbidden(lo) {
		lo = max(lo/stride, lowest)
	}
	for hi < top && forbidden(hi) {
		hi = min(hi*stride, top)
	}
	f := Finding{Limit: limit, Highest: Highest{Setting: limit.To}}
	band := Band{From: lo, To: hi, Worst: setting, Margin: margin(float64(setting))}
	if lo < setting {
		below := ForbiddenBands(limit, lo, setting)
		band.From = below[len(below)-1].From
	}
	switch {
	case !forbidden(hi):
		band.To = ForbiddenBands(limit, setting, hi)[0].To
	case band.From <= lowest:
		f.Highest, f.Err = Highest{}, fmt.Errorf("%s: no setting from %.6g to %.6g cartons/h is allowed", limit.Name, lo, hi)
	default:
		f.Highest = Highest{band.From - SettingTolerance, true}
	}
	f.Bands = []Band{band}
	return f
}

// belowBands goes down from a setting until no band contains it; 0 if there is no such setting from lo on.
func (c Ceiling) belowBands(setting, lo CartonsPerHour) CartonsPerHour {
	for moved := true; moved; {
		moved = false
		for _, f := range c.Findings {
			for _, b := range f.Bands {
				if b.Contains(setting) {
					setting, moved = b.From-SettingTolerance, true
				}
			}
		}
	}
	if setting < lo {
		return 0
	}
	return setting
}

// ShortestRevolution is the shortest revolution from lo to hi (0 < lo < hi) in which every interlock is kept, to a
// microsecond; the interlocks may only gain time in a longer one.
func ShortestRevolution(interlocks func(revolution Seconds) []Margin, lo, hi Seconds) (Seconds, error) {
	kept := func(revolution float64) bool {
		for _, m := range interlocks(Seconds(revolution)) {
			if !m.Kept() {
				return false
			}
		}
		return true
	}
	if kept(float64(lo)) {
		return lo, nil
	}
	if !kept(float64(hi)) {
		return 0, fmt.Errorf("no revolution up to %g s keeps every interlock", float64(hi))
	}
	return Seconds(lastAllowed(kept, float64(hi), float64(lo), 1e-6)), nil
}
