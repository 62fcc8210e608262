package random_test

import (
	"testing"
	"time"

	"dwellcast/sim/random"
)

var (
	sinkTime  time.Duration
	sinkFloat float64
	sinkCount int
)

func BenchmarkUniform(b *testing.B) {
	var s random.Stream
	sum := 0.0
	for b.Loop() {
		sum += s.Uniform()
	}
	sinkFloat = sum
}

// One draw of a time, with its uniform and the rounding.
func BenchmarkNext(b *testing.B) {
	for _, l := range laws(b) {
		b.Run(l.name, func(b *testing.B) {
			source := random.NewSource(random.Drawn(l.d), random.Key("sealer", "dwell"))
			source.Reset(1, 0)
			var sum time.Duration
			for b.Loop() {
				sum += source.Next()
			}
			sinkTime = sum
		})
	}
}

// One quantile with its uniform.
func BenchmarkQuantile(b *testing.B) {
	for _, l := range laws(b) {
		b.Run(l.name, func(b *testing.B) {
			var s random.Stream
			sum := 0.0
			for b.Loop() {
				sum += l.d.Quantile(s.Uniform())
			}
			sinkFloat = sum
		})
	}
}

func BenchmarkHit(b *testing.B) {
	for _, c := range []struct {
		name string
		p    float64
	}{{"never", 0}, {"1 in 1000", 0.001}, {"1 in 10", 0.1}} {
		b.Run(c.name, func(b *testing.B) {
			trials := newTrials(perAct(b, c.p), 1)
			n := 0
			for b.Loop() {
				if trials.Hit() {
					n++
				}
			}
			sinkCount = n
		})
	}
}

func BenchmarkReset(b *testing.B) {
	source := random.NewSource(random.Fixed(1), random.Key("a", "b"))
	replication := 0
	for b.Loop() {
		source.Reset(1, replication)
		replication++
	}
}
