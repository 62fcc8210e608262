package decisions_test

import (
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// longerDwell are a seal dwell 5 % longer on the bench line and its variants. At the default setting the sealer is done before the
// pace period, with the longer dwell too, so that hardly a shift differs by a carton: the ratio there is no feat.
var longerDwell = []struct {
	name, change string
	overrides    []string
}{
	{"setting 1500", "sealer.dwell=1.2075 s", nil},
	{"setting 1800", "sealer.dwell=1.2075 s", []string{"setting=1800 cartons/h"}},
	{"dwell 1.60 s", "sealer.dwell=1.68 s", []string{"sealer.dwell=1.6 s"}},
}

// Common random numbers make the variance of the paired difference at least ten times smaller than that of independent runs.
func TestCommonRandomNumbersPay(t *testing.T) {
	for _, v := range longerDwell {
		r := compared(t, example(t, "bench-line", v.overrides...), scenarios.Options{Seed: 1}, decisions.CompareSpec{Replications: 400}, "longer: "+v.change).Cases[0]
		if paired, independent := r.SD*r.SD, r.Independent*r.Independent; 10*paired > independent {
			t.Errorf("%s: variance %.1f in pairs, %.1f independent", v.name, paired, independent)
		}
	}
}

// BenchmarkCommonRandomNumbers reports how many times smaller the variance of a paired difference is than that of independent
// runs. A ratio of 0 stands for a difference without any variance.
func BenchmarkCommonRandomNumbers(b *testing.B) {
	for _, v := range longerDwell {
		b.Run(v.name, func(b *testing.B) {
			base := example(b, "bench-line", v.overrides...)
			var r decisions.CaseResult
			for b.Loop() {
				r = compared(b, base, scenarios.Options{Seed: 1}, decisions.CompareSpec{Replications: 200}, "longer: "+v.change).Cases[0]
			}
			ratio := 0.0
			if r.SD > 0 {
				ratio = r.Independent * r.Independent / (r.SD * r.SD)
			}
			b.ReportMetric(ratio, "variance-ratio")
			b.ReportMetric(r.SD*r.SD, "paired-variance")
		})
	}
}
