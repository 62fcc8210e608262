package motion

import (
	"math"
	"slices"
)

// Band is a range of settings that a limit forbids.
type Band struct {
	From, To CartonsPerHour
	Worst    CartonsPerHour // where the margin is least, among the settings looked at
	Margin   float64        // there, below 0
}

// Contains reports whether the band forbids a setting.
func (b Band) Contains(setting CartonsPerHour) bool { return setting >= b.From && setting <= b.To }

// ForbiddenBands finds all ranges of settings between lo and hi (0 < lo < hi) that a limit forbids, ascending, their
// edges to SettingTolerance on the forbidden side.
//
// Nothing narrow is missed as far as the limit knows itself: the margin is looked at in every one of its Dips, and
// between them in steps of a third of DipWidth (4 % of the setting without one); every lowest look that is still
// allowed is followed down to the bottom of its dip, and every highest forbidden one up, before the edges are found
// by root-finding.
func ForbiddenBands(limit Limit, lo, hi CartonsPerHour) []Band {
	margin := limit.signed()
	looks := followed(margin, limit.looks(float64(lo), float64(hi)))
	var bands []Band
	for i, at := range looks {
		if at.margin >= 0 {
			continue
		}
		if i == 0 || looks[i-1].margin >= 0 {
			from := at.setting
			if i > 0 {
				_, from = narrow(margin, looks[i-1].setting, at.setting, SettingTolerance)
			}
			bands = append(bands, Band{From: CartonsPerHour(from), Margin: math.Inf(1)})
		}
		band := &bands[len(bands)-1]
		if at.margin < band.Margin {
			band.Margin, band.Worst = at.margin, CartonsPerHour(at.setting)
		}
		band.To = CartonsPerHour(at.setting)
		if i+1 < len(looks) && looks[i+1].margin >= 0 {
			to, _ := narrow(margin, at.setting, looks[i+1].setting, SettingTolerance)
			band.To = CartonsPerHour(to)
		}
	}
	return bands
}

// look is a margin at a setting.
type look struct{ setting, margin float64 }

// mostLooks bounds the number of steps when dips are very narrow; the dips themselves are looked at all the same.
const mostLooks = 5000

// looks are the settings at which the margin is first looked at, ascending.
func (l Limit) looks(lo, hi float64) []float64 {
	step := 0.04
	if l.DipWidth > 0 {
		step = min(step, l.DipWidth/3)
	}
	n := int(math.Ceil(math.Log(hi/lo) / step))
	n = min(max(n, 8), mostLooks)
	settings := []float64{hi}
	for i := range n {
		settings = append(settings, lo*math.Pow(hi/lo, float64(i)/float64(n)))
	}
	if l.Dips != nil {
		for _, s := range l.Dips(CartonsPerHour(lo), CartonsPerHour(hi)) {
			if float64(s) > lo && float64(s) < hi {
				settings = append(settings, float64(s))
			}
		}
	}
	slices.Sort(settings)
	return slices.Compact(settings)
}

// mayFall says that the bottom near a lowest look may lie below 0: the margin falls towards the look by a good part of what is left.
// Narrower dips are looked at by themselves.
func (b look) mayFall(a, c look) bool { return b.margin < 4*(max(a.margin, c.margin)-b.margin) }

// followed adds to the looks the bottoms of dips that are allowed where they were looked at, and the tops of humps
// that are not.
func followed(margin func(float64) float64, settings []float64) []look {
	looks := make([]look, len(settings))
	for i, s := range settings {
		looks[i] = look{s, margin(s)}
	}
	all := slices.Clone(looks)
	for i := 1; i+1 < len(looks); i++ {
		a, b, c := looks[i-1], looks[i], looks[i+1]
		switch {
		case b.margin >= 0 && b.margin <= a.margin && b.margin <= c.margin && b.mayFall(a, c):
			bottom := lowPoint(margin, a.setting, c.setting, SettingTolerance)
			all = append(all, look{bottom, margin(bottom)})
		case b.margin < 0 && b.margin >= a.margin && b.margin >= c.margin:
			top := lowPoint(func(x float64) float64 { return -margin(x) }, a.setting, c.setting, SettingTolerance)
			all = append(all, look{top, margin(top)})
		}
	}
	slices.SortFunc(all, func(x, y look) int {
		switch {
		case x.setting < y.setting:
			return -1
		case x.setting > y.setting:
			return 1
		}
		return 0
	})
	return all
}
