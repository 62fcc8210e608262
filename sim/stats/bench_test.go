package stats_test

import (
	"math/rand/v2"
	"testing"

	"dwellcast/sim/stats"
)

func BenchmarkStudentQuantile(b *testing.B) {
	for b.Loop() {
		stats.StudentQuantile(0.975, 199)
	}
}

func BenchmarkMoments(b *testing.B) {
	var m stats.Moments
	for i := 0; b.Loop(); i++ {
		m.Add(float64(i & 7))
	}
}

func BenchmarkRinottH100(b *testing.B) {
	for b.Loop() {
		if _, err := stats.RinottH(100, 20, 0.95); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDudewiczDalalH100(b *testing.B) {
	for b.Loop() {
		if _, err := stats.DudewiczDalalH(100, 20, 0.95); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReplicationsForDifference(b *testing.B) {
	for b.Loop() {
		stats.ReplicationsForDifference(1, 0.01, 0.95, 0.9)
	}
}

func BenchmarkMSER5(b *testing.B) {
	xs := make([]float64, 100_000)
	for i := range xs {
		xs[i] = float64(i % 17)
	}
	for b.Loop() {
		stats.MSER5(xs)
	}
}

// A whole selection among 100 level systems, the slowest case.
func BenchmarkKN100(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 1))
	for b.Loop() {
		kn, err := stats.NewKN(100, 20, 0.05, 0.5)
		if err != nil {
			b.Fatal(err)
		}
		for done := false; !done; _, done = kn.Selected() {
			outputs := make([]float64, len(kn.Surviving()))
			for i := range outputs {
				outputs[i] = random.NormFloat64()
			}
			if _, err := kn.Add(outputs); err != nil {
				b.Fatal(err)
			}
		}
	}
}
