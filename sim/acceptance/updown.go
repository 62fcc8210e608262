// Package acceptance says what an acceptance run can tell: how surely a machine of a given availability passes one, how long it must
// last to keep the risks of both sides, and what a run that was made has shown.
package acceptance

import (
	"errors"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// UpDown is a machine that runs and stands in turn, both times exponential, and runs at first.
type UpDown struct {
	// Up is the mean time between stops, Down the mean time to clear one; both above 0.
	Up, Down time.Duration
}

// WithAvailability is a machine with this mean time between stops that is up for this share of the time in the long run, 0 < share < 1.
func WithAvailability(up time.Duration, share float64) UpDown {
	return UpDown{up, time.Duration(float64(up) * (1 - share) / share)}
}

// Availability is the share of time that the machine is up in the long run.
func (m UpDown) Availability() float64 {
	return m.Up.Seconds() / (m.Up + m.Down).Seconds()
}

// Pass is the probability that the machine is up for at least the share line of a run, 0 < line < 1 (Takacs 1957): it is when the
// repairs of the stops that fall into line x length of running time fit into what is left of the run.
func (m UpDown) Pass(length time.Duration, line float64) float64 {
	up, down := line*length.Seconds()/m.Up.Seconds(), (1-line)*length.Seconds()/m.Down.Seconds()
	return pass(up, down)
}

// pass sums over the number of stops: Poisson of mean up, their repairs of mean 1 together no longer than down.
func pass(up, down float64) float64 {
	sum := math.Exp(-up)
	first, last := around(up)
	for n := max(1, first); n <= last; n++ {
		sum += poisson(n, up) * mathext.GammaIncReg(float64(n), down)
	}
	return min(1, sum)
}

// around are the counts that a Poisson number of this mean may have, all but 1e-15 of them.
func around(mean float64) (first, last int) {
	width := 9*math.Sqrt(mean) + 30
	return int(max(0, mean-width)), int(mean + width)
}

func poisson(n int, mean float64) float64 {
	g, _ := math.Lgamma(float64(n) + 1)
	return math.Exp(float64(n)*math.Log(mean) - mean - g)
}

// SD is the standard deviation of the share of time up in a long run, by the central limit theorem of alternating renewals (Cox 1962,
// ch. 7; from memory).
func (m UpDown) SD(length time.Duration) float64 {
	up, down, t := m.Up.Seconds(), m.Down.Seconds(), length.Seconds()
	return math.Sqrt(2*up*up*down*down/math.Pow(up+down, 3)) / math.Sqrt(t)
}

// Plan is a run and the share of time up from which it is passed, with the risks of both sides.
type Plan struct {
	Length time.Duration
	Line   float64
	// Seller is the chance that a machine as promised fails; Buyer that one to be refused passes.
	Seller, Buyer float64
}

// ErrNoPlan says that no run of at most a year keeps the risks.
var ErrNoPlan = errors.New("no run of up to a year keeps both risks")

// longest is the longest run looked at.
const longest = 366 * 24 * time.Hour

// FindPlan is the shortest run that keeps both risks for machines with this mean time between stops: one that is up for the share
// promised fails with at most the seller's risk, one that is up for the share refused passes with at most the buyer's.
func FindPlan(up time.Duration, promised, refused, seller, buyer float64) (Plan, error) {
	if !(0 < refused && refused < promised && promised < 1) {
		return Plan{}, fmt.Errorf("the availability promised (%g) must lie above the one refused (%g), both between 0 and 1", promised, refused)
	}
	good, bad := WithAvailability(up, promised), WithAvailability(up, refused)
	excess := func(length time.Duration) float64 {
		return bad.Pass(length, lineOf(good, length, 1-seller)) - buyer
	}
	low, high := up/100, up
	for excess(high) > 0 {
		if low, high = high, 2*high; high > longest {
			return Plan{}, ErrNoPlan
		}
	}
	for high-low > time.Second/100 {
		if mid := low + (high-low)/2; excess(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	line := lineOf(good, high, 1-seller)
	return Plan{high, line, 1 - good.Pass(high, line), bad.Pass(high, line)}, nil
}

// lineOf is the line that a machine passes with this chance.
func lineOf(m UpDown, length time.Duration, chance float64) float64 {
	low, high := 0.0, 1.0
	for range 60 {
		mid := (low + high) / 2
		if m.Pass(length, mid) >= chance {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// NormalPlan is FindPlan by the textbook's formula, which takes the share of time up as normal with the standard deviation of a long
// run.
func NormalPlan(up time.Duration, promised, refused, seller, buyer float64) Plan {
	z := distuv.UnitNormal.Quantile
	good, bad := WithAvailability(up, promised), WithAvailability(up, refused)
	a, b := z(1-seller)*good.SD(time.Second), z(1-buyer)*bad.SD(time.Second)
	seconds := math.Pow((a+b)/(promised-refused), 2)
	length := time.Duration(seconds * float64(time.Second))
	line := promised - a/math.Sqrt(seconds)
	return Plan{length, line, 1 - good.Pass(length, line), bad.Pass(length, line)}
}

// LineFor is the pass line of a run of a given length that a machine as promised fails with the seller's risk.
func LineFor(up time.Duration, promised float64, length time.Duration, seller float64) float64 {
	return lineOf(WithAvailability(up, promised), length, 1-seller)
}
