package stations_test

import (
	"fmt"
	"testing"
	"time"

	"dwellcast/stations"
)

func BenchmarkBenchLine(b *testing.B) {
	for _, no := range []bool{false, true} {
		b.Run(fmt.Sprint("steps=", no), func(b *testing.B) {
			s, _ := stations.New(benchLine(b, 1500, 1.15))
			s.NoRepeats = no
			b.ReportAllocs()
			for i := range b.N {
				s.Shift(1, i)
			}
		})
	}
}

func BenchmarkTandem(b *testing.B) {
	b.ReportAllocs()
	s, _ := stations.New(tandem(b, 4, 2, time.Duration(float64(b.N)/0.7007*1e9)))
	if err := s.Shift(1, 0); err != nil {
		b.Fatal(err)
	}
}
