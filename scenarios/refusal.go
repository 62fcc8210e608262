package scenarios

import (
	"fmt"
	"math"

	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// Refusal says why a line may not be run at its setting: the limit that allows least, in words. It is empty for a line that keeps
// every limit. All that runs or recommends a line asks it.
func Refusal(f *File) string {
	broken := BeyondCeiling(f)
	if len(broken) == 0 {
		return ""
	}
	return broken[0].Where + ": " + broken[0].Allows(motion.CartonsPerHour(f.Line.Setting))
}

// RefusalWarning is what to say of figures of a line that may not be run; nothing of one that keeps every limit.
func RefusalWarning(f *File) []Warning {
	why := Refusal(f)
	if why == "" {
		return nil
	}
	return []Warning{{"good_rate", "beyond a limit (" + why + "): no line can be run so, and quality is not what it would be"}}
}

// Allows says what a limit that is broken at a setting allows.
func (l *LimitFinding) Allows(setting motion.CartonsPerHour) string {
	for _, b := range l.Bands {
		if b.From > 0 && b.To < l.Highest.Setting && b.Contains(setting) {
			return fmt.Sprintf("%s forbids %.1f to %s", l.Name, float64(b.From), quantity.FormatRate(float64(b.To)))
		}
	}
	if l.Kind == motion.SealLimit {
		return fmt.Sprintf("%s, short by %.0f ms", l.Name, math.Ceil(-1000*l.Now))
	}
	if l.Lowest > 0 && setting > 0 {
		return fmt.Sprintf("%s asks for %s at least", l.Name, quantity.FormatRate(math.Ceil(10*float64(l.Lowest))/10))
	}
	if l.Kind == motion.OpenLimit && setting == 0 {
		return fmt.Sprintf("%s, late by %.0f ms", l.Name, math.Ceil(-1000*l.Now))
	}
	if l.Err != nil {
		return l.Name + " allows no setting"
	}
	return fmt.Sprintf("%s allows %s", l.Name, allowedRate(float64(l.Highest.Setting)))
}

// allowedRate is a highest setting rounded down to a tenth, so that what is printed is allowed.
func allowedRate(setting float64) string {
	return quantity.FormatRate(math.Floor(10*setting+0.05) / 10)
}
