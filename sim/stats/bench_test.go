package stats_test

import (
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
