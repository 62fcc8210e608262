package stats_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dwellcast/sim/stats"
)

// checks maps what a row's model text says to the computation of its
// values. The first pattern that fits decides; a row that fits none fails.
var checks = []struct {
	model *regexp.Regexp
	got   func(t *testing.T, r row, all []row) []float64
}{
	{regexp.MustCompile(`^Student t quantile`), studentQuantile},
	{regexp.MustCompile(`(?i)coverage of nominal`), coverageForExponential},
	{regexp.MustCompile(`% t interval`), tInterval},
	{regexp.MustCompile(`^Welch's t test`), welchTest},
	{regexp.MustCompile(`(?i)paired`), pairedTest},
	{regexp.MustCompile(`^Wilson`), wilson},
	{regexp.MustCompile(`^(Holm|Bonferroni)`), adjusted},
	{regexp.MustCompile(`(?i)replications for (absolute|relative)`), replications},
	{regexp.MustCompile(`^MSER-5`), mser5},
	{regexp.MustCompile(`^Welch moving average`), movingAverage},
	{regexp.MustCompile(`batch means`), batchMeans},
	{regexp.MustCompile(`^Kim & Nelson`), kimNelson},
	{regexp.MustCompile(`^Rinott`), rinott},
	{regexp.MustCompile(`^Dudewicz & Dalal`), dudewiczDalal},
	{regexp.MustCompile(`^acceptance band`), coverageBand},
}

// Every row of the topic, each with the source its own column gives.
func TestOutputAnalysisRows(t *testing.T) {
	rows := theoryRows(t)
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			for _, c := range checks {
				if c.model.MatchString(r.model) {
					r.compare(t, c.got(t, r, rows))
					return
				}
			}
			t.Fatalf("no check for the model %q", r.model)
		})
	}
}

func studentQuantile(t *testing.T, r row, _ []row) []float64 {
	return []float64{stats.StudentQuantile(r.number(t, "p"), r.number(t, "df"))}
}

func tInterval(t *testing.T, r row, all []row) []float64 {
	var m stats.Moments
	xs := series(t, r.parameters["x"], all)
	for _, x := range xs {
		m.Add(x)
	}
	iv := stats.MeanInterval(xs, r.confidence(t))
	return r.pick(t, map[string]float64{
		"mean": iv.Mean, "var": m.Variance(), "sd": m.StdDev(), "half width": iv.HalfWidth(), "lo": iv.Low, "hi": iv.High,
	})
}

// samples are the two parameters that hold data, in order of their names.
func samples(t *testing.T, r row) (a, b []float64) {
	var found [][]float64
	for _, key := range slices.Sorted(maps.Keys(r.parameters)) {
		if strings.Contains(r.parameters[key], " ") && key != "measure" {
			found = append(found, numbers(t, r.parameters[key]))
		}
	}
	if len(found) != 2 {
		t.Fatalf("%s: %d samples in %q", r.id, len(found), r.text)
	}
	return found[0], found[1]
}

func welchTest(t *testing.T, r row, _ []row) []float64 {
	test := stats.Welch(samples(t, r))
	return r.pick(t, map[string]float64{"t": test.T, "df": test.DF, "p": test.P})
}

func pairedTest(t *testing.T, r row, _ []row) []float64 {
	a, b := samples(t, r)
	test := stats.PairedT(a, b)
	computed := map[string]float64{"t": test.T, "df": test.DF, "p": test.P}
	if strings.Contains(r.model, "%") {
		iv := stats.PairedInterval(a, b, r.confidence(t))
		computed["mean"], computed["half width"], computed["lo"], computed["hi"] = iv.Mean, iv.HalfWidth(), iv.Low, iv.High
	}
	return r.pick(t, computed)
}

func wilson(t *testing.T, r row, _ []row) []float64 {
	iv := stats.Wilson(r.integer(t, "k"), r.integer(t, "n"), r.confidence(t))
	return r.pick(t, map[string]float64{"lo": iv.Low, "hi": iv.High})
}

func adjusted(t *testing.T, r row, _ []row) []float64 {
	ps := numbers(t, r.parameters["p"])
	if strings.Contains(strings.ToLower(r.parameters["measure"]), "holm") {
		return stats.Holm(ps)
	}
	return stats.Bonferroni(ps)
}

