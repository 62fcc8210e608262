package stats_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"dwellcast/sim/stats"

	"pgregory.net/rapid"
)

// Pairs for a two-sided paired t test at 95 % with power 80 %: 199, 34 and
// 15 for small, medium and large effects (Cohen 1988's effect sizes 0.2, 0.5
// and 0.8; the numbers as common power software prints them, from memory).
func TestReplicationsForDifference(t *testing.T) {
	for _, c := range []struct {
		effect float64
		want   int
	}{{0.2, 199}, {0.5, 34}, {0.8, 15}} {
		for _, scale := range []float64{1, -40} {
			n, ok := stats.ReplicationsForDifference(math.Abs(scale), c.effect*scale, 0.95, 0.8)
			if n != c.want || !ok {
				t.Errorf("effect %g: got %d %v, want %d", c.effect, n, ok, c.want)
			}
		}
	}
	if n, ok := stats.ReplicationsForDifference(0, 1, 0.95, 0.8); n != 2 || !ok {
		t.Errorf("without spread: %d %v, want 2", n, ok)
	}
	if _, ok := stats.ReplicationsForDifference(1, 0, 0.95, 0.8); ok {
		t.Error("no number of replications shows a difference of zero")
	}
	if _, ok := stats.ReplicationsForDifference(1, 1e-9, 0.95, 0.8); ok {
		t.Error("a billionth of the spread is out of reach")
	}
}

// The power by simulation, within the 99.9 % band of 2000 tests.
func TestPairedPowerBySimulation(t *testing.T) {
	const runs, pairs = 2000, 8
	random := rand.New(rand.NewPCG(11, 5))
	found := 0
	a, b := make([]float64, pairs), make([]float64, pairs)
	for range runs {
		for i := range a {
			a[i] = 0.9 + random.NormFloat64()
		}
		if stats.PairedT(a, b).P < 0.05 {
			found++
		}
	}
	power := stats.PairedPower(pairs, 0.9, 0.95)
	if lo, hi := stats.CoverageBand(runs, power, 0.999); found < lo || found > hi {
		t.Errorf("power %g, but %d of %d tests found the difference, want %d to %d", power, found, runs, lo, hi)
	}
	if level := stats.PairedPower(pairs, 0, 0.95); math.Abs(level-0.05) > 1e-9 {
		t.Errorf("power without a difference is %g, want the level 0.05", level)
	}
}

func TestHalfWidthReplicationsAreTheFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		variance := rapid.Float64Range(0.01, 50).Draw(t, "variance")
		n0 := rapid.IntRange(2, 30).Draw(t, "n0")
		beta := rapid.Float64Range(0.05, 5).Draw(t, "beta")
		n, ok := stats.ReplicationsForHalfWidth(variance, n0, beta, 0.95)
		half := func(i int) float64 {
			return stats.StudentQuantile(0.975, float64(i-1)) * math.Sqrt(variance/float64(i))
		}
		if !ok || n < n0 || half(n) > beta || n > n0 && half(n-1) <= beta {
			t.Fatalf("%d %v", n, ok)
		}
		// relative error gamma of the mean beta (1+gamma)/gamma is the same
		if m, _ := stats.ReplicationsForRelativeError(-beta*11, variance, n0, 0.1, 0.95); m > n+1 || m < n-1 {
			t.Fatalf("relative: %d, absolute: %d", m, n)
		}
	})
}

func TestHalfWidthReplicationsOutOfReach(t *testing.T) {
	if _, ok := stats.ReplicationsForHalfWidth(1, 10, 0, 0.95); ok {
		t.Error("zero half-width is out of reach")
	}
	if n, ok := stats.ReplicationsForHalfWidth(0, 10, 0, 0.95); n != 10 || !ok {
		t.Errorf("without variance: %d %v, want the 10 at hand", n, ok)
	}
	for _, variance := range []float64{-1, math.NaN()} {
		if _, ok := stats.ReplicationsForHalfWidth(variance, 10, 1, 0.95); ok {
			t.Errorf("variance %g is accepted", variance)
		}
	}
}
