package stats_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"dwellcast/sim/stats"

	"pgregory.net/rapid"
)

// MSER by its definition, each d on its own.
func bruteMSER(xs []float64, size int) (drop int, value float64) {
	k := len(xs) / size
	value = math.Inf(1)
	for d := 0; d <= k/2; d++ {
		var means []float64
		mean := 0.0
		for j := d; j < k; j++ {
			y := 0.0
			for _, x := range xs[j*size : (j+1)*size] {
				y += x / float64(size)
			}
			means = append(means, y)
			mean += y / float64(k-d)
		}
		sum := 0.0
		for _, y := range means {
			sum += (y - mean) * (y - mean)
		}
		if v := sum / float64((k-d)*(k-d)); v < value-1e-12 {
			drop, value = d, v
		}
	}
	return drop, value
}

func TestMSERAgreesWithItsDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(1, 6).Draw(t, "size")
		whole := rapid.SliceOfN(rapid.IntRange(0, 1000), 2*size, 120).Draw(t, "xs")
		xs := make([]float64, len(whole))
		for i, w := range whole {
			xs[i] = float64(w)
		}
		cut := stats.MSER(xs, size)
		drop, value := bruteMSER(xs, size)
		if math.Abs(cut.Value-value) > 1e-9*(1+value) {
			t.Fatalf("value %g at %d, want %g at %d", cut.Value, cut.Batches, value, drop)
		}
		if cut.Observations != cut.Batches*size || cut.Limit != len(xs)/size/2 {
			t.Fatalf("inconsistent %+v", cut)
		}
	})
}

func TestMSERSaysWhenNeverSteady(t *testing.T) {
	ramp, flat := make([]float64, 200), make([]float64, 200)
	for i := range ramp {
		ramp[i], flat[i] = float64(i), 3
	}
	if cut := stats.MSER5(ramp); cut.Steady() || !cut.Assessed() {
		t.Errorf("a ramp passes for steady: %+v", cut)
	}
	if cut := stats.MSER5(flat); !cut.Steady() || cut.Batches != 0 || cut.Mean != 3 || cut.Value != 0 {
		t.Errorf("a constant needs no warm-up: %+v", cut)
	}
	if cut := stats.MSER5(flat[:9]); cut.Assessed() || cut.Steady() {
		t.Errorf("one batch passes for assessed: %+v", cut)
	}
}

func TestBatchesLeaveOutTheRemainder(t *testing.T) {
	got := stats.BatchSeries([]float64{1, 3, 5, 7, 100}, 2)
	if len(got) != 2 || got[0] != 2 || got[1] != 6 {
		t.Errorf("batch means %v, want [2 6]", got)
	}
}

// By hand: 1 2 1 2 ... has lag-1 autocorrelation -(n-1)/n and successive
// squares n-1 against a sum of squared deviations n/4.
func TestIndependenceByHand(t *testing.T) {
	xs := make([]float64, 10)
	for i := range xs {
		xs[i] = float64(1 + i%2)
	}
	c := stats.Independence(xs)
	if math.Abs(c.Lag1+0.9) > 1e-12 || math.Abs(c.VonNeumann-4) > 1e-12 {
		t.Errorf("lag 1 %g, ratio %g; want -0.9 and 4", c.Lag1, c.VonNeumann)
	}
	if wantZ := (1 - 9/(2*2.5)) / math.Sqrt(8.0/99); math.Abs(c.Z-wantZ) > 1e-12 || c.P < 0.99 {
		t.Errorf("z %g, p %g; want z %g", c.Z, c.P, wantZ)
	}
	if c := stats.Independence(xs[:7]); c.Assessed() {
		t.Errorf("seven values pass for assessed: %+v", c)
	}
	if c := stats.Independence(make([]float64, 20)); c.P != 1 {
		t.Errorf("constants: %+v, want p = 1", c)
	}
}

// Independent values are called dependent as often as the level says (10 %,
// 99.9 % band of 1000), a positively correlated series nearly always.
func TestIndependenceLevelAndPower(t *testing.T) {
	const runs = 1000
	random := rand.New(rand.NewPCG(7, 3))
	falseAlarms, found := 0, 0
	for range runs {
		independent, dependent := make([]float64, 40), make([]float64, 40)
		for i := range independent {
			independent[i] = random.NormFloat64()
			dependent[i] = random.NormFloat64()
			if i > 0 {
				dependent[i] += 0.8 * dependent[i-1]
			}
		}
		if stats.Independence(independent).P < 0.1 {
			falseAlarms++
		}
		if stats.Independence(dependent).P < 0.1 {
			found++
		}
	}
	lo, hi := stats.CoverageBand(runs, 0.1, 0.999)
	if falseAlarms < lo || falseAlarms > hi {
		t.Errorf("%d false alarms, want %d to %d", falseAlarms, lo, hi)
	}
	if found < 950 {
		t.Errorf("found %d of %d correlated series", found, runs)
	}
}
