package decisions_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/random"
)

func demandOf(t testing.TB, law random.Distribution, err error) decisions.Demand {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return decisions.NewDemand(law)
}

func fixedDemand(t testing.TB, cartons float64) decisions.Demand {
	law, err := random.Constant(cartons)
	return demandOf(t, law, err)
}

func candidate(name string, f *scenarios.File, price float64) decisions.SizeCandidate {
	return decisions.SizeCandidate{Name: name, File: f, Lines: 1, Calendar: decisions.Calendar{Days: 250, Shifts: 2}, Price: price, Life: 10}
}

func sizeOf(t *testing.T, spec decisions.SizeSpec) *decisions.Sizing {
	t.Helper()
	z, err := decisions.Size(background, lab(scenarios.Options{Seed: 1, Confidence: 0.95}), 1, spec)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// A demand and an output that are normal both: the chance is that of a normal difference.
func TestChanceOfNormals(t *testing.T) {
	law, err := random.Normal(5e6, 1e5)
	d := demandOf(t, law, err)
	for _, mean := range []float64{4.9e6, 5e6, 5.2e6} {
		want := 0.5 * math.Erfc(-(mean-5e6)/math.Hypot(1e5, 4e4)/math.Sqrt2)
		if got := d.Chance(mean, 4e4); math.Abs(got-want) > 1e-4 {
			t.Errorf("mean %g: chance %g, want %g", mean, got, want)
		}
	}
	needed := d.MeanNeeded(0.9, 4e4)
	if want := 5e6 + 1.2815516*math.Hypot(1e5, 4e4); math.Abs(needed-want) > 100 { // z of 90 %, from memory
		t.Errorf("mean needed %g, want %g", needed, want)
	}
}

// No more is sold than is made, or wanted; and MeanNeeded inverts Chance.
func TestDemandLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(1e3, 1e7).Draw(t, "low")
		law, err := random.Triangular(low, low*1.1, low*rapid.Float64Range(1.1, 2).Draw(t, "high"))
		if err != nil {
			t.Skip()
		}
		d := decisions.NewDemand(law)
		mean, sd := low*rapid.Float64Range(0.5, 3).Draw(t, "mean"), low*rapid.Float64Range(0, 0.2).Draw(t, "sd")
		if sold := d.Sold(mean, sd); sold > mean*(1+1e-9) || sold > d.Mean()*(1+1e-4) || sold < 0 {
			t.Fatalf("%g are sold of %g that are made and %g wanted", sold, mean, d.Mean())
		}
		p := rapid.Float64Range(0.05, 0.95).Draw(t, "p")
		needed := d.MeanNeeded(p, sd)
		if d.Chance(needed, sd) < p || d.Chance(needed*(1-1e-6), sd) > p+0.002 {
			t.Fatalf("a mean of %g gives a chance of %g, and a little less %g; wanted %g", needed, d.Chance(needed, sd), d.Chance(needed*(1-1e-6), sd), p)
		}
	})
}

