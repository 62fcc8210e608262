package decisions

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"dwellcast/sim/random"
)

// demandPoints is how many equally likely values stand for an uncertain demand.
const demandPoints = 1000

// Demand is how many good cartons a year are wanted: fixed, or uncertain.
type Demand struct {
	law    random.Distribution
	points []float64 // equally likely values, rising
}

// NewDemand takes the law of good cartons wanted a year.
func NewDemand(law random.Distribution) Demand {
	d := Demand{law: law}
	n := demandPoints
	if law.Variance() == 0 {
		n = 1
	}
	for k := range n {
		d.points = append(d.points, law.Quantile((float64(k)+0.5)/float64(n)))
	}
	return d
}

// Given says that there is a demand at all.
func (d Demand) Given() bool { return len(d.points) > 0 }

// Mean is the expected demand, cartons a year.
func (d Demand) Mean() float64 { return d.law.Mean() }

// Fixed says that it is not left to chance.
func (d Demand) Fixed() bool { return len(d.points) == 1 }

// String names the law.
func (d Demand) String() string { return d.law.String() }

// Quantile is the demand that is not exceeded with probability p, cartons a year.
func (d Demand) Quantile(p float64) float64 { return d.law.Quantile(p) }

// Chance is the probability that an output of a year, normal with this mean and standard deviation in cartons, makes the demand.
func (d Demand) Chance(mean, sd float64) float64 {
	sum := 0.0
	for _, x := range d.points {
		sum += atLeast(mean, sd, x)
	}
	return sum / float64(len(d.points))
}

func atLeast(mean, sd, x float64) float64 {
	if sd == 0 {
		if mean >= x {
			return 1
		}
		return 0
	}
	return distuv.UnitNormal.CDF((mean - x) / sd)
}

// Sold is the expectation of the lesser of output and demand, cartons a year: what is sold of a product that nobody wants more of.
func (d Demand) Sold(mean, sd float64) float64 {
	sum := 0.0
	for _, x := range d.points {
		sum += lesser(mean, sd, x)
	}
	return sum / float64(len(d.points))
}

// lesser is E min(Y, x) of a normal Y: mean F(z) - sd f(z) + x (1 - F(z)) with z = (x - mean)/sd.
func lesser(mean, sd, x float64) float64 {
	if sd == 0 {
		return min(mean, x)
	}
	z := (x - mean) / sd
	below := distuv.UnitNormal.CDF(z)
	return float64(mean*below) - float64(sd*distuv.UnitNormal.Prob(z)) + float64(x*(1-below))
}

// MeanNeeded is the least mean output a year, in cartons, that makes the demand with probability p, 0 < p < 1.
func (d Demand) MeanNeeded(p, sd float64) float64 {
	low, high := 0.0, slices.Max(d.points)+float64(40*sd)
	for range 200 {
		mid := (low + high) / 2
		if d.Chance(mid, sd) >= p {
			high = mid
		} else {
			low = mid
		}
		if high-low <= 1e-12*math.Abs(high) {
			break
		}
	}
	return high
}
