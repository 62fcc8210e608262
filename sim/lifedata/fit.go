package lifedata

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"

	"dwellcast/sim/stats"
)

// Fit is a law fitted to a sample by maximum likelihood.
type Fit struct {
	Law Law
	// Parameters in the order of Law.Parameters, each with its interval: Wald's, on the logarithm of a parameter that is above 0.
	Parameters []stats.Interval
	// LogLik is the logarithm of the likelihood at its peak; AIC is 2 k - 2 LogLik with k parameters (Akaike 1974).
	LogLik, AIC float64
	// Mean of the fitted law, with the interval by the delta method on its logarithm, and its coefficient of variation; infinite
	// where the law has none.
	Mean stats.Interval
	CV   float64
}

// Values are the parameters without their intervals.
func (f *Fit) Values() []float64 {
	var values []float64
	for _, p := range f.Parameters {
		values = append(values, p.Mean)
	}
	return values
}

// FitLaw fits one law. A time that ended adds the logarithm of the density to the likelihood, one that was cut off that of the
// survival (Meeker and Escobar 1998, ch. 7, from memory). The sample must pass Check; a law of two parameters needs events that
// differ.
func FitLaw(law Law, sample []Time, confidence float64) (*Fit, error) {
	if err := Check(sample); err != nil {
		return nil, err
	}
	if law != Exponential && same(sample) {
		return nil, ErrSame
	}
	unit := Total(sample) / float64(Events(sample)) // keeps the search well scaled in any unit
	search := newSearch(law, sample, unit)
	peak, err := search.climb()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", law, err)
	}
	return search.fit(peak, confidence)
}

// FitAll fits every law that the sample allows, the lowest AIC first.
func FitAll(sample []Time, confidence float64) ([]*Fit, error) {
	if err := Check(sample); err != nil {
		return nil, err
	}
	var fits []*Fit
	for _, law := range Laws() {
		if f, err := FitLaw(law, sample, confidence); err == nil {
			fits = append(fits, f)
		}
	}
	sortByAIC(fits)
	return fits, nil
}

// search is a likelihood in the unit in which it is climbed.
type search struct {
	law    Law
	form   *form
	sample []Time
	unit   float64
}

func newSearch(law Law, sample []Time, unit float64) *search {
	s := &search{law: law, form: law.form(), unit: unit}
	for _, t := range sample {
		s.sample = append(s.sample, Time{t.Length / unit, t.Ended})
	}
	return s
}

// logLik is the logarithm of the likelihood at searched parameters; minus infinity where they are out of bounds.
func (s *search) logLik(x []float64) float64 {
	for _, v := range x {
		if math.Abs(v) > 50 {
			return math.Inf(-1)
		}
	}
	p, sum := s.form.free(x), 0.0
	for _, t := range s.sample {
		if t.Ended {
			sum += s.form.density(t.Length, p)
		} else {
			sum += s.form.survival(t.Length, p)
		}
	}
	if math.IsNaN(sum) {
		return math.Inf(-1)
	}
	return sum
}

// start is where the climb begins: from the moments of the logarithms.
func (s *search) start() []float64 {
	var m stats.Moments
	for _, t := range s.sample {
		m.Add(math.Log(t.Length))
	}
	sigma := m.StdDev()
	if !(sigma > 0.01) {
		sigma = 0.01
	}
	return s.form.start(m.Mean(), sigma)
}

// climb finds the peak: the simplex of Nelder and Mead (1965) brings it near, Newton's steps onto it.
func (s *search) climb() ([]float64, error) {
	problem := optimize.Problem{Func: func(x []float64) float64 { return -s.logLik(x) }}
	settings := &optimize.Settings{Converger: &optimize.FunctionConverge{Absolute: 1e-12, Iterations: 200}, FuncEvaluations: 20000}
	result, err := optimize.Minimize(problem, s.start(), settings, &optimize.NelderMead{})
	if result == nil {
		return nil, err
	}
	x := result.X
	for range 20 {
		step, ok := s.newton(x)
		if !ok {
			break
		}
		next := make([]float64, len(x))
		for i := range x {
			next[i] = x[i] + step[i]
		}
		if s.logLik(next) < s.logLik(x) {
			break
		}
		x = next
	}
	if math.IsInf(s.logLik(x), 0) {
		return nil, fmt.Errorf("the likelihood has no peak")
	}
	return x, nil
}

// step is by how much parameters are moved for derivatives.
const step = 1e-4

// gradient and curvature of the likelihood, by central differences.
func (s *search) gradient(x []float64) []float64 {
	g := make([]float64, len(x))
	for i := range x {
		g[i] = (s.moved(x, i, step, i, 0) - s.moved(x, i, -step, i, 0)) / (2 * step)
	}
	return g
}

func (s *search) curvature(x []float64) *mat.SymDense {
	const h = 1e-3
	n := len(x)
	c := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			v := (s.moved(x, i, h, j, h) - s.moved(x, i, h, j, -h) - s.moved(x, i, -h, j, h) + s.moved(x, i, -h, j, -h)) / (4 * h * h)
			c.SetSym(i, j, v)
		}
	}
	return c
}

// moved is the likelihood with parameter i moved by a, and j by b.
func (s *search) moved(x []float64, i int, a float64, j int, b float64) float64 {
	y := append([]float64(nil), x...)
	y[i] += a
	y[j] += b
	return s.logLik(y)
}

// newton is a step to the peak of the parabola through x; false where there is none.
func (s *search) newton(x []float64) ([]float64, bool) {
	covariance, ok := s.covariance(x)
	if !ok {
		return nil, false
	}
	g := s.gradient(x)
	step, moves := make([]float64, len(x)), 0.0
	for i := range x {
		for j := range x {
			step[i] += covariance.At(i, j) * g[j]
		}
		moves = max(moves, math.Abs(step[i]))
	}
	return step, moves > 1e-10 && moves < 1
}

// covariance of the estimates, the inverse of the observed information; false where the likelihood is not curved downwards.
func (s *search) covariance(x []float64) (*mat.SymDense, bool) {
	information := s.curvature(x)
	information.ScaleSym(-1, information)
	var factors mat.Cholesky
	if !factors.Factorize(information) {
		return nil, false
	}
	var inverse mat.SymDense
	return &inverse, factors.InverseTo(&inverse) == nil
}
