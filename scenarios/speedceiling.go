package scenarios

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// SpeedCeiling is the highest setting that all limits allow, and what each of them allows.
type SpeedCeiling struct {
	// Setting is 0 where no setting is allowed at all.
	Setting motion.CartonsPerHour
	// Limits, the one that allows least first.
	Limits []LimitFinding
	// Unassessed are limits that the file asks for and that can't be told.
	Unassessed []Unassessed
}

// LimitFinding is what one limit allows.
type LimitFinding struct {
	SpeedLimit
	// Highest setting that it allows, bands within left aside; Binds is false where it allows any.
	Highest motion.Highest
	// Lowest setting that it allows, where it forbids those below; else 0.
	Lowest motion.CartonsPerHour
	// Bands of settings that it forbids, ascending.
	Bands []motion.Band
	// Now is its margin at the file's setting, in its unit.
	Now float64
	// Err says that not even the lowest setting is allowed.
	Err error
}

// Binding is the limit that sets the ceiling: the lowest, or the one whose band the lowest falls into. It is nil where nothing
// binds.
func (c *SpeedCeiling) Binding() *LimitFinding {
	for i := range c.Limits {
		for _, b := range c.Limits[i].Bands {
			if d := b.From - c.Setting; c.Setting > 0 && d >= 0 && d <= 2*motion.SettingTolerance {
				return &c.Limits[i]
			}
		}
	}
	if len(c.Limits) == 0 || !c.Limits[0].Highest.Binds && c.Limits[0].Err == nil {
		return nil
	}
	return &c.Limits[0]
}

// Next is what would bind if the binding limit were lifted; nil where nothing would.
func (c *SpeedCeiling) Next() *LimitFinding {
	binding := c.Binding()
	for i := range c.Limits {
		if l := &c.Limits[i]; l != binding && l.Highest.Binds {
			return l
		}
	}
	return nil
}

// Least is the limit that forbids the most of the low settings; nil where none does.
func (c *SpeedCeiling) Least() *LimitFinding {
	var least *LimitFinding
	for i := range c.Limits {
		if l := &c.Limits[i]; l.Lowest > 0 && (least == nil || l.Lowest > least.Lowest) {
			least = l
		}
	}
	return least
}

// Kept says that the file's setting keeps every limit that the file asks for. A limit that can't be told is not kept.
func (c *SpeedCeiling) Kept() bool {
	for _, l := range c.Limits {
		if l.Now < 0 || math.IsNaN(l.Now) {
			return false
		}
	}
	return len(c.Unassessed) == 0
}

// findSpeedCeiling ranks the limits of a file.
func findSpeedCeiling(f *File) SpeedCeiling {
	limits, unassessed := speedLimits(f)
	setting := motion.CartonsPerHour(f.Line.Setting)
	c := SpeedCeiling{Setting: highestSetting, Unassessed: unassessed}
	for _, l := range limits {
		c.take(l.find(setting))
	}
	c.belowBands()
	slices.SortStableFunc(c.Limits, func(a, b LimitFinding) int { return cmp.Compare(a.order(), b.order()) })
	return c
}

// order puts limits that bind first, and those that allow nothing before them.
func (l *LimitFinding) order() motion.CartonsPerHour {
	if !l.Highest.Binds && l.Err == nil {
		return highestSetting
	}
	return l.Highest.Setting
}

func (c *SpeedCeiling) take(l LimitFinding) {
	c.Limits = append(c.Limits, l)
	c.Setting = min(c.Setting, l.Highest.Setting)
}

// find looks for what a limit allows. That depends on the limit alone: neither on the present setting, nor on the other limits.
func (l SpeedLimit) find(setting motion.CartonsPerHour) LimitFinding {
	found := LimitFinding{SpeedLimit: l, Now: l.Margin(setting)}
	if l.Rises {
		found.findLowest()
		return found
	}
	if l.Dips == nil {
		found.Highest, found.Err = motion.HighestAllowed(l.Limit, lowestSetting, highestSetting)
		return found
	}
	all := motion.AssessDips(l.Limit, lowestSetting)
	found.Highest, found.Bands, found.Err = all.Highest, all.Bands, all.Err
	return found
}

// findLowest looks for what a limit allows that forbids the low settings.
func (l *LimitFinding) findLowest() {
	lowest, err := motion.LowestAllowed(l.Limit, lowestSetting, highestSetting)
	if err != nil {
		l.Err = err
		return
	}
	l.Highest.Setting = highestSetting
	if lowest > lowestSetting {
		l.Lowest = lowest
		l.Bands = []motion.Band{{To: lowest - motion.SettingTolerance, Worst: lowestSetting, Margin: l.Margin(lowestSetting)}}
	}
}

