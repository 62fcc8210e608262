package stats

import "math"

// Truncation says how much of a series belongs to the warm-up.
type Truncation struct {
	Batches      int     // batches to drop
	Observations int     // observations to drop
	Mean         float64 // mean of the whole batches that remain
	Value        float64 // the statistic that was minimized
	Limit        int     // most batches that may be dropped; 0 when not assessed
}

// Assessed reports whether the series had at least two whole batches.
func (t Truncation) Assessed() bool { return !math.IsNaN(t.Value) }

// Steady reports whether the minimum lies before the last admissible point.
// Where it does not, the series has not settled within its first half and
// no part of it should be taken as steady state.
func (t Truncation) Steady() bool { return t.Assessed() && t.Batches < t.Limit }

// MSER5 is MSER on batches of five observations (White 1997; White, Cobb &
// Spratt 2000).
func MSER5(xs []float64) Truncation { return MSER(xs, 5) }

// MSER finds the warm-up by the marginal standard error rule: with k means
// Y of batches of size observations, drop the d batches that minimize
// sum over j > d of (Y_j - mean)^2 / (k-d)^2, where 0 <= d <= floor(k/2) and
// the mean is over the batches kept; of equal minima the smallest d. A last
// incomplete batch is left out.
func MSER(xs []float64, size int) Truncation {
	means := wholeBatchMeans(xs, size)
	k := len(means)
	best := Truncation{Mean: math.NaN(), Value: math.NaN()}
	if k < 2 {
		return best
	}
	var kept Moments
	for d := k - 1; d >= 0; d-- { // from the end, so that one pass does
		kept.Add(means[d])
		if d > k/2 {
			continue
		}
		value := kept.m2 / float64(kept.n*kept.n)
		if math.IsNaN(best.Value) || value <= best.Value {
			best = Truncation{Batches: d, Observations: d * size, Mean: kept.mean, Value: value}
		}
	}
	best.Limit = k / 2
	return best
}

// WelchMovingAverage smooths a series (usually the mean over replications)
// for judging the warm-up by eye (Welch 1983): entry i, from 1, is the mean
// of the 2w+1 points around it, or of the first 2i-1 points where i <= w. It
// has len(xs)-w entries; none when w is negative or not shorter than xs.
func WelchMovingAverage(xs []float64, w int) []float64 {
	if w < 0 || w >= len(xs) {
		return nil
	}
	smooth := make([]float64, len(xs)-w)
	for i := range smooth {
		reach := min(i, w)
		sum := 0.0
		for _, x := range xs[i-reach : i+reach+1] {
			sum += x
		}
		smooth[i] = sum / float64(2*reach+1)
	}
	return smooth
}

// wholeBatchMeans are the means of successive batches of size observations.
func wholeBatchMeans(xs []float64, size int) []float64 {
	if size < 1 {
		return nil
	}
	means := make([]float64, len(xs)/size)
	for j := range means {
		sum := 0.0
		for _, x := range xs[j*size : (j+1)*size] {
			sum += x
		}
		means[j] = sum / float64(size)
	}
	return means
}
