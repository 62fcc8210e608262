package lifedata

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"dwellcast/sim/stats"
)

// fit turns the peak of a search into parameters of the law, in the unit of the sample.
func (s *search) fit(x []float64, confidence float64) (*Fit, error) {
	events := Events(s.sample)
	f := &Fit{Law: s.law, LogLik: s.logLik(x) - float64(events)*math.Log(s.unit)}
	f.AIC = 2*float64(len(x)) - 2*f.LogLik
	covariance, known := s.covariance(x)
	z := distuv.UnitNormal.Quantile((1 + confidence) / 2)
	values := s.form.free(x)
	for i := range x {
		width := math.Inf(1)
		if known {
			width = z * math.Sqrt(covariance.At(i, i))
		}
		f.Parameters = append(f.Parameters, s.parameter(i, values[i], width, confidence))
	}
	mean, sd := s.form.moments(values)
	f.Mean, f.CV = s.mean(x, mean*s.unit, covariance, known, z, confidence), sd/mean
	if math.IsInf(mean, 1) {
		f.CV = math.Inf(1)
	}
	return f, nil
}

// parameter is one of the law's, with bounds width away: by a factor where its logarithm was searched.
func (s *search) parameter(i int, value, width, confidence float64) stats.Interval {
	iv := stats.Interval{Mean: value, Low: value - width, High: value + width, N: len(s.sample), Confidence: confidence}
	if s.form.logs[i] {
		iv.Low, iv.High = value*math.Exp(-width), value*math.Exp(width)
	}
	switch s.form.parameters[i] {
	case "mean", "scale":
		iv.Mean, iv.Low, iv.High = iv.Mean*s.unit, iv.Low*s.unit, iv.High*s.unit
	case "mu":
		shift := math.Log(s.unit)
		iv.Mean, iv.Low, iv.High = iv.Mean+shift, iv.Low+shift, iv.High+shift
	}
	return iv
}

// mean is that of the law, its interval by the delta method on the logarithm.
func (s *search) mean(x []float64, mean float64, covariance *mat.SymDense, known bool, z, confidence float64) stats.Interval {
	iv := stats.Interval{Mean: mean, Low: math.Inf(-1), High: math.Inf(1), N: len(s.sample), Confidence: confidence}
	if !known || math.IsInf(mean, 1) {
		return iv
	}
	slope := make([]float64, len(x))
	for i := range x {
		up, down := append([]float64(nil), x...), append([]float64(nil), x...)
		up[i] += step
		down[i] -= step
		above, _ := s.form.moments(s.form.free(up))
		below, _ := s.form.moments(s.form.free(down))
		slope[i] = math.Log(above/below) / (2 * step)
	}
	variance := 0.0
	for i := range x {
		for j := range x {
			variance += slope[i] * slope[j] * covariance.At(i, j)
		}
	}
	width := z * math.Sqrt(variance)
	iv.Low, iv.High = mean*math.Exp(-width), mean*math.Exp(width)
	return iv
}

func sortByAIC(fits []*Fit) {
	slices.SortStableFunc(fits, func(a, b *Fit) int { return cmp.Compare(a.AIC, b.AIC) })
}
