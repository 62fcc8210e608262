package decisions_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/stats"
)

func pace(t testing.TB, f *scenarios.File, seed uint64, spec decisions.PaceSpec) *decisions.Pace {
	t.Helper()
	a, err := decisions.RunPace(background, lab(scenarios.Options{Seed: seed}), f, seed, spec)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// oneMachine is a machine that its setting alone paces, since its own cycle takes a millisecond; what happens to it is up to the
// caller. Nobody is needed to clear its stops.
func oneMachine(t testing.TB, shift string, setting float64, what string) *scenarios.File {
	return read(t, fmt.Sprintf("title: One machine\nsetting: %g cartons/h\nshift: {length: %s}\nstations:\n  - name: machine\n    kind: machine\n"+
		"    cycle: 1 ms\n%s", setting, shift, what))
}

// table writes a table by setting.
func table(settings, factors []float64) string {
	var rows []string
	for i, at := range settings {
		rows = append(rows, fmt.Sprintf("{at: %g cartons/h, factor: %.9g}", at, factors[i]))
	}
	return "[" + strings.Join(rows, ", ") + "]"
}

// Packaging Digest, 30 August 2012: 60 packs a minute with 30 % rejects yield 42, 50 packs a minute with 5 % yield 47.5.
func TestPaceOfPackagingDigest(t *testing.T) {
	settings := []float64{3000, 3600}
	f := oneMachine(t, "8 h", 3600, "    reject: {chance: 5 %, by_setting: "+table(settings, []float64{1, 6})+"}\n")
	a := pace(t, f, 1, decisions.PaceSpec{List: settings, Replications: 50})
	if got := a.Rows[a.Recommended].Setting; got != 3000 {
		t.Errorf("recommended %g cartons/h, want 3000", got)
	}
	for i, perMinute := range []float64{47.5, 42} {
		if got := a.Rows[i].Rate; math.Abs(got.Mean-60*perMinute) > 3*got.HalfWidth() {
			t.Errorf("at %g: %v good cartons/h, published %g a minute", settings[i], got, perMinute)
		}
	}
	if len(a.Band) != 0 || len(a.Tables) != 1 {
		t.Errorf("tables %v and band %v, want one and none", a.Tables, a.Band)
	}
}

var powerLaw = regexp.MustCompile(`^v0=([\d.]+)/min jam p0=([\d.]+)/carton at v0, p~v\^([\d.]+), clear ([\d.]+) min$`)

// Best speed where the chance of a jam grows with a power of the speed: all rows of the topic in testdata/trade.csv. Output is
// v / (1 + v p(v) R).
func TestPaceOfPowerLaw(t *testing.T) {
	seen := 0
	for _, row := range reference(t, "speed-optimum-power") {
		seen++
		t.Run(row[0], func(t *testing.T) {
			p := powerLaw.FindStringSubmatch(row[2])
			want := regexp.MustCompile(`v\*=([\d.]+)/min; output ([\d.]+)/min`).FindStringSubmatch(row[3])
			if p == nil || want == nil {
				t.Fatalf("can't read %q, %q", row[2], row[3])
			}
			v0, p0, power, clear := float(t, p[1]), float(t, p[2]), float(t, p[3]), float(t, p[4])
			checkPowerLaw(t, v0, p0, power, clear, float(t, want[1]), float(t, want[2]))
		})
	}
	if seen == 0 {
		t.Error("no rows")
	}
}

func checkPowerLaw(t *testing.T, v0, p0, power, clear, optimum, output float64) {
	var settings, factors []float64
	for share := 0.7; share < 1.31; share += 0.01 {
		v := math.Round(optimum*60*share*10) / 10
		settings, factors = append(settings, v), append(factors, math.Pow(v/60/v0, power))
	}
	f := oneMachine(t, "16 h", settings[0], fmt.Sprintf("    stops: [{cause: jam, chance: %.9g %%, clear: %g min, attendant: false, by_setting: %s}]\n",
		100*p0, clear, table(settings, factors)))
	var some []float64 // the law is so flat about its peak that neighbours can't be told apart
	for i := 0; i < len(settings); i += 4 {
		some = append(some, settings[i])
	}
	a := pace(t, f, 1, decisions.PaceSpec{List: some, Replications: 100})
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range a.Rows {
		v := r.Setting / 60
		exact := 60 * v / (1 + v*p0*math.Pow(v/v0, power)*clear)
		if math.Abs(r.Rate.Mean-exact) > 2.5*r.Rate.HalfWidth() {
			t.Errorf("at %g/min: %v cartons/h, closed form %g", v, r.Rate, exact)
		}
		if r.Behind.Low <= a.Delta {
			low, high = min(low, v), max(high, v)
		}
	}
	if optimum < low || optimum > high {
		t.Errorf("best speed between %g and %g/min, closed form %g", low, high, optimum)
	}
	if got := a.Rows[a.Best].Rate.Mean / 60; math.Abs(got-output) > 0.01*output {
		t.Errorf("best output %g/min, closed form %g", got, output)
	}
}

// Over 500 problems of five settings with known means, the best is selected at least as often as guaranteed. The means are the
// hardest ones: all others the indifference zone below the best. They follow from v (1 - q(v)) for a share q of rejects.
func TestPaceSelectsTheBest(t *testing.T) {
	const problems, confidence, zone, best = 500, 0.9, 0.02, 3
	settings := []float64{1000, 1050, 1100, 1150, 1200}
	factors := make([]float64, len(settings))
	for i, v := range settings {
		good := 900 * (1 - zone)
		if i == best {
			good = 900
		}
		factors[i] = (1 - good/v) / 0.1
	}
	f := oneMachine(t, "12 min", 1000, "    reject: {chance: 10 %, by_setting: "+table(settings, factors)+"}\n")
	right := 0
	for seed := range uint64(problems) {
		a := pace(t, f, 1000+seed, decisions.PaceSpec{List: settings, Zone: zone, Confidence: confidence, Replications: 10, MostReplications: 2000})
		if a.Best == best {
			right++
		}
		if !a.Guaranteed {
			t.Fatalf("seed %d: the selection did not end", seed)
		}
	}
	// Fewer than this many would come by chance once in a thousand times, were the guarantee just kept.
	least, _ := stats.CoverageBand(problems, confidence, 0.998)
	t.Logf("right %d times of %d", right, problems)
	if right < least {
		t.Errorf("right %d times of %d, want %d at least", right, problems, least)
	}
}

// A line without tables gets a band, and the slopes make faster settings worse.
func TestPaceBand(t *testing.T) {
	a := pace(t, example(t, "bench-line"), 1, decisions.PaceSpec{From: 1300, To: 1700, Settings: 5, Replications: 50})
	if len(a.Tables) != 0 || len(a.Untabled) != 6 || len(a.Band) != 2 {
		t.Fatalf("tables %v, untabled %v, %d bands", a.Tables, a.Untabled, len(a.Band))
	}
	last := len(a.Rows) - 1
	for i, b := range a.Band {
		flat, steep := a.Rows[last].Good.Mean, b.Rows[last].Good.Mean
		if b.Failed != "" || steep >= flat {
			t.Errorf("band %d: %g cartons at the highest setting, %g without growth (%s)", i, steep, flat, b.Failed)
		}
	}
	if a.Next == nil || math.Abs(a.Next.To.Setting/a.Next.From.Setting-1.05) > 1e-4 {
		t.Errorf("next %+v", a.Next)
	}
}

// reference reads the rows of a topic in the table of trade facts.
func reference(t *testing.T, topic string) [][]string {
	t.Helper()
	file, err := os.Open("../../testdata/trade.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var found [][]string
	for _, row := range rows {
		if row[1] == topic {
			found = append(found, row)
		}
	}
	return found
}

func float(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// A choice among 50 settings of the bench line with 200 shifts each should take less than 4 s on two processors.
func BenchmarkPace50Settings(b *testing.B) {
	f := example(b, "bench-line")
	for b.Loop() {
		pace(b, f, 1, decisions.PaceSpec{Settings: 50, Replications: 200})
	}
}
