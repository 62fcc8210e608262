package lifedata

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// Law is a family of distributions of times.
type Law int

// The laws, in the order of their names in a table. Parameters are those of R's survreg and dgamma: shape and scale for Weibull
// and gamma; the scale (the median) and shape for log-logistic; mean and standard deviation of the logarithm for lognormal.
const (
	Exponential Law = iota
	Weibull
	Lognormal
	Gamma
	LogLogistic
	laws
)

// Laws are all of them.
func Laws() []Law {
	var list []Law
	for l := range laws {
		list = append(list, l)
	}
	return list
}

// form is what a law does: its words, and its functions of a time and the parameters as they are searched, which may be any numbers.
type form struct {
	name       string
	parameters []string
	// free turns searched parameters into those of the law; the derivative of each depends on that one alone.
	free func(x []float64) []float64
	// logs says which searched parameter is a logarithm.
	logs []bool
	// density and survival are logarithms, at a time above 0.
	density, survival func(t float64, p []float64) float64
	// moments are mean and standard deviation; infinite where there are none.
	moments func(p []float64) (mean, sd float64)
	// start is a guess from mean and standard deviation of the logarithms of the times.
	start func(mu, sigma float64) []float64
	// quantile is the time before which a share p of events come.
	quantile func(share float64, p []float64) float64
}

func (l Law) form() *form { return &forms[l] }

// String is the law's name as line files write it.
func (l Law) String() string { return forms[l].name }

// Parameters are the names of the law's parameters.
func (l Law) Parameters() []string { return forms[l].parameters }

// Quantile is the time before which a share of events come, 0 < share < 1, for parameters of the law.
func (l Law) Quantile(share float64, p []float64) float64 { return forms[l].quantile(share, p) }

// Moments are the mean and the standard deviation of the law with these parameters; infinite where there are none.
func (l Law) Moments(p []float64) (mean, sd float64) { return forms[l].moments(p) }

// Survival is the share of times longer than t, t above 0.
func (l Law) Survival(t float64, p []float64) float64 { return math.Exp(forms[l].survival(t, p)) }

var positive = func(x []float64) []float64 {
	p := make([]float64, len(x))
	for i := range x {
		p[i] = math.Exp(x[i])
	}
	return p
}

