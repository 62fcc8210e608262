package stats_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"dwellcast/sim/stats"
)

// problem draws the outputs of systems with known means.
type problem struct {
	means  []float64
	spread []float64 // standard deviation of each system's own luck
	shared float64   // standard deviation of the luck all share
	random *rand.Rand
	common float64
}

func (p *problem) nextReplication() { p.common = p.shared * p.random.NormFloat64() }

func (p *problem) output(i int) float64 {
	return p.means[i] + p.spread[i]*p.random.NormFloat64() + p.common
}

// selectors are the procedures, each run to its choice.
var selectors = map[string]func(t *testing.T, p *problem, n0 int, pStar, delta float64) int{
	"Kim-Nelson":       selectByKN,
	"Rinott":           selectByRinott,
	"Dudewicz & Dalal": selectByDudewiczDalal,
}

func selectByKN(t *testing.T, p *problem, n0 int, pStar, delta float64) int {
	kn, err := stats.NewKN(len(p.means), n0, 1-pStar, delta)
	if err != nil {
		t.Fatal(err)
	}
	for {
		if system, ok := kn.Selected(); ok {
			return system
		}
		p.nextReplication()
		var outputs []float64
		for _, i := range kn.Surviving() {
			outputs = append(outputs, p.output(i))
		}
		if _, err := kn.Add(outputs); err != nil {
			t.Fatal(err)
		}
	}
}

// sample is n outputs of system i, each replication with luck of its own.
func (p *problem) sample(i, n int) (m stats.Moments) {
	for range n {
		p.nextReplication()
		m.Add(p.output(i))
	}
	return m
}

func largest(xs []float64) int {
	best := 0
	for i, x := range xs {
		if x > xs[best] {
			best = i
		}
	}
	return best
}

func selectByRinott(t *testing.T, p *problem, n0 int, pStar, delta float64) int {
	h := rinottOnce(t, len(p.means), n0, pStar)
	means := make([]float64, len(p.means))
	for i := range means {
		first := p.sample(i, n0)
		n := stats.RinottSizes(h, delta, n0, []float64{first.Variance()})[0]
		means[i] = first.Mean()
		if second := p.sample(i, n-n0); second.N() > 0 {
			means[i] = (first.Mean()*float64(n0) + second.Mean()*float64(n-n0)) / float64(n)
		}
	}
	return largest(means)
}

func selectByDudewiczDalal(t *testing.T, p *problem, n0 int, pStar, delta float64) int {
	h := dudewiczDalalOnce(t, len(p.means), n0, pStar)
	means := make([]float64, len(p.means))
	for i := range means {
		first := p.sample(i, n0)
		n := stats.DudewiczDalalSize(h, delta, n0, first.Variance())
		second := p.sample(i, n-n0)
		w1, w2 := stats.DudewiczDalalWeights(h, delta, n0, n, first.Variance())
		means[i] = w1*first.Mean() + w2*second.Mean()
	}
	return largest(means)
}

// The constants do not change between repetitions.
var rinottConstants, dudewiczDalalConstants = map[[3]float64]float64{}, map[[3]float64]float64{}

func rinottOnce(t *testing.T, k, n0 int, pStar float64) float64 {
	return once(t, rinottConstants, stats.RinottH, k, n0, pStar)
}

func dudewiczDalalOnce(t *testing.T, k, n0 int, pStar float64) float64 {
	return once(t, dudewiczDalalConstants, stats.DudewiczDalalH, k, n0, pStar)
}

func once(t *testing.T, known map[[3]float64]float64, find func(int, int, float64) (float64, error), k, n0 int, pStar float64) float64 {
	key := [3]float64{float64(k), float64(n0), pStar}
	if _, done := known[key]; !done {
		h, err := find(k, n0, pStar)
		if err != nil {
			t.Fatal(err)
		}
		known[key] = h
	}
	return known[key]
}

// Five systems, 500 repetitions with a seed each: the choice is right, or
// within the indifference zone of the best, at least as often as guaranteed.
// The bound is the binomial one: if the guarantee of 95 % holds, fewer than
// lo = 458 of 500 right choices happen with probability at most 0.0005.
func TestProbabilityOfCorrectSelection(t *testing.T) {
	const repetitions, n0, pStar, delta = 500, 10, 0.95, 1.0
	for name, c := range map[string]struct {
		means, spread []float64
		shared        float64
	}{
		"slippage: all others one zone below": {[]float64{9, 9, 10, 9, 9}, []float64{2, 2, 2, 2, 2}, 0},
		"the best has the largest spread":     {[]float64{9, 9, 9, 9, 10}, []float64{1, 1, 2, 2, 4}, 0},
		"several within the zone":             {[]float64{9.5, 10, 9.8, 8, 7}, []float64{2, 2, 2, 2, 2}, 0},
		"common random numbers":               {[]float64{10, 9, 9, 9, 9}, []float64{2, 2, 2, 2, 2}, 20},
	} {
		for procedure, choose := range selectors {
			if c.shared > 0 && procedure != "Kim-Nelson" {
				continue // the two-stage ones ask for independent systems
			}
			t.Run(procedure+"/"+name, func(t *testing.T) {
				right := 0
				for seed := range uint64(repetitions) {
					p := &problem{means: c.means, spread: c.spread, shared: c.shared, random: rand.New(rand.NewPCG(seed, 77))}
					if c.means[choose(t, p, n0, pStar, delta)] > c.means[largest(c.means)]-delta {
						right++
					}
				}
				if lo, _ := stats.CoverageBand(repetitions, pStar, 0.999); right < lo {
					t.Errorf("right %d times of %d, want at least %d", right, repetitions, lo)
				}
			})
		}
	}
}

