package motion

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// TolerableDeficiency is by how much a package may fall short of its declared content, both in ml (or both in g), 0
// (excluded) to 50000: OIML R 87 (2004), the table of tolerable deficiencies; up to 10000 the same as Directive
// 76/211/EEC, Annex I. Where the table gives a percentage the result is rounded up to the next tenth.
func TolerableDeficiency(declared float64) (float64, error) {
	switch {
	case !(declared > 0 && declared <= 50000):
		return 0, fmt.Errorf("declared content of %g ml: the table covers more than 0 up to 50000", declared)
	case declared <= 50:
		return tenthUp(declared * 9 / 100), nil
	case declared <= 100:
		return 4.5, nil
	case declared <= 200:
		return tenthUp(declared * 4.5 / 100), nil
	case declared <= 300:
		return 9, nil
	case declared <= 500:
		return tenthUp(declared * 3 / 100), nil
	case declared <= 1000:
		return 15, nil
	case declared <= 10000:
		return tenthUp(declared * 1.5 / 100), nil
	case declared <= 15000:
		return 150, nil
	}
	return tenthUp(declared / 100), nil
}

// tenthUp rounds up to the next tenth; what is a tenth to rounding stays.
func tenthUp(x float64) float64 { return math.Ceil(x*10-1e-9) / 10 }

// SampleCorrectionFactor is t(0.975, n-1)/sqrt(n): the mean of n packages, 2 or more, may fall short of the declared
// content by this many sample standard deviations before a lot is rejected. NIST Handbook 133, Appendix A, Table 2-1.
func SampleCorrectionFactor(n int) (float64, error) {
	if n < 2 {
		return 0, fmt.Errorf("sample of %d packages: a spread needs 2 or more", n)
	}
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(n - 1)}
	return t.Quantile(0.975) / math.Sqrt(float64(n)), nil
}

// Dosing is how a dose scatters about its mean; all in one unit, ml or g.
type Dosing struct {
	Declared float64 // content on the label, more than 0
	Mean     float64 // dose set, more than 0
	Spread   float64 // standard deviation of the dose, 0 or more
}

// Giveaway is the mean filled beyond the declared content; negative if underfilled.
func (d Dosing) Giveaway() float64 { return d.Mean - d.Declared }

// ShareShort is the share of cartons that fall short of the declared content by more than short (0 or more), for a
// normal dose.
func (d Dosing) ShareShort(short float64) float64 {
	floor := d.Declared - short
	if d.Spread <= 0 {
		if d.Mean < floor {
			return 1
		}
		return 0
	}
	return distuv.UnitNormal.CDF((floor - d.Mean) / d.Spread)
}

// LeastGiveaway is by how much the mean must exceed the declared content, 0 or more, so that at most the given share
// (0 to 1, both excluded) of cartons falls short of it by more than short: z spread - short, for a normal dose. The
// mean itself is never allowed below the declared content.
func (d Dosing) LeastGiveaway(short, share float64) float64 {
	return max(0, distuv.UnitNormal.Quantile(1-share)*d.Spread-short)
}
