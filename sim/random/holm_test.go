package random_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// checks is a family of statistical checks, judged together.
type checks struct {
	names  []string
	values []float64 // the chance of a result at least so odd
}

func (c *checks) add(name string, p float64) {
	c.names, c.values = append(c.names, name), append(c.values, p)
}

// normal adds a statistic that should be standard normal.
func (c *checks) normal(name string, z float64) {
	c.add(name, math.Erfc(math.Abs(z)/math.Sqrt2))
}

// chiSquare adds counts against expected counts, with the given degrees of freedom.
func (c *checks) chiSquare(name string, counts, expected []float64, freedom int) {
	sum := 0.0
	for i := range counts {
		sum += (counts[i] - expected[i]) * (counts[i] - expected[i]) / expected[i]
	}
	c.add(name, distuv.ChiSquared{K: float64(freedom)}.Survival(sum))
}

// judge fails what Holm's rule (1979) rejects at 1 % over the family.
func (c *checks) judge(t *testing.T) {
	t.Helper()
	order := make([]int, len(c.values))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		switch {
		case c.values[i] < c.values[j]:
			return -1
		case c.values[i] > c.values[j]:
			return 1
		}
		return 0
	})
	for rank, i := range order {
		if !(c.values[i] <= 0.01/float64(len(order)-rank)) {
			t.Logf("%d checks; oddest left: %s, p = %.3g", len(order), c.names[i], c.values[i])
			return
		}
		t.Errorf("%s: p = %.3g", c.names[i], c.values[i])
	}
}