var forms = [laws]form{
	Exponential: {name: "exponential", parameters: []string{"mean"}, free: positive, logs: []bool{true},
		density:  func(t float64, p []float64) float64 { return -math.Log(p[0]) - t/p[0] },
		survival: func(t float64, p []float64) float64 { return -t / p[0] },
		moments:  func(p []float64) (float64, float64) { return p[0], p[0] },
		start:    func(mu, _ float64) []float64 { return []float64{mu + 0.5772} },
		quantile: func(share float64, p []float64) float64 { return -p[0] * math.Log1p(-share) },
	},
	Weibull: {name: "weibull", parameters: []string{"shape", "scale"}, free: positive, logs: []bool{true, true},
		density: func(t float64, p []float64) float64 {
			z := math.Log(t / p[1])
			return math.Log(p[0]/t) + p[0]*z - math.Exp(p[0]*z)
		},
		survival: func(t float64, p []float64) float64 { return -math.Pow(t/p[1], p[0]) },
		moments: func(p []float64) (float64, float64) {
			g1, g2 := math.Gamma(1+1/p[0]), math.Gamma(1+2/p[0])
			return p[1] * g1, p[1] * math.Sqrt(max(0, g2-g1*g1))
		},
		start:    func(mu, sigma float64) []float64 { return []float64{math.Log(1.2825 / sigma), mu + 0.45*sigma} },
		quantile: func(share float64, p []float64) float64 { return p[1] * math.Pow(-math.Log1p(-share), 1/p[0]) },
	},
	Lognormal: {name: "lognormal", parameters: []string{"mu", "sigma"}, logs: []bool{false, true},
		free: func(x []float64) []float64 { return []float64{x[0], math.Exp(x[1])} },
		density: func(t float64, p []float64) float64 {
			z := (math.Log(t) - p[0]) / p[1]
			return -math.Log(t*p[1]) - 0.5*math.Log(2*math.Pi) - z*z/2
		},
		survival: func(t float64, p []float64) float64 { return logUpperNormal((math.Log(t) - p[0]) / p[1]) },
		moments: func(p []float64) (float64, float64) {
			m := math.Exp(p[0] + p[1]*p[1]/2)
			return m, m * math.Sqrt(math.Expm1(p[1]*p[1]))
		},
		start: func(mu, sigma float64) []float64 { return []float64{mu, math.Log(sigma)} },
		quantile: func(share float64, p []float64) float64 {
			return math.Exp(p[0] + p[1]*distuv.UnitNormal.Quantile(share))
		},
	},
	Gamma: {name: "gamma", parameters: []string{"shape", "scale"}, free: positive, logs: []bool{true, true},
		density: func(t float64, p []float64) float64 {
			g, _ := math.Lgamma(p[0])
			return (p[0]-1)*math.Log(t) - t/p[1] - p[0]*math.Log(p[1]) - g
		},
		survival: func(t float64, p []float64) float64 { return logUpperGamma(p[0], t/p[1]) },
		moments:  func(p []float64) (float64, float64) { return p[0] * p[1], math.Sqrt(p[0]) * p[1] },
		start: func(mu, sigma float64) []float64 {
			shape := 1 / max(0.05, math.Min(20, sigma*sigma))
			return []float64{math.Log(shape), mu + sigma*sigma/2 - math.Log(shape)}
		},
		quantile: func(share float64, p []float64) float64 { return p[1] * mathext.GammaIncRegInv(p[0], share) },
	},
	LogLogistic: {name: "log-logistic", parameters: []string{"shape", "scale"}, free: positive, logs: []bool{true, true},
		density: func(t float64, p []float64) float64 {
			z := p[0] * math.Log(t/p[1])
			return math.Log(p[0]/t) + z - 2*log1pExp(z)
		},
		survival: func(t float64, p []float64) float64 { return -log1pExp(p[0] * math.Log(t/p[1])) },
		moments:  logLogisticMoments,
		start:    func(mu, sigma float64) []float64 { return []float64{math.Log(1.8138 / sigma), mu} },
		quantile: func(share float64, p []float64) float64 { return p[1] * math.Pow(share/(1-share), 1/p[0]) },
	},
}

// logLogisticMoments has a mean for shapes above 1 and a standard deviation for shapes above 2.
func logLogisticMoments(p []float64) (mean, sd float64) {
	a := math.Pi / p[0]
	if p[0] <= 1 {
		return math.Inf(1), math.Inf(1)
	}
	mean = p[1] * a / math.Sin(a)
	if p[0] <= 2 {
		return mean, math.Inf(1)
	}
	return mean, p[1] * math.Sqrt(max(0, 2*a/math.Sin(2*a)-a*a/(math.Sin(a)*math.Sin(a))))
}

// log1pExp is log(1 + exp(z)) for any z.
func log1pExp(z float64) float64 {
	if z > 35 {
		return z
	}
	return math.Log1p(math.Exp(z))
}

// logUpperNormal is the logarithm of the upper tail of the normal distribution; far out by its asymptotic series.
func logUpperNormal(z float64) float64 {
	if z < 30 {
		return math.Log(math.Erfc(z/math.Sqrt2) / 2)
	}
	return -z*z/2 - math.Log(z) - 0.5*math.Log(2*math.Pi) - 1/(z*z)
}

// logUpperGamma is the logarithm of the regularised upper incomplete gamma function; far out by the first terms of its series.
func logUpperGamma(shape, x float64) float64 {
	if q := mathext.GammaIncRegComp(shape, x); q > 1e-290 {
		return math.Log(q)
	}
	g, _ := math.Lgamma(shape)
	return (shape-1)*math.Log(x) - x - g + math.Log1p((shape-1)/x)
}
