package random

import (
	"math"
	"testing"
)

var tableShapes = []float64{0.01, 0.03, 0.1, 0.3, 0.5, 0.9, 1.5, 2, 3, 7, 11.9, 12, 30, 100, 1e4, 1e6}

// Between its knots the table must agree with the solved quantile.
func TestGammaTableAgainstSolved(t *testing.T) {
	for _, shape := range tableShapes {
		table := newGammaTable(standardGamma(shape))
		worst := 0.0
		for z := -8.2; z < 8.2; z += 0.1013 {
			below, above := normalTails(z)
			p := below
			if z > 0 {
				p = 1 - above
			}
			want := table.law.solve(p, 1-p, table.law.lowestStart(z))
			if math.Exp(want) == 0 {
				continue
			}
			worst = max(worst, math.Abs(table.logRatio(p)-want))
		}
		t.Logf("shape %g: worst relative error %.2g", shape, worst)
		if worst > 1e-11 {
			t.Errorf("shape %g: the table is off by %.2g of the quantile, want at most 1e-11", shape, worst)
		}
	}
}
func BenchmarkGammaTable(b *testing.B) {
	for _, shape := range []float64{0.5, 4, 1e3, 1e6} {
		b.Run("", func(b *testing.B) {
			for b.Loop() {
				newGammaTable(standardGamma(shape))
			}
		})
	}
}