// A line that leaves nothing to chance: 8 h x 1500/h less what its 4 empty pitches and the run-in cost; the year is 500 such shifts,
// the setting needed is in proportion, and a demand above what the sealer follows is out of reach.
func TestSizeUndisturbed(t *testing.T) {
	f := undisturbed(t)
	perShift := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, 1), Candidates: []decisions.SizeCandidate{candidate("a", f, 0)}, AsSet: true}).Candidates[0].PerShift.Mean
	demand := 500 * math.Floor(0.9*perShift)
	z := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, demand), Candidates: []decisions.SizeCandidate{candidate("a", f, 0)}})
	c := z.Candidates[0]
	if c.Year.Mean != 500*perShift || c.YearSD != 0 || c.Chance.Mean != 1 || z.Best != 0 || c.LinesNeeded != 1 {
		t.Errorf("a year makes %g with a spread of %g and a chance of %g; best %d, lines %d", c.Year.Mean, c.YearSD, c.Chance.Mean, z.Best, c.LinesNeeded)
	}
	// 3600 s / 2.4 s x 0.9 = 1350/h, but for the cartons that fill the line and are left on it
	if !c.Needed.Found || math.Abs(c.Needed.Setting-1350) > 3 {
		t.Errorf("the setting needed is %+v", c.Needed)
	}
	low, err := f.With("setting=" + "1340 cartons/h")
	if err != nil {
		t.Fatal(err)
	}
	if made := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, demand), Candidates: []decisions.SizeCandidate{candidate("a", low, 0)}, AsSet: true}); made.Best != -1 {
		t.Error("a setting below the one needed makes the demand")
	}
	// at its own setting of 1340/h it falls short, and is taken at the one needed
	raised := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, demand), Candidates: []decisions.SizeCandidate{candidate("a", low, 0)}})
	if k := raised.Candidates[0]; !k.Raised || k.Setting != k.Needed.Setting || raised.Best != 0 || k.Own.Mean != 0 {
		t.Errorf("raised %t to %g, needed %+v, best %d", k.Raised, k.Setting, k.Needed, raised.Best)
	}
	// the sealer follows up to 1545/h: 8 % more than today's output is out of reach
	beyond := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, 500*1.08*perShift), Candidates: []decisions.SizeCandidate{candidate("a", f, 0)}})
	if k := beyond.Candidates[0]; beyond.Best != -1 || k.Needed.Found || k.LinesNeeded != 2 {
		t.Errorf("best %d, needed %+v, lines %d", beyond.Best, k.Needed, k.LinesNeeded)
	}
}

// The spread of a year: 400 sums of 25 shifts of the bench line vary as the formula says, within the 99.9 % limits of chi-squared
// with 399 degrees of freedom over their mean (0.78 and 1.25 by the Wilson-Hilferty approximation), and the interval of the chance
// holds the share of these years that make the demand.
func TestYearIsTheSumOfShifts(t *testing.T) {
	f := example(t, "bench-line")
	l := lab(scenarios.Options{Seed: 7, Confidence: 0.95})
	shifts, err := l.Shifts(f)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := shifts.Extend(background, 10_000); err != nil {
		t.Fatal(err)
	}
	good := shifts.Good()
	var years []float64
	sum := 0.0
	for i := 0; i < len(good); i += 25 {
		year := 0.0
		for _, x := range good[i : i+25] {
			year += x
		}
		years = append(years, year)
		sum += year
	}
	mean := sum / float64(len(years))
	demand, variance, made := mean-300, 0.0, 0
	for _, y := range years {
		variance += (y - mean) * (y - mean) / float64(len(years)-1)
		if y >= demand {
			made++
		}
	}
	c := candidate("a", f, 0)
	c.Calendar = decisions.Calendar{Days: 25, Shifts: 1}
	z := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, demand), Candidates: []decisions.SizeCandidate{c}, Replications: 2000, AsSet: true})
	got := z.Candidates[0]
	if ratio := variance / (got.YearSD * got.YearSD); ratio < 0.78 || ratio > 1.25 {
		t.Errorf("years vary with a standard deviation of %g, forecast %g", math.Sqrt(variance), got.YearSD)
	}
	// 4 standard errors of a share of 400
	if share := float64(made) / float64(len(years)); share < got.Chance.Low-0.1 || share > got.Chance.High+0.1 {
		t.Errorf("%g of the years make the demand, forecast %v", share, got.Chance)
	}
}

