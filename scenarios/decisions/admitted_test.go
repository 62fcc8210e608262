package decisions_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
)

// TestDecisionsKeepLimits: whatever the setting, the dwell, the carton and the way to the sealer, a decision marks a line exactly where
// a run refuses it, and a run accepts what a decision recommends.
func TestDecisionsKeepLimits(t *testing.T) {
	rows, marked, kept := 5, 0, 0
	if long() {
		rows = 40
	}
	seen := func(about, mark string, f *scenarios.File) {
		if why := scenarios.Refusal(f); why != mark {
			t.Errorf("%v: %s is marked %q, but a run is refused with %q", f.Overrides, about, mark, why)
		}
		if mark == "" {
			kept++
		} else {
			marked++
		}
	}
	for seed := range rows {
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
		f, err := scenarios.Open("example:oat-drink", []string{
			"shift={length: 10 min}", "target=150 cartons", fmt.Sprintf("setting=%.0f cartons/h", between(900, 1700)),
			fmt.Sprintf("sealer.dwell={value: %.3f s, low: 0.9 s, high: 1.6 s, source: guess}", between(1.05, 1.4)),
			fmt.Sprintf("carton.height=%.1f mm", between(222, 250)), fmt.Sprintf("sealer.after.pitches=%d", 1+r.IntN(12)),
		})
		if err != nil {
			t.Fatal(err)
		}
		keepSweep(t, f, seen)
		keepPace(t, f, seen)
		keepCases(t, f, seen)
		keepTornado(t, f, seen)
	}
	if marked < rows || kept < 2 {
		t.Errorf("%d lines marked and %d not: the test tries too little", marked, kept)
	}
}

type seeing func(about, mark string, f *scenarios.File)

func changed(t *testing.T, f *scenarios.File, changes ...string) *scenarios.File {
	t.Helper()
	other, err := f.With(changes...)
	if err != nil {
		t.Fatal(err)
	}
	return other
}

func keepSweep(t *testing.T, f *scenarios.File, seen seeing) {
	answer := sweep(t, f, "good_rate", 2, "setting=800 cartons/h..2000 cartons/h/6")
	for _, p := range answer.Points {
		seen("a point", p.Refused, changed(t, f, "setting="+p.Values[0].String()))
	}
}

func keepPace(t *testing.T, f *scenarios.File, seen seeing) {
	a, err := decisions.RunPace(background, lab(scenarios.Options{Seed: 1}), f, 1, decisions.PaceSpec{Replications: 4, Settings: 6})
	if err != nil {
		if !strings.Contains(err.Error(), "may be run at none") && !strings.Contains(err.Error(), "would run from") {
			t.Error(err)
		}
		return
	}
	at := func(setting float64) *scenarios.File {
		return changed(t, f, fmt.Sprintf("setting=%.9g cartons/h", setting))
	}
	for _, row := range a.Rows {
		seen("a setting compared", "", at(row.Setting))
	}
	for _, s := range a.Skipped {
		seen("a setting left out", s.Refused, at(s.Setting))
	}
	seen("today", a.TodayRefused, f)
	seen("the next", a.Next.Refused, at(a.Next.To.Setting))
}

func keepCases(t *testing.T, f *scenarios.File, seen seeing) {
	var cases []scenarios.Case
	for _, text := range []string{"short: sealer.dwell=0.8 s", "slow: setting=700 cartons/h", "cold: sealer.heat.jaws=170 degC"} {
		c, err := scenarios.ParseCase(f, text)
		if err != nil {
			t.Fatal(err)
		}
		cases = append(cases, c)
	}
	answer, err := decisions.Compare(background, lab(scenarios.Options{Seed: 1}), f, cases, 1, decisions.CompareSpec{Replications: 2})
	if err != nil {
		t.Fatal(err)
	}
	seen("the base", answer.BaseRefused, f)
	for i := range cases {
		seen(cases[i].Name, answer.Cases[i].Refused, cases[i].File)
	}
}

func keepTornado(t *testing.T, f *scenarios.File, seen seeing) {
	question, spec := decisions.LineQuestion(background, lab(scenarios.Options{Seed: 1}), f, decisions.TornadoSpec{Replications: 2})
	answer, err := decisions.RunTornado(background, question, 1, spec)
	if err != nil {
		t.Fatal(err)
	}
	seen("the line", answer.Base.Refused, f)
	for _, s := range answer.Swings {
		for _, e := range []decisions.End{s.Low, s.High} {
			seen(s.Path+" at "+e.Text, e.Refused, changed(t, f, s.Path+"="+e.Text))
		}
	}
}