func TestKNWithoutSpreadSelectsAtTheFirstStage(t *testing.T) {
	kn, err := stats.NewKN(4, 3, 0.05, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	for range 3 {
		if _, ok := kn.Selected(); ok {
			t.Fatal("selected before the first stage ended")
		}
		if _, err := kn.Add([]float64{1, 4, 4, 2}); err != nil {
			t.Fatal(err)
		}
	}
	if system, ok := kn.Selected(); !ok || system != 1 {
		t.Errorf("selected %d %v, want 1, the first of the two best", system, ok)
	}
	if _, err := kn.Add([]float64{1, 4, 4, 2}); err == nil {
		t.Error("takes replications after the selection")
	}
}

// A first stage of two, worked by hand: outputs (0, 1) and (0, 3) differ by
// 0 and -2, so S^2 = 2; with alpha = 0.25 and k = 2, n0 = 2:
// eta = (0.5^-2 - 1)/2 = 1.5, h^2 = 3, and with delta = 1 the region is
// 1/2 (6 - r), closing after r = 6.
func TestKNByHand(t *testing.T) {
	feed := func(kn *stats.KN, outputs ...float64) []int {
		t.Helper()
		eliminated, err := kn.Add(outputs)
		if err != nil {
			t.Fatal(err)
		}
		return eliminated
	}
	start := func() *stats.KN {
		kn, err := stats.NewKN(2, 2, 0.25, 1)
		if err != nil {
			t.Fatal(err)
		}
		feed(kn, 0, 0)
		return kn
	}
	kn := start()
	if out := feed(kn, 1, 3); len(out) != 0 { // totals 1, 3; region 2: not less than 3-2
		t.Errorf("eliminated %v on the edge of the region", out)
	}
	if out := feed(kn, 0, 0); len(out) != 1 || out[0] != 0 { // region 1.5
		t.Errorf("eliminated %v, want system 0", out)
	}
	if system, ok := kn.Selected(); !ok || system != 1 || kn.Replications() != 3 {
		t.Errorf("selected %d %v after %d", system, ok, kn.Replications())
	}
	kn = start()
	feed(kn, 1, 3)
	feed(kn, 2, 0) // totals level from here on
	for range 3 {
		if out := feed(kn, 1, 1); len(out) != 0 {
			t.Errorf("eliminated %v of two level systems", out)
		}
	}
	if _, ok := kn.Selected(); ok {
		t.Error("selected while the last region is just closing, r = 6")
	}
	feed(kn, 1, 2)
	if system, ok := kn.Selected(); !ok || system != 1 {
		t.Errorf("selected %d %v after r = 7, want the better mean", system, ok)
	}
}

func TestSelectionArguments(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		k, n0        int
		alpha, delta float64
	}{
		{0, 10, 0.05, 1}, {3, 1, 0.05, 1}, {3, 10, 0, 1}, {3, 10, 0.7, 1}, {3, 10, nan, 1},
		{3, 10, 0.05, 0}, {3, 10, 0.05, -1}, {3, 10, 0.05, nan}, {3, 10, 0.05, math.Inf(1)}, {1, 10, 1.5, 1},
	} {
		if _, err := stats.NewKN(c.k, c.n0, c.alpha, c.delta); err == nil {
			t.Errorf("%+v is accepted", c)
		}
	}
	for _, find := range []func(int, int, float64) (float64, error){stats.RinottH, stats.DudewiczDalalH} {
		for _, c := range []struct {
			k, n0 int
			pStar float64
		}{{1, 10, 0.9}, {3, 1, 0.9}, {3, 10, 0.3}, {3, 10, 1}, {3, 10, nan}} {
			if _, err := find(c.k, c.n0, c.pStar); err == nil {
				t.Errorf("%+v is accepted", c)
			}
		}
	}
	kn, err := stats.NewKN(1, 10, 0.05, 1)
	if err != nil {
		t.Fatal(err)
	}
	if system, ok := kn.Selected(); !ok || system != 0 {
		t.Error("one system needs no replications")
	}
	if kn, err = stats.NewKN(2, 2, 0.05, 1); err != nil {
		t.Fatal(err)
	}
	for _, bad := range [][]float64{{1}, {1, 2, 3}, {1, nan}, {math.Inf(1), 0}} {
		if _, err := kn.Add(bad); err == nil || kn.Replications() != 0 {
			t.Errorf("outputs %v are accepted", bad)
		}
	}
}