// The reference arithmetic of TR055, by simulation: a line whose stops leave 85 % of its running time and whose rejects leave 98.5 %
// makes the 6 million in 3412.5 h at the setting that the arithmetic gives.
func TestSizeAgreesWithArithmetic(t *testing.T) {
	// a stop of 3 min after every 595 cartons, which take 17 min: 85 %
	f := read(t, `
setting: 2100.02 cartons/h
shift: {length: 8 h}
stations:
  - name: filler
    kind: machine
    cycle: 1.714 s
    stops: [{cause: jam, every: {constant: 595 cartons}, clear: 3 min}]
  - name: checker
    kind: machine
    after: {buffer: 10000 cartons}
    cycle: 0.1 s
    reject: 1.5 %
`)
	c := candidate("a", f, 0)
	c.Calendar.Breaks, c.Calendar.Cleaning, c.Calendar.Changeovers = hours(0.5), hours(187.5), hours(150)
	z := sizeOf(t, decisions.SizeSpec{Demand: fixedDemand(t, 6e6), Candidates: []decisions.SizeCandidate{c}, AsSet: true, Replications: 40})
	k := z.Candidates[0]
	if k.NetHours != 3412.5 {
		t.Errorf("net hours %g, want 3412.5", k.NetHours)
	}
	// a shift of 8 h is 24 rounds of 20 min; of 14066 good cartons up to 3 are on the line at its end, and the rejects of 40 shifts
	// leave a standard error of 2.3: 4 of them and these are 0.09 %
	if math.Abs(k.Year.Mean/6e6-1) > 9e-4 {
		t.Errorf("a year makes %v, want 6e6", k.Year)
	}
}

// Choice: the cheapest that makes the demand; what costs more and makes no more is dominated; with everything sold the one that
// brings most.
func TestSizeChooses(t *testing.T) {
	f := undisturbed(t)
	slow, err := f.With("setting=1000 cartons/h")
	if err != nil {
		t.Fatal(err)
	}
	demand := 500 * 7000.0
	spec := decisions.SizeSpec{Demand: fixedDemand(t, demand), Discount: 0.1, AsSet: true, Candidates: []decisions.SizeCandidate{
		candidate("fast", f, 300_000), candidate("slow", slow, 200_000), candidate("dear", slow, 250_000),
	}}
	z := sizeOf(t, spec)
	if z.Best != 1 || z.Next != 2 {
		t.Errorf("best %d, next %d; want slow, then dear", z.Best, z.Next)
	}
	for i, want := range []string{"", "", "slow"} {
		if got := z.Candidates[i].DominatedBy; got != want {
			t.Errorf("%s is dominated by %q, want %q", z.Candidates[i].Name, got, want)
		}
	}
	if got, want := z.Candidates[1].AnnualCost.Mean, 200_000/6.144567; math.Abs(got-want) > 0.01 { // (P/A, 10 %, 10) from memory
		t.Errorf("annual cost %g, want %g", got, want)
	}
	if got, want := z.Candidates[1].CostPerThousand.Mean, z.Candidates[1].AnnualCost.Mean/demand*1000; math.Abs(got-want) > 1e-6 {
		t.Errorf("%g a thousand, want %g", got, want)
	}
	spec.SellsAll = true
	for i := range spec.Candidates {
		spec.Candidates[i].Contribution, spec.Candidates[i].Sells = 0.05, true
	}
	if z := sizeOf(t, spec); z.Best != 0 || !z.ByWorth() {
		t.Errorf("with everything sold the best is %d", z.Best)
	}
}

// A candidate's numbers do not depend on which others there are.
func TestSizeOfOneCandidate(t *testing.T) {
	f, longer := example(t, "bench-line"), example(t, "bench-line", "sealer.dwell=1.3s")
	spec := decisions.SizeSpec{Demand: fixedDemand(t, 5e6), Replications: 20, Candidates: []decisions.SizeCandidate{candidate("a", f, 100), candidate("b", longer, 0)}}
	both := sizeOf(t, spec)
	spec.Candidates = spec.Candidates[:1]
	one := sizeOf(t, spec)
	a, b := both.Candidates[0], one.Candidates[0]
	if a.Year != b.Year || a.Chance != b.Chance || a.Needed.Setting != b.Needed.Setting || a.AnnualCost != b.AnnualCost {
		t.Errorf("with another %v, %v; alone %v, %v", a.Year, a.Needed.Setting, b.Year, b.Needed.Setting)
	}
}
