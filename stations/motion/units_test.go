package motion_test

import (
	"math"
	"testing"
	"time"

	"dwellcast/stations/motion"
)

func TestUnits(t *testing.T) {
	near(t, "angle within a turn", float64(motion.Degrees(-30).Within()), 330, 0)
	near(t, "whole turn", float64(motion.Degrees(720).Within()), 0, 0)
	near(t, "a hair below zero", float64(motion.Degrees(-1e-18).Within()), 0, 0)
	near(t, "time of an angle", float64(motion.Degrees(90).Time(2)), 0.5, 0)
	near(t, "angle of a time", float64(motion.Seconds(0.5).Angle(2)), 90, 0)
	for seconds, want := range map[motion.Seconds]time.Duration{
		1.5: 1500 * time.Millisecond, 2e-9: 2, 1e30: math.MaxInt64, -1e30: math.MinInt64,
	} {
		if got := seconds.Duration(); got != want {
			t.Errorf("%g s = %v, want %v", float64(seconds), got, want)
		}
	}
	near(t, "seconds", float64(motion.SecondsOf(250*time.Millisecond)), 0.25, 0)
}

// TestSettingsAtPeaks: at the setting of the formula the cam's own peak is the limit.
func TestSettingsAtPeaks(t *testing.T) {
	for _, law := range allLaws(t) {
		const h, beta, limit, lanes = 0.15, 110, 1.7, 2
		peaks := func(setting motion.CartonsPerHour) motion.Peaks {
			return feed(t, h, beta, law).Peaks(motion.PacePeriod(setting, lanes))
		}
		near(t, "v", peaks(motion.SettingAtPeakVelocity(law, h, beta, limit, lanes)).Velocity.Value, limit, 1e-9)
		if law.Coefficients().Ca > 0 {
			near(t, "a", peaks(motion.SettingAtPeakAcceleration(law, h, beta, limit, lanes)).Acceleration.Value, limit, 1e-9)
		}
		if law.Coefficients().Cj > 1e-9 {
			near(t, "j", peaks(motion.SettingAtPeakJerk(law, h, beta, limit, lanes)).Jerk.Value, limit, 1e-9)
		}
	}
}
