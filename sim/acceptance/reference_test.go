package acceptance_test

import (
	"math"
	"testing"
	"time"

	"dwellcast/sim/acceptance"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

const between = 20 * time.Minute

// TestPassChances: row TR038 of testdata/trade.csv (Takacs 1957), and TR037 for the spread.
func TestPassChances(t *testing.T) {
	m := acceptance.UpDown{Up: between, Down: 2 * time.Minute}
	for hours, want := range map[int]float64{1: .723325, 4: .808451, 8: .877302, 24: .973163, 72: .999507} {
		near(t, "P(pass)", m.Pass(time.Duration(hours)*time.Hour, 0.88), want, 1e-5)
	}
	near(t, "sd", m.SD(8*time.Hour), 0.025022, 1e-6)
}

// TestOperatingCharacteristic: row TR040.
func TestOperatingCharacteristic(t *testing.T) {
	for hours, wants := range map[int][]float64{8: {.1798, .3191, .5308, .7806, .9562, .9989}, 24: {.0461, .1820, .5177, .8954, .9980, 1}} {
		for i, want := range wants {
			m := acceptance.WithAvailability(between, 0.84+0.02*float64(i))
			near(t, "P(pass)", m.Pass(time.Duration(hours)*time.Hour, 0.88), want, 1e-4)
		}
	}
}

// TestRunLengths: rows TR041, TR043 and TR044, exact and by the normal approximation.
func TestRunLengths(t *testing.T) {
	for _, c := range []struct {
		promised, refused, hours, line, tolerance float64
	}{{.92, .88, 24.43, .90358, 0.05}, {.90, .88, 117.71, math.NaN(), 0.1}, {.95, .90, 8.88, .93253, 0.02}} {
		plan, err := acceptance.FindPlan(between, c.promised, c.refused, 0.1, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "hours", plan.Length.Hours(), c.hours, c.tolerance)
		if !math.IsNaN(c.line) {
			near(t, "line", plan.Line, c.line, 2e-5)
		}
		near(t, "seller's risk", plan.Seller, 0.1, 1e-4)
		near(t, "buyer's risk", plan.Buyer, 0.1, 1e-4)
	}
	normal := acceptance.NormalPlan(between, .92, .88, 0.1, 0.1)
	near(t, "normal hours", normal.Length.Hours(), 24.52, 0.01)
	near(t, "normal line", normal.Line, .90379, 1e-5)
}

// TestShown: rows TR045 (Trivedi 2001, example 10.27), TR047 and TR048.
func TestShown(t *testing.T) {
	iv := acceptance.ShownAvailability(10, 9990*time.Hour, 10*time.Hour, 0.95)
	near(t, "low", iv.Low, .9975, 5e-5)
	near(t, "high", iv.High, .9996, 5e-5)
	near(t, "low after one stop", acceptance.ShownAvailability(1, 999*time.Hour, time.Hour, 0.95).Low, .9624, 5e-5)
	// One-sided, F(2, 2) at 95 % is 19 in closed form: p/(1-p).
	near(t, "one-sided", acceptance.LeastAvailability(1, 999*time.Hour, time.Hour, 0.95), 1/(1+19.0/999), 1e-9)
	near(t, "no stop", acceptance.LeastBetweenStops(8*time.Hour, 0, 0.9).Hours(), 3.474356, 1e-5)
	near(t, "three stops", acceptance.LeastBetweenStops(8*time.Hour, 3, 0.9).Hours(), 1.197464, 1e-5)
	near(t, "zero-failure run", acceptance.WithoutStop(time.Hour, 0.9).Hours(), 2.302585, 1e-6)
}
