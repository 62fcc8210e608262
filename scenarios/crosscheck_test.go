package scenarios_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"dwellcast/scenarios"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// measured is a figure with its standard error.
type estimate struct{ mean, se float64 }

// variants of the bench line, by the name that the independent program gives them.
var variants = []struct {
	name  string
	set   []string
	flags []string
}{
	{"base", nil, nil},
	{"dwell-1.60", []string{"sealer.dwell=1.60 s"}, []string{"--dwell", "1.60"}},
	{"setting-1800", []string{"setting=1800 cartons/h"}, []string{"--setting", "1800"}},
}

// TestCrossCheck holds the bench line against a model of it on an independent event library (testdata/crosscheck), variant by
// variant: good cartons, cycles, state shares and stops, all judged together by Holm at 99 %. The figures of that model are
// stored; with DWELLCAST_CROSSCHECK set to a seed it is run afresh with it.
func TestCrossCheck(t *testing.T) {
	if testing.Short() {
		t.Skip("long")
	}
	reference, seed := stored(t), uint64(2)
	if fresh := os.Getenv("DWELLCAST_CROSSCHECK"); fresh != "" {
		n, err := strconv.ParseUint(fresh, 10, 32)
		if err != nil {
			t.Fatal(err)
		}
		seed = n
		reference = afresh(t, fresh)
	}
	var names []string
	var ps []float64
	for _, v := range variants {
		f, err := scenarios.Open("example:bench-line", v.set)
		if err != nil {
			t.Fatal(err)
		}
		out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 1000, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		for measure, ours := range figuresOf(out) {
			theirs, ok := reference[v.name][measure]
			if !ok {
				t.Fatalf("the independent program has no %s", measure)
			}
			se := math.Hypot(ours.se, theirs.se)
			if se < 1e-12 {
				if math.Abs(ours.mean-theirs.mean) > 1e-9 {
					t.Errorf("%s %s: %.9g, theirs %.9g, neither varies", v.name, measure, ours.mean, theirs.mean)
				}
				continue
			}
			names = append(names, fmt.Sprintf("%s %s: %.6g, theirs %.6g", v.name, measure, ours.mean, theirs.mean))
			ps = append(ps, 2*distuv.UnitNormal.Survival(math.Abs(ours.mean-theirs.mean)/se))
		}
	}
	for i, p := range stats.Holm(ps) {
		if p < 0.01 {
			t.Errorf("%s: adjusted p %.2g", names[i], p)
		}
	}
	t.Logf("seed %d, %d figures", seed, len(ps))
}

// figuresOf names the figures of a forecast as the independent program does.
func figuresOf(f *scenarios.Forecast) map[string]estimate {
	figures := map[string]estimate{"good": estimateOf(f.GoodPerShift.Interval)}
	states := map[string]stations.State{
		"working": stations.Working, "paced": stations.Paced, "interlocked": stations.Interlocked, "starved": stations.Starved,
		"blocked": stations.Blocked, "awaiting": stations.Awaiting, "cleared": stations.Clearing,
	}
	for i := range f.Stations {
		st := &f.Stations[i]
		for word, state := range states {
			figures[st.Name+"."+word] = estimateOf(st.Shares[state])
		}
	}
	for _, stop := range f.Stops {
		figures[stop.Where+".stops"] = estimateOf(stop.PerShift)
	}
	return figures
}

// estimateOf turns an interval back into mean and standard error.
func estimateOf(i stats.Interval) estimate {
	t := distuv.StudentsT{Sigma: 1, Nu: float64(i.N - 1)}.Quantile(0.5 + i.Confidence/2)
	return estimate{i.Mean, i.HalfWidth() / t}
}

func stored(t *testing.T) map[string]map[string]estimate {
	t.Helper()
	text, err := os.ReadFile("../testdata/crosscheck/stored.csv")
	if err != nil {
		t.Fatal(err)
	}
	return estimates(t, string(text))
}

// afresh runs the independent program with its own library, 150 shifts a variant.
func afresh(t *testing.T, seed string) map[string]map[string]estimate {
	t.Helper()
	var text strings.Builder
	for _, v := range variants {
		args := append([]string{"../testdata/crosscheck/bench_line.py", "--shifts", "150", "--seed", seed, "--csv", v.name}, v.flags...)
		out, err := exec.Command("/usr/bin/python3", args...).Output()
		if err != nil {
			t.Fatalf("the independent program: %v", err)
		}
		text.Write(out)
	}
	return estimates(t, text.String())
}

// estimates reads rows of variant,measure,mean,standard_error,shifts,seed.
func estimates(t *testing.T, text string) map[string]map[string]estimate {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]map[string]estimate{}
	for _, r := range rows {
		m, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			continue // the heading
		}
		se, err := strconv.ParseFloat(r[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		if all[r[0]] == nil {
			all[r[0]] = map[string]estimate{}
		}
		all[r[0]][r[1]] = estimate{m, se}
	}
	return all
}
