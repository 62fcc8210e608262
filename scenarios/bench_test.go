package scenarios_test

import (
	"testing"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// BenchmarkExample is one shift of each embedded line, on one core.
func BenchmarkExample(b *testing.B) {
	for _, name := range scenarios.Examples() {
		b.Run(name, func(b *testing.B) {
			f, err := scenarios.Open("example:"+name, nil)
			if err != nil {
				b.Fatal(err)
			}
			s, err := stations.New(f.Line)
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for i := range b.N {
				if err := s.Shift(1, i); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
