package random_test

import (
	"math"
	"testing"

	"dwellcast/sim/random"

	"gonum.org/v1/gonum/stat/distuv"
)

func perAct(t testing.TB, p float64) random.Countdown {
	t.Helper()
	c, err := random.PerAct(p)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func newTrials(c random.Countdown, key uint64) *random.Trials {
	trials := random.NewTrials(c, key)
	trials.Reset(1, 0)
	return &trials
}

// The gaps are geometric, and hits in blocks of acts are binomial, as for
// independent trials.
func TestTrialsAreBernoulli(t *testing.T) {
	var family checks
	for _, p := range []float64{0.003, 0.02, 0.3, 0.5, 0.97} {
		trials := newTrials(perAct(t, p), random.Key("erector", "miss"))
		const blocks, size = 40_000, 12
		binomial := distuv.Binomial{N: size, P: p}
		counts := make([]float64, size+1)
		hits := 0.0
		for range blocks {
			k := 0
			for range size {
				if trials.Hit() {
					k++
				}
			}
			counts[k]++
			hits += float64(k)
		}
		n := float64(blocks * size)
		family.normal("hits", (hits-n*p)/math.Sqrt(n*p*(1-p)))
		family.pooled("blocks", counts, func(k int) float64 { return blocks * binomial.Prob(float64(k)) })
		family.gaps(trials, p)
	}
	family.judge(t)
}

// gaps checks the acts from one hit to the next, and that successive gaps are
// not correlated.
func (c *checks) gaps(trials *random.Trials, p float64) {
	const n, cells = 20_000, 40
	counts := make([]float64, cells+1)
	before, products := 0.0, 0.0
	for range n {
		gap := 1
		for !trials.Hit() {
			gap++
		}
		counts[min(gap, cells+1)-1]++
		x := (float64(gap) - 1/p) / math.Sqrt((1-p)/(p*p))
		products += x * before
		before = x
	}
	c.pooled("gaps", counts, func(i int) float64 {
		if i == cells {
			return n * math.Pow(1-p, cells)
		}
		return n * p * math.Pow(1-p, float64(i))
	})
	c.normal("successive gaps", products/math.Sqrt(n))
}

// pooled is a chi-square with cells below five expected put together.
func (c *checks) pooled(name string, counts []float64, expected func(i int) float64) {
	var seen, want []float64
	restSeen, restWant := 0.0, 0.0
	for i, n := range counts {
		if e := expected(i); e >= 5 {
			seen, want = append(seen, n), append(want, e)
			continue
		}
		restSeen += n
		restWant += expected(i)
	}
	if restWant >= 5 {
		seen, want = append(seen, restSeen), append(want, restWant)
	}
	c.chiSquare(name, seen, want, len(seen)-1)
}

// One uniform gives the count: the smallest n with 1-(1-p)^n at or above it.
func TestCountdownInvertsOneUniform(t *testing.T) {
	for _, p := range []float64{1e-12, 0.004, 0.3, 0.9} {
		c := perAct(t, p)
		a, b := seeded(1, 1, 0), seeded(1, 1, 0)
		for range 2000 {
			n, u := float64(c.Draw(a)), b.Uniform()
			reach := func(n float64) float64 { return -math.Expm1(n * math.Log1p(-p)) }
			if reach(n) < u*(1-1e-12) || reach(n-1) > u*(1+1e-12) {
				t.Fatalf("chance %g: uniform %g gave %g acts", p, u, n)
			}
		}
		if got := c.Mean(); got != 1/p {
			t.Errorf("chance %g: mean %g", p, got)
		}
	}
}

func TestTrialsAtTheEnds(t *testing.T) {
	always, never, zero := newTrials(perAct(t, 1), 1), newTrials(perAct(t, 0), 1), newTrials(random.Countdown{}, 1)
	var unset random.Trials
	for range 1000 {
		if !always.Hit() || never.Hit() || zero.Hit() || unset.Hit() {
			t.Fatal("chance 1 must hit every time, chance 0 never")
		}
	}
	if c := perAct(t, 0); c.Draw(seeded(1, 1, 0)) != random.Never || !math.IsInf(c.Mean(), 1) {
		t.Error("chance 0 must count to Never, with an infinite mean")
	}
	if c := perAct(t, 1e-300); c.Draw(seeded(1, 1, 0)) != random.Never {
		t.Error("a count beyond whole numbers must be Never")
	}
}

// Skipping all that is sure to come without the event must change nothing.
func TestSkipKeepsTheEvents(t *testing.T) {
	a, b := newTrials(perAct(t, 0.05), 1), newTrials(perAct(t, 0.05), 1)
	for range 500 {
		n := a.Left()
		for i := range n {
			if b.Hit() {
				t.Fatalf("hit after %d acts, though %d were sure to come without", i+1, n)
			}
		}
		a.Skip(n)
		if !a.Hit() || !b.Hit() {
			t.Fatalf("no hit after the %d acts that were sure to come without", n)
		}
	}
}

// "Every 900 cartons": the constant hits on the 900th and again 900 later.
func TestTrialsEveryCount(t *testing.T) {
	for _, c := range []struct {
		law   float64
		every int
	}{{900, 900}, {2.2, 3}, {0, 1}} {
		law, err := random.Constant(c.law)
		if err != nil {
			t.Fatal(err)
		}
		trials := newTrials(random.PerCount(law), 1)
		for act := 1; act <= 3*c.every; act++ {
			if got, want := trials.Hit(), act%c.every == 0; got != want {
				t.Fatalf("every %g: act %d hits %v", c.law, act, got)
			}
		}
	}
}

// An exponential law rounded up is geometric: P(N > n) = exp(-n/mean).
func TestTrialsFromLaw(t *testing.T) {
	law, err := random.Exponential(2)
	if err != nil {
		t.Fatal(err)
	}
	var family checks
	family.gaps(newTrials(random.PerCount(law), 5), -math.Expm1(-0.5))
	family.judge(t)
}
