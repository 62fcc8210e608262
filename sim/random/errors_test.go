package random_test

import (
	"math"
	"regexp"
	"testing"
	"time"

	"dwellcast/sim/random"
)

// Impossible parameters are refused in words, with a hint.
func TestImpossibleParameters(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		want string
		err  error
	}{
		{"constant: value is -1; give a number of 0 or more", errOf(random.Constant(-1))},
		{"constant: value is NaN; give a number of 0 or more", errOf(random.Constant(nan))},
		{"uniform: low 4 is above high 1; swap them or correct one", errOf(random.Uniform(4, 1))},
		{"uniform: high is +Inf; give a number of 0 or more", errOf(random.Uniform(4, inf))},
		{"triangular: low 3 is above likely 2; swap them or correct one", errOf(random.Triangular(3, 2, 5))},
		{"triangular: likely 6 is above high 5; swap them or correct one", errOf(random.Triangular(3, 6, 5))},
		{"triangular: low is -3; give a number of 0 or more", errOf(random.Triangular(-3, 2, 5))},
		{"exponential: mean is 0; give a number above 0", errOf(random.Exponential(0))},
		{"exponential: mean is +Inf; give a number above 0", errOf(random.Exponential(inf))},
		{"erlang: k is 0; give a whole number of stages, 1 to 1000000", errOf(random.Erlang(0, 1))},
		{"erlang: mean is -2; give a number above 0", errOf(random.Erlang(3, -2))},
		{"gamma: cv is 0; give a number above 0", errOf(random.Gamma(3, 0))},
		{"gamma: cv is 11; give 0.001 to 10, or a constant where nothing varies", errOf(random.Gamma(3, 11))},
		{"gamma: shape is NaN; give 0.01 to 1e+06, where 1 is the exponential law", errOf(random.GammaShapeScale(nan, 1))},
		{"gamma: scale is 0; give a number above 0", errOf(random.GammaShapeScale(1, 0))},
		{"weibull: cv is -1; give a number above 0", errOf(random.Weibull(3, -1))},
		{"weibull: mean is NaN; give a number above 0", errOf(random.Weibull(nan, 1))},
		{"weibull: shape is 0; give 0.1 to 1000, where 1 is the exponential law", errOf(random.WeibullShapeScale(0, 1))},
		{"weibull: scale is -1; give a number above 0", errOf(random.WeibullShapeScale(2, -1))},
		{"lognormal: cv is 0; give a number above 0", errOf(random.Lognormal(55, 0))},
		{"lognormal: mean is 0; give a number above 0", errOf(random.Lognormal(0, 1))},
		{"lognormal: median is 0; give a number above 0", errOf(random.LognormalMedianSigma(0, 1))},
		{"lognormal: sigma is 0; give 1e-06 to 5, the standard deviation of the logarithm", errOf(random.LognormalMedianSigma(1, 0))},
		{"normal: mean is -1; give a number of 0 or more", errOf(random.Normal(-1, 1))},
		{"normal: sd is 0; give a number above 0", errOf(random.Normal(1, 0))},
		{"empirical: no values; list at least one", errOf(random.Empirical(nil, nil))},
		{"empirical: 2 values but 1 weights; give one weight to each value, or none at all", errOf(random.Empirical([]float64{1, 2}, []float64{1}))},
		{"empirical: value 2 is -1; give a number of 0 or more", errOf(random.Empirical([]float64{1, -1}, nil))},
		{"empirical: weight 1 is NaN; give a number of 0 or more", errOf(random.Empirical([]float64{1}, []float64{nan}))},
		{"empirical: the weights sum to 0; give at least one a weight above 0", errOf(random.Empirical([]float64{1, 2}, []float64{0, 0}))},
		{"geometric: mean 1 is below the step 2; give a mean of at least one step", errOf(random.Geometric(1, 2))},
		{"geometric: step is 0; give a number above 0", errOf(random.Geometric(1, 0))},
		{"chance is 1.2; give a probability from 0 to 1", errOf(random.PerAct(1.2))},
		{"chance is NaN; give a probability from 0 to 1", errOf(random.PerAct(nan))},
		{"recorded: no values; list at least one", errOf(random.Recorded(nil))},
		{"recorded: value 2 is -1s; give a time from 0 to 73 years", errOf(random.Recorded([]time.Duration{1, -time.Second}))},
	} {
		if c.err == nil || c.err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", c.err, c.want)
		}
		if !regexp.MustCompile(`^[a-z][^;]*; [^;]*[^.]$`).MatchString(c.want) {
			t.Errorf("%q does not follow the rule for messages", c.want)
		}
	}
}

func errOf[T any](_ T, err error) error { return err }

// The widest parameters that are allowed must still work.
func TestParametersAtTheirLimits(t *testing.T) {
	for _, made := range []func() (random.Distribution, error){
		func() (random.Distribution, error) { return random.Gamma(3, 0.001) },
		func() (random.Distribution, error) { return random.Gamma(3, 10) },
		func() (random.Distribution, error) { return random.Erlang(1_000_000, 3) },
		func() (random.Distribution, error) { return random.Weibull(3, 0.01) },
		func() (random.Distribution, error) { return random.Weibull(3, 100) },
		func() (random.Distribution, error) { return random.WeibullShapeScale(0.1, 3) },
		func() (random.Distribution, error) { return random.WeibullShapeScale(1000, 3) },
		func() (random.Distribution, error) { return random.Lognormal(3, 1e-6) },
		func() (random.Distribution, error) { return random.Lognormal(3, 1000) },
		func() (random.Distribution, error) { return random.LognormalMedianSigma(3, 5) },
		func() (random.Distribution, error) { return random.Normal(1e9, 1e-3) },
		func() (random.Distribution, error) { return random.Normal(1e-9, 1e3) },
		func() (random.Distribution, error) { return random.Geometric(2, 2) },
		func() (random.Distribution, error) { return random.Geometric(1e15, 1) },
	} {
		d, err := made()
		if err != nil {
			t.Error(err)
			continue
		}
		before := 0.0
		for _, p := range chances() {
			x := d.Quantile(p)
			if math.IsNaN(x) || math.IsInf(x, 0) || x < before {
				t.Errorf("%v: quantile of %g is %g after %g", d, p, x, before)
			}
			before = x
		}
		if m, v := d.Mean(), d.Variance(); !(m > 0) || !(v >= 0) || math.IsInf(m+v, 0) {
			t.Errorf("%v: mean %g, variance %g", d, m, v)
		}
	}
}