// about looks for what a limit that is broken at a setting allows about it, which is quicker than looking everywhere.
func (l SpeedLimit) about(setting motion.CartonsPerHour) LimitFinding {
	if l.Dips == nil {
		return l.find(setting)
	}
	f := motion.AssessAbout(l.Limit, setting, lowestSetting)
	return LimitFinding{SpeedLimit: l, Now: l.Margin(setting), Highest: f.Highest, Bands: f.Bands, Err: f.Err}
}

// belowBands goes down from the setting until no band contains it.
func (c *SpeedCeiling) belowBands() {
	for moved := true; moved; {
		moved = false
		for i := range c.Limits {
			for _, b := range c.Limits[i].Bands {
				if b.Contains(c.Setting) {
					c.Setting, moved = b.From-motion.SettingTolerance, true
				}
			}
		}
	}
	if c.Setting < lowestSetting {
		c.Setting = 0
	}
}

// Ceiling is the highest setting that the mechanics of a file allow, cartons/h, and the limit that binds there. It is not known
// where the file describes times alone, or where nothing binds. A known ceiling of 0 says that the limit allows no setting.
func Ceiling(f *File) (setting float64, limit string, known bool) {
	if !f.Mechanics.Described || f.Line.Setting == 0 {
		return 0, "", false
	}
	c := findSpeedCeiling(f)
	binding := c.Binding()
	if binding == nil {
		return 0, "", false
	}
	return float64(c.Setting), binding.Where + ": " + binding.Name, true
}

// Lowest is the lowest setting that the limits of a file allow which forbid slow ones, cartons/h; 0 where none does, or where they allow none.
func Lowest(f *File) float64 {
	if !f.Mechanics.Described || f.Line.Setting == 0 {
		return 0
	}
	lowest := motion.CartonsPerHour(0)
	limits, _ := speedLimits(f)
	for _, l := range limits {
		if l.Rises {
			lowest = max(lowest, l.find(lowestSetting).Lowest)
		}
	}
	return float64(lowest)
}

// BeyondCeiling are the limits that the file's setting breaks, each with its margin there: the setting is past what they allow,
// or in a band that they forbid, or they allow none. Of a line without a setting only what a seal needs can be broken: its dwell, and
// its glue closed in time. A file that
// describes times alone has none.
func BeyondCeiling(f *File) []LimitFinding {
	if !f.Mechanics.Described {
		return nil
	}
	setting := motion.CartonsPerHour(f.Line.Setting)
	var broken []LimitFinding
	limits, _ := speedLimits(f)
	for _, l := range limits {
		if setting == 0 && !slices.Contains(sealLimits, l.Kind) || !l.broken(setting) {
			continue
		}
		broken = append(broken, l.about(setting))
	}
	slices.SortStableFunc(broken, func(a, b LimitFinding) int { return cmp.Compare(a.order(), b.order()) })
	return broken
}

// sealLimits are the kinds of limit that a line without a setting can break too.
var sealLimits = []motion.LimitKind{motion.SealLimit, motion.OpenLimit}

// timeLimits are the kinds of limit that BudgetOf warns of: the line then does not follow its setting, and nothing worse.
var timeLimits = []motion.LimitKind{motion.DwellLimit, motion.ErectorLimit, motion.RobotLimit, MasterLimit, ActLimit}

// CeilingWarnings say where the speed ceiling lies when times follow from motions, and what the setting breaks beside time:
// interlocks, motors, splash and slosh.
func CeilingWarnings(f *File) []Warning {
	var list []Warning
	if setting, limit, known := Ceiling(f); known && setting > 0 && f.Line.Setting > 0 {
		list = append(list, Warning{"setting", fmt.Sprintf("times that follow from motions are those at %s and change with it; "+
			"reckoned so, the ceiling is %s, bound by %s", quantity.FormatRate(f.Line.Setting), allowedRate(setting), limit)})
	}
	for _, l := range BeyondCeiling(f) {
		if !slices.Contains(timeLimits, l.Kind) {
			list = append(list, Warning{"setting", "the setting of " + quantity.FormatRate(f.Line.Setting) + " breaks a limit of " + l.Where + ": " + l.Name})
		}
	}
	return list
}
