package random_test

import (
	"math"
	"testing"
	"time"

	"dwellcast/sim/random"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func recorded(t *testing.T, values ...time.Duration) random.Sampler {
	t.Helper()
	s, err := random.Recorded(values)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func drawn(t *testing.T) func(d random.Distribution, err error) random.Sampler {
	return func(d random.Distribution, err error) random.Sampler {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return random.Drawn(d)
	}
}

// What a sampler says of itself, worked out by hand.
func TestSamplerDescribesItself(t *testing.T) {
	type description struct {
		Fixed    bool
		Mean     time.Duration
		Variance float64
		Min, Max time.Duration
		String   string
	}
	describe := func(s random.Sampler) description {
		return description{s.Fixed(), s.Mean(), s.Variance(), s.Min(), s.Max(), s.String()}
	}
	sec := time.Second
	sequence := recorded(t, 1*sec, 2*sec, 6*sec)
	flat := drawn(t)(random.Uniform(1, 4))
	for _, c := range []struct {
		name    string
		sampler random.Sampler
		want    description
	}{
		{"zero", random.Sampler{}, description{true, 0, 0, 0, 0, "0s"}},
		{"fixed", random.Fixed(2 * sec), description{true, 2 * sec, 0, 2 * sec, 2 * sec, "2s"}},
		{"fixed below zero", random.Fixed(-sec), description{true, 0, 0, 0, 0, "0s"}},
		{"constant", drawn(t)(random.Constant(2.5)), description{true, 2500 * time.Millisecond, 0, 2500 * time.Millisecond, 2500 * time.Millisecond, "2.5s"}},
		{"uniform", flat, description{false, 2500 * time.Millisecond, 0.75, sec, 4 * sec, "uniform(low 1, high 4) s"}},
		{"uniform doubled", flat.Scale(2), description{false, 5 * sec, 3, 2 * sec, 8 * sec, "2 x uniform(low 1, high 4) s"}},
		{"uniform to nothing", flat.Scale(0), description{true, 0, 0, 0, 0, "0s"}},
		{"exponential", drawn(t)(random.Exponential(20)), description{false, 20 * sec, 400, 0, random.Longest, "exponential(mean 20) s"}},
		{"recorded", sequence, description{false, 3 * sec, 14. / 3, sec, 6 * sec, "recorded(3 values, 1s to 6s)"}},
		{"recorded halved", sequence.Scale(0.5), description{false, 1500 * time.Millisecond, 14. / 12, 500 * time.Millisecond, 3 * sec, "recorded(3 values, 500ms to 3s)"}},
		{"recorded all equal", recorded(t, sec, sec), description{true, sec, 0, sec, sec, "1s"}},
	} {
		if diff := cmp.Diff(c.want, describe(c.sampler)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestRecordedReplaysFromTheStart(t *testing.T) {
	source := random.NewSource(recorded(t, 5, 1, 9), random.Key("robot", "cycle"))
	for replication := range 3 {
		source.Reset(1, replication)
		var got []time.Duration
		for range 7 {
			got = append(got, source.Next())
		}
		if diff := cmp.Diff([]time.Duration{5, 1, 9, 5, 1, 9, 5}, got); diff != "" {
			t.Errorf("replication %d (-want +got):\n%s", replication, diff)
		}
	}
}

// A Sampler has no position: it draws each recorded value equally often.
func TestRecordedDraw(t *testing.T) {
	s := recorded(t, 0, 1, 2)
	counts, stream := make([]float64, 3), seeded(random.Key("a", "b"), 1, 0)
	for range 9000 {
		counts[s.Draw(stream)]++
	}
	var family checks
	family.chiSquare("values", counts, []float64{3000, 3000, 3000}, 2)
	family.judge(t)
}

// A source draws the rounded quantile of its stream's uniforms, one each.
func TestSourceInvertsOneUniformEach(t *testing.T) {
	for _, l := range laws(t) {
		if l.d.Variance() == 0 {
			continue
		}
		key := random.Key(l.name, "time")
		source, stream, twin := random.NewSource(random.Drawn(l.d), key), seeded(key, 3, 4), seeded(key, 3, 4)
		source.Reset(3, 4)
		sampler := random.Drawn(l.d)
		for range 200 {
			want := time.Duration(math.Floor(l.d.Quantile(stream.Uniform())*1e9 + 0.5))
			if got, direct := source.Next(), sampler.Draw(twin); got != want || direct != want {
				t.Fatalf("%s: drew %d and %d ns, want %d", l.name, got, direct, want)
			}
		}
	}
}

// Scaling keeps the luck: draw by draw k times the value.
func TestScaleKeepsTheLuck(t *testing.T) {
	samplers := []random.Sampler{random.Fixed(time.Second), recorded(t, 3, 1, 4)}
	for _, l := range laws(t) {
		samplers = append(samplers, random.Drawn(l.d))
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0, 100).Draw(t, "k")
		s := rapid.SampledFrom(samplers).Draw(t, "sampler")
		base, longer := random.NewSource(s, 1), random.NewSource(s.Scale(k), 1)
		base.Reset(1, 0)
		longer.Reset(1, 0)
		for range 5 {
			x, y := float64(base.Next()), float64(longer.Next())
			if math.Abs(y-k*x) > 0.5+0.5*k+1e-14*y {
				t.Fatalf("%v scaled by %v: %v became %v", s, k, x, y)
			}
		}
	})
}

func TestScaleRefusesNonsense(t *testing.T) {
	for _, k := range []float64{-1, math.NaN(), math.Inf(1)} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("Scale(%v) did not panic", k)
				}
			}()
			random.Fixed(1).Scale(k)
		}()
	}
}

func TestDrawsStayWithinTheClock(t *testing.T) {
	s := drawn(t)(random.Uniform(1e12, 2e12))
	if got := s.Draw(seeded(1, 1, 0)); got != random.Longest {
		t.Errorf("drew %v, want the longest time", got)
	}
	if got := random.Fixed(math.MaxInt64).Mean(); got != random.Longest {
		t.Errorf("fixed %v, want the longest time", got)
	}
}

// TestAverage: the expectation of what depends on a time, against closed forms.
func TestAverage(t *testing.T) {
	seconds := func(d time.Duration) float64 { return d.Seconds() }
	short := func(d time.Duration) float64 { return max(0, 1-d.Seconds()) }
	uniform, err := random.Uniform(0, 4)
	if err != nil {
		t.Fatal(err)
	}
	recorded, err := random.Recorded([]time.Duration{0, time.Second / 2, 3 * time.Second})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		got    float64
		want   float64
		within float64
	}{
		{"fixed", random.Fixed(time.Second / 4).Average(short), 0.75, 0},
		{"recorded", recorded.Average(short), 0.5, 1e-12},
		{"uniform", random.Drawn(uniform).Average(seconds), 2, 1e-6},
		{"the short ones of a uniform", random.Drawn(uniform).Average(short), 0.125, 1e-6}, // 1/4 of them, 1/2 each
	} {
		if math.Abs(c.got-c.want) > c.within {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}