func replications(t *testing.T, r row, _ []row) []float64 {
	s2, n0, confidence := r.number(t, "S2"), r.integer(t, "n0"), r.confidence(t)
	var n int
	var ok bool
	if strings.Contains(r.model, "relative") {
		n, ok = stats.ReplicationsForRelativeError(r.number(t, "mean"), s2, n0, r.number(t, "gamma"), confidence)
	} else {
		n, ok = stats.ReplicationsForHalfWidth(s2, n0, r.number(t, "beta"), confidence)
	}
	if !ok {
		t.Fatalf("%s: out of reach", r.id)
	}
	return []float64{float64(n)}
}

func mser5(t *testing.T, r row, all []row) []float64 {
	text := r.text
	if x, found := r.parameters["x"]; found {
		text = x
	}
	cut := stats.MSER5(series(t, text, all))
	return r.pick(t, map[string]float64{
		"d (batches)": float64(cut.Batches), "truncated observations": float64(cut.Observations),
		"truncated mean": cut.Mean, "mean": cut.Mean, "MSER value": cut.Value,
	})
}

func movingAverage(t *testing.T, r row, all []row) []float64 {
	smooth := stats.WelchMovingAverage(series(t, r.parameters["x"], all), r.integer(t, "w"))
	_, list, found := strings.Cut(r.parameters["measure"], "i=")
	if !found {
		t.Fatalf("%s: no places in %q", r.id, r.text)
	}
	var got []float64
	for _, i := range numbers(t, list) {
		got = append(got, smooth[int(i)-1])
	}
	return got
}

func batchMeans(t *testing.T, r row, all []row) []float64 {
	xs := series(t, r.text, all)
	if m := matched(`t=(\d+)\.\.(\d+)/`, r.text); m != nil {
		xs = xs[integerOf(t, m[1])-1 : integerOf(t, m[2])]
	}
	m := matched(`(\d+) batches`, r.text)
	if m == nil {
		t.Fatalf("%s: no number of batches in %q", r.id, r.text)
	}
	iv := stats.BatchMeans(xs, integerOf(t, m[1]), r.confidence(t))
	return r.pick(t, map[string]float64{"mean": iv.Mean, "half width": iv.HalfWidth()})
}

func kimNelson(t *testing.T, r row, _ []row) []float64 {
	eta, h2 := stats.KNConstants(r.integer(t, "k"), r.integer(t, "n0"), r.number(t, "alpha"))
	return r.pick(t, map[string]float64{"eta": eta, "h2": h2})
}

func rinott(t *testing.T, r row, _ []row) []float64 {
	h, err := stats.RinottH(r.integer(t, "k"), r.integer(t, "n0"), r.number(t, "P*"))
	if err != nil {
		t.Fatal(err)
	}
	return []float64{h}
}

func dudewiczDalal(t *testing.T, r row, _ []row) []float64 {
	h, err := stats.DudewiczDalalH(r.integer(t, "k"), r.integer(t, "n0"), r.number(t, "P*"))
	if err != nil {
		t.Fatal(err)
	}
	return []float64{h}
}

func coverageBand(t *testing.T, r row, _ []row) []float64 {
	lo, hi := stats.CoverageBand(r.integer(t, "R"), r.number(t, "nominal"), r.confidence(t))
	return []float64{float64(lo), float64(hi)}
}

// coverageForExponential counts how often the t interval covers the mean of
// an exponential distribution. With 400,000 trials its own standard error is
// at most 0.0006, as is that of the row.
func coverageForExponential(t *testing.T, r row, _ []row) []float64 {
	const trials = 400_000
	confidence, xs := r.confidence(t), make([]float64, r.integer(t, "n"))
	critical := stats.StudentQuantile(1-(1-confidence)/2, float64(len(xs)-1))
	random := rand.New(rand.NewPCG(1, uint64(len(xs))))
	covered := 0
	for range trials {
		var m stats.Moments
		for range xs {
			m.Add(random.ExpFloat64())
		}
		// the interval itself, with the quantile computed once
		if math.Abs(m.Mean()-1) <= critical*m.StdDev()/math.Sqrt(float64(len(xs))) {
			covered++
		}
	}
	return []float64{float64(covered) / trials}
}
