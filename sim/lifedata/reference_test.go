package lifedata_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"dwellcast/sim/lifedata"
)

// times reads a data set of testdata/data: a head, then time,event with event 0 for a time that was cut off.
func times(t *testing.T, name string) []lifedata.Time {
	t.Helper()
	f, err := os.Open("../../testdata/data/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var sample []lifedata.Time
	for _, r := range records[1:] {
		length, err := strconv.ParseFloat(r[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		sample = append(sample, lifedata.Time{Length: length, Ended: r[1] == "1"})
	}
	return sample
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

// TestPublishedFits holds fits against published values: rows TR001 to TR017 of testdata/trade.csv, whose columns name the sources.
func TestPublishedFits(t *testing.T) {
	type want struct {
		value, tolerance float64
	}
	for _, c := range []struct {
		row, data  string
		law        lifedata.Law
		parameters []want
		loglik     want
	}{
		{"TR001", "nist_8413_weibull", lifedata.Weibull, []want{{1.72080, 1e-4}, {606.528, 0.01}}, want{-75.1346, 1e-3}},
		{"TR004", "genfan", lifedata.Exponential, []want{{28703.33, 0.01}}, want{-135.17722, 1e-4}},
		{"TR009", "gehan6mp", lifedata.Weibull, []want{{1.353735, 1e-5}, {33.76515, 1e-3}}, want{-41.658678, 1e-5}},
		{"TR010", "aircondit", lifedata.Exponential, []want{{108.08333, 1e-5}}, want{-68.194830, 1e-5}},
		{"TR011", "aircondit", lifedata.Gamma, []want{{0.706493, 1e-4}, {152.986, 0.02}}, want{-67.645425, 1e-5}},
		{"TR014", "strikes", lifedata.Lognormal, []want{{3.0979165, 1e-6}, {1.2952364, 1e-6}}, want{-296.08399, 1e-5}},
		{"TR017", "ifluid34", lifedata.Weibull, []want{{0.770821, 1e-5}, {12.22222, 1e-4}}, want{math.NaN(), 0}},
		{"TR017", "ifluid34", lifedata.Lognormal, []want{{1.786393, 1e-5}}, want{math.NaN(), 0}},
	} {
		fit, err := lifedata.FitLaw(c.law, times(t, c.data), 0.95)
		if err != nil {
			t.Errorf("%s: %v", c.row, err)
			continue
		}
		for i, p := range c.parameters {
			near(t, c.row+" "+c.law.Parameters()[i], fit.Parameters[i].Mean, p.value, p.tolerance)
		}
		if !math.IsNaN(c.loglik.value) {
			near(t, c.row+" loglik", fit.LogLik, c.loglik.value, c.loglik.tolerance)
		}
	}
}

// TestPublishedChoice: row TR006, the order of the laws on the generator fans by AIC.
func TestPublishedChoice(t *testing.T) {
	fits, err := lifedata.FitAll(times(t, "genfan"), 0.95)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		law lifedata.Law
		aic float64
	}{{lifedata.Exponential, 272.3544}, {lifedata.Lognormal, 273.0993}, {lifedata.LogLogistic, 274.0167}, {lifedata.Gamma, 274.2653}, {lifedata.Weibull, 274.3054}} {
		if fits[i].Law != want.law {
			t.Errorf("place %d is %s, want %s", i+1, fits[i].Law, want.law)
		}
		near(t, want.law.String(), fits[i].AIC, want.aic, 1e-3)
	}
}

// TestPublishedTrend: row TR019, coal-mine disasters (Jarrett 1979): 191 dates, the first of them 15 March 1851, on a clock that runs
// from the beginning of 1851 to the end of 1962, which is 40907 days.
func TestPublishedTrend(t *testing.T) {
	at := 73.0
	moments := []float64{at}
	for _, x := range times(t, "coal") {
		at += x.Length
		moments = append(moments, at)
	}
	trend := lifedata.FindTrend(moments, 40907, false)
	near(t, "Laplace", trend.Laplace, -7.6782, 1e-3)
	if trend.P > 1e-10 || trend.Beta >= 1 || trend.PowerP > 1e-8 {
		t.Errorf("the disasters became rarer, but %+v", trend)
	}
}

// TestPublishedSurvival: row TR007, Kaplan-Meier of the generator fans with Greenwood's standard deviation.
func TestPublishedSurvival(t *testing.T) {
	steps := lifedata.KaplanMeier(times(t, "genfan"))
	at := func(x float64) (s lifedata.Step) {
		for _, step := range steps {
			if step.Time <= x {
				s = step
			}
		}
		return s
	}
	near(t, "S(1150)", at(1150).Survival, 0.956723, 1e-6)
	near(t, "SD(1150)", at(1150).SD, 0.0244418, 1e-6)
	near(t, "S(4600)", at(4600).Survival, 0.827234, 1e-6)
	near(t, "S(8750)", at(8750).Survival, 0.707038, 1e-6)
	near(t, "SD(8750)", at(8750).SD, 0.098042, 1e-6)
}

// TestPublishedMoments: row TR003, mean and standard deviation of a Weibull law (NIST/SEMATECH e-Handbook 8.4.1.3).
func TestPublishedMoments(t *testing.T) {
	mean, sd := lifedata.Weibull.Moments([]float64{1.7208, 606.5280})
	near(t, "mean", mean, 540.737, 1e-3)
	near(t, "sd", sd, 323.806, 1e-3)
}
