package decisions

import (
	"testing"

	"pgregory.net/rapid"
)

// TestCutToDigits: a rung that is cut lies between what it was and where it is cut towards, has few digits, and is off by less than a thousandth.
func TestCutToDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rung, towards := rapid.Int64Range(0, 1e15).Draw(t, "rung"), rapid.Int64Range(0, 1e15).Draw(t, "towards")
		short := cutToDigits(rung, towards)
		if short < min(rung, towards) || short > max(rung, towards) {
			t.Errorf("%d towards %d: %d", rung, towards, short)
		}
		if short == rung {
			return
		}
		digits := short
		for digits%10 == 0 && digits > 0 {
			digits /= 10
		}
		if digits > 10_000 || 1000*max(short-rung, rung-short) > rung {
			t.Errorf("%d towards %d: %d", rung, towards, short)
		}
	})
}
