package random

import (
	"errors"
	"fmt"
	"sort"
)

// empirical gives the listed values with the listed chances.
type empirical struct {
	values     []float64 // rising
	cumulative []float64 // chance of this value or a smaller one; the last is 1
	mean       float64
	variance   float64
}

// Empirical returns the law that gives values[i] (>= 0) with a chance in
// proportion to weights[i] (>= 0). No weights at all means equal chances.
func Empirical(values, weights []float64) (Distribution, error) {
	if weights == nil {
		weights = equal(len(values))
	}
	if err := checkWeighted(values, weights); err != nil {
		return nil, err
	}
	order := make([]int, 0, len(values))
	for i := range values {
		if weights[i] > 0 {
			order = append(order, i)
		}
	}
	sort.SliceStable(order, func(i, j int) bool { return values[order[i]] < values[order[j]] })
	return newEmpirical(values, weights, order), nil
}

func equal(n int) []float64 {
	weights := make([]float64, n)
	for i := range weights {
		weights[i] = 1
	}
	return weights
}

func checkWeighted(values, weights []float64) error {
	switch {
	case len(values) == 0:
		return errors.New("empirical: no values; list at least one")
	case len(values) != len(weights):
		return fmt.Errorf("empirical: %d values but %d weights; give one weight to each value, or none at all",
			len(values), len(weights))
	}
	sum := 0.0
	for i := range values {
		if err := first(nonNegative("empirical", fmt.Sprintf("value %d", i+1), values[i]),
			nonNegative("empirical", fmt.Sprintf("weight %d", i+1), weights[i])); err != nil {
			return err
		}
		sum += weights[i]
	}
	if !finite(sum) || sum <= 0 {
		return fmt.Errorf("empirical: the weights sum to %g; give at least one a weight above 0", sum)
	}
	return nil
}

// newEmpirical lays out the values at the given indices, which are in rising
// order of value.
func newEmpirical(values, weights []float64, order []int) *empirical {
	total := 0.0
	for _, i := range order {
		total += weights[i]
	}
	d := &empirical{values: make([]float64, len(order)), cumulative: make([]float64, len(order))}
	sum := 0.0
	for n, i := range order {
		sum += weights[i]
		d.values[n], d.cumulative[n] = values[i], sum/total
		d.mean += float64(values[i] * (weights[i] / total))
	}
	for _, i := range order {
		d.variance += float64(squared(values[i]-d.mean) * (weights[i] / total))
	}
	if d.values[0] == d.values[len(order)-1] {
		d.mean, d.variance = d.values[0], 0
	}
	return d
}

func (d *empirical) Quantile(p float64) float64 {
	low, high := 0, len(d.values)-1
	for low < high {
		middle := (low + high) / 2
		if d.cumulative[middle] < p {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return d.values[low]
}

func (d *empirical) Mean() float64     { return d.mean }
func (d *empirical) Variance() float64 { return d.variance }
func (d *empirical) String() string {
	return fmt.Sprintf("empirical(%d values, %g to %g)", len(d.values), d.values[0], d.values[len(d.values)-1])
}
