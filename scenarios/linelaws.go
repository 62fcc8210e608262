package scenarios

import (
	"fmt"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
)

// lawReader reads the parameters of one law.
type lawReader struct {
	*lineReader
	dimension quantity.Dimension // quantity.Time or quantity.Count
	node      *document.Node
}

// laws are the laws of a line file by name, but for recorded times.
var laws = map[string]func(*lawReader) (random.Distribution, error){
	"constant":    (*lawReader).constant,
	"uniform":     (*lawReader).uniform,
	"triangular":  (*lawReader).triangular,
	"exponential": (*lawReader).exponential,
	"erlang":      (*lawReader).erlang,
	"gamma":       (*lawReader).gamma,
	"weibull":     (*lawReader).weibull,
	"lognormal":   (*lawReader).lognormal,
	"normal":      (*lawReader).normal,
	"geometric":   (*lawReader).geometric,
	"empirical":   (*lawReader).empirical,
}

// size is a parameter with a unit, in seconds or pieces.
func (l *lawReader) size(n *document.Node) float64 {
	unit, most := "s", "100 years"
	if l.dimension == quantity.Count {
		unit, most = "each", "1000000000000 cartons"
	}
	return n.Measure(&l.p, l.dimension, unit, document.Limit{Min: "0 " + unit, Max: most})
}

// fields reads the parameters, all of which must be there.
func (l *lawReader) fields(read func(f *document.Fields)) {
	f := l.node.Map(&l.p)
	read(f)
	f.Done()
}

func (l *lawReader) need(f *document.Fields, key string) float64 {
	return l.size(f.Require(key, l.dimension.Example()))
}

// plain is a parameter without a unit.
func (l *lawReader) plain(f *document.Fields, key, example string) float64 {
	return f.Require(key, example).Number(&l.p)
}

func (l *lawReader) constant() (random.Distribution, error) { return random.Constant(l.size(l.node)) }

func (l *lawReader) uniform() (random.Distribution, error) {
	var from, to float64
	l.fields(func(f *document.Fields) { from, to = l.need(f, "from"), l.need(f, "to") })
	return random.Uniform(from, to)
}

func (l *lawReader) triangular() (random.Distribution, error) {
	var low, likely, high float64
	l.fields(func(f *document.Fields) { low, likely, high = l.need(f, "low"), l.need(f, "likely"), l.need(f, "high") })
	return random.Triangular(low, likely, high)
}

// exponential is given by its mean, with or without the word.
func (l *lawReader) exponential() (random.Distribution, error) {
	if l.node.Kind() != document.Map || l.node.IsAssumption() {
		return random.Exponential(l.size(l.node))
	}
	var mean float64
	l.fields(func(f *document.Fields) { mean = l.need(f, "mean") })
	return random.Exponential(mean)
}

func (l *lawReader) erlang() (random.Distribution, error) {
	var mean float64
	var stages int
	l.fields(func(f *document.Fields) {
		mean, stages = l.need(f, "mean"), f.Require("stages", "4").Int(&l.p)
	})
	return random.Erlang(stages, mean)
}

func (l *lawReader) gamma() (random.Distribution, error) {
	if shape, scale, given := l.shaped(); given {
		return random.GammaShapeScale(shape, scale)
	}
	mean, cv := l.spread()
	return random.Gamma(mean, cv)
}

func (l *lawReader) weibull() (random.Distribution, error) {
	if shape, scale, given := l.shaped(); given {
		return random.WeibullShapeScale(shape, scale)
	}
	mean, cv := l.spread()
	return random.Weibull(mean, cv)
}

// shaped reads shape and scale, if the law is given by them.
func (l *lawReader) shaped() (shape, scale float64, given bool) {
	if !l.node.Has("shape") && !l.node.Has("scale") {
		return 0, 0, false
	}
	l.fields(func(f *document.Fields) { shape, scale = l.plain(f, "shape", "2"), l.need(f, "scale") })
	return shape, scale, true
}

// spread reads mean and coefficient of variation.
func (l *lawReader) spread() (mean, cv float64) {
	l.fields(func(f *document.Fields) { mean, cv = l.need(f, "mean"), l.plain(f, "cv", "0.5") })
	return mean, cv
}

func (l *lawReader) lognormal() (random.Distribution, error) {
	if !l.node.Has("median") && !l.node.Has("sigma") {
		mean, cv := l.spread()
		return random.Lognormal(mean, cv)
	}
	var median, sigma float64
	l.fields(func(f *document.Fields) { median, sigma = l.need(f, "median"), l.plain(f, "sigma", "0.8") })
	return random.LognormalMedianSigma(median, sigma)
}

func (l *lawReader) normal() (random.Distribution, error) {
	if !l.node.Has("sd") {
		mean, cv := l.spread()
		return random.Normal(mean, float64(mean*cv))
	}
	var mean, sd float64
	l.fields(func(f *document.Fields) { mean, sd = l.need(f, "mean"), l.need(f, "sd") })
	return random.Normal(mean, sd)
}

func (l *lawReader) geometric() (random.Distribution, error) {
	var mean, step float64
	l.fields(func(f *document.Fields) { mean, step = l.need(f, "mean"), l.need(f, "step") })
	return random.Geometric(mean, step)
}

// empirical is a list of values, or values with weights.
func (l *lawReader) empirical() (random.Distribution, error) {
	if l.node.Kind() == document.List {
		return random.Empirical(l.sizes(l.node), nil)
	}
	var values, weights []float64
	l.fields(func(f *document.Fields) {
		values = l.sizes(f.Require("values", "[0.9 s, 1.1 s]"))
		for _, n := range f.Require("weights", "[3, 1]").List(&l.p) {
			weights = append(weights, n.Number(&l.p))
		}
	})
	return random.Empirical(values, weights)
}

func (l *lawReader) sizes(list *document.Node) []float64 {
	var sizes []float64
	for _, n := range list.List(&l.p) {
		sizes = append(sizes, l.size(n))
	}
	return sizes
}

// scaledLaw is k times the values of a law.
type scaledLaw struct {
	random.Distribution
	k float64
}

// Quantile of the scaled values.
func (s scaledLaw) Quantile(p float64) float64 { return float64(s.k * s.Distribution.Quantile(p)) }

// Mean of the scaled values.
func (s scaledLaw) Mean() float64 { return float64(s.k * s.Distribution.Mean()) }

// Variance of the scaled values.
func (s scaledLaw) Variance() float64 { return float64(float64(s.k*s.k) * s.Distribution.Variance()) }

// String names the law and its scale.
func (s scaledLaw) String() string { return fmt.Sprintf("%.6g x %v", s.k, s.Distribution) }
