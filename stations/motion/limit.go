package motion

import (
	"fmt"
	"math"
)

// LimitKind groups limits by what lifts them.
type LimitKind string

// The kinds of limit.
const (
	InterlockLimit    LimitKind = "interlock" // phases of the cams
	MotorLimit        LimitKind = "motor"     // speed or torque of a drive
	AccelerationLimit LimitKind = "acceleration"
	FlowLimit         LimitKind = "flow" // splash at the nozzle
	SloshLimit        LimitKind = "slosh"
	DwellLimit        LimitKind = "dwell" // seal cycle within the stand
	SealLimit         LimitKind = "seal"  // what heat or glue need, whatever the setting
	OpenLimit         LimitKind = "open"  // glue closed in time, which a slow setting breaks
	ErectorLimit      LimitKind = "erector"
	RobotLimit        LimitKind = "robot"
)

// Limit is one reason why the line cannot be set faster: a function of the setting that is 0 or more where the
// setting is allowed.
type Limit struct {
	Name   string
	Kind   LimitKind
	Unit   string                       // of the margin
	Lift   string                       // what would have to change to raise it, in words
	Margin func(CartonsPerHour) float64 // not a number counts as not allowed
	// Rises says that the margin rises with the setting: it is the low ones that are forbidden.
	Rises bool

	// Dips are settings between lo and hi at which a margin that is not monotonic may have a dip: slosh in step with
	// the cycle. Nil: the margin falls with the setting, or Rises.
	Dips func(lo, hi CartonsPerHour) []CartonsPerHour
	// DipWidth is the least width of a dip as a share of the setting; only with Dips, and then more than 0 unless
	// only Dips themselves can be low.
	DipWidth float64
	// From and To are the settings between which a limit with Dips is looked at, whatever else limits the line. Below From it is
	// kept, or a cycle lasts longer than on any carton line; above To none is set.
	From, To CartonsPerHour
}

// SettingTolerance is how exactly settings are found, cartons per hour.
const SettingTolerance = 0.01

// Highest is the highest setting that a limit allows.
type Highest struct {
	Setting CartonsPerHour
	Binds   bool // false: the limit allows all of the range, and Setting is its end
}

// HighestAllowed finds the highest setting between lo and hi (0 < lo < hi) that a limit with a falling margin allows,
// to SettingTolerance and on the allowed side. It is an error if not even lo is allowed. For a limit with Dips use
// ForbiddenBands.
func HighestAllowed(limit Limit, lo, hi CartonsPerHour) (Highest, error) {
	if !(lo > 0 && lo < hi) {
		return Highest{}, fmt.Errorf("settings from %g to %g cartons/h are no range", lo, hi)
	}
	margin := limit.signed()
	if m := margin(float64(lo)); m < 0 {
		return Highest{}, fmt.Errorf("%s: not even %.6g cartons/h is allowed (margin %.4g %s)", limit.Name, lo, m, limit.Unit)
	}
	if margin(float64(hi)) >= 0 {
		return Highest{Setting: hi}, nil
	}
	allowed, _ := narrow(margin, float64(lo), float64(hi), SettingTolerance)
	return Highest{CartonsPerHour(allowed), true}, nil
}

// LowestAllowed finds the lowest setting between lo and hi (0 < lo < hi) that a limit whose margin Rises allows, to SettingTolerance and on
// the allowed side; lo where it allows all. It is an error if not even hi is allowed.
func LowestAllowed(limit Limit, lo, hi CartonsPerHour) (CartonsPerHour, error) {
	margin := limit.signed()
	if m := margin(float64(hi)); m < 0 {
		return 0, fmt.Errorf("%s: no setting is allowed, however fast (margin %.4g %s)", limit.Name, m, limit.Unit)
	}
	if margin(float64(lo)) >= 0 {
		return lo, nil
	}
	return CartonsPerHour(lastAllowed(func(setting float64) bool { return margin(setting) >= 0 }, float64(hi), float64(lo), SettingTolerance)), nil
}

// signed is the margin as a function of a plain number that is never NaN.
func (l Limit) signed() func(float64) float64 {
	return func(setting float64) float64 {
		m := l.Margin(CartonsPerHour(setting))
		if math.IsNaN(m) {
			return math.Inf(-1)
		}
		return m
	}
}
