package reports_test

import (
	"encoding/json"
	"io"
	"math"
	"testing"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/scenarios/decisions"
	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// ofStudy is where the invented decisions come from.
var ofStudy = reports.Origin{Command: "compare", Study: "what-if.yaml", Line: "dwellcast compare what-if.yaml", Version: "test"}

// inventedCase is a case of no real study; its moves sum to its difference.
func inventedCase(name string, difference, half float64, shows bool) decisions.CaseResult {
	base, changed := invented(), invented()
	changed.GoodPerShift.Interval = around(base.GoodPerShift.Mean+difference, 40)
	return decisions.CaseResult{
		Name: name, Changes: []string{"sealer.dwell = 1.35 s"}, Replications: 200, Base: base, Case: changed,
		Difference: around(difference, half), Alone: around(difference, half*0.8), SD: 7 * half, Independent: 420, P: 0.3, AdjustedP: 0.6, Shows: shows,
		Better: around(0.415, 0.07), Equal: 0.05, Odds: 0.2, SmallestCartons: 50, Needed: 31, Met: true,
		Moves: []decisions.Move{
			{Where: "sealer", Cause: "act longer than the pace", Kind: stations.SlowAct, Cartons: difference * 1.25},
			{Where: "robot", Cause: "waits for pallet | places", Kind: stations.Reload, Cartons: -difference * 0.25},
		},
		From: decisions.SettingHolds, FromShare: 0.712, To: decisions.StationHolds(2, "sealer"), ToShare: 0.655,
	}
}

func inventedComparison() *decisions.Comparison {
	dwell := inventedCase("longer dwell, and rather a long name", -225.4, 3.1, true)
	robots := inventedCase("second robot", 162.25, 11, true)
	robots.To, robots.ToShare, robots.Odds, robots.Replications = decisions.SettingHolds, 0.811, 1, 400
	robots.Changes = []string{"robot.units = 2", "drop robot.stops.dropped carton"}
	crew := inventedCase("second attendant", 8.2, 2, true)
	crew.To, crew.ToShare, crew.Odds = decisions.SettingHolds, 0.712, 0.9999
	seal := inventedCase("quicker seal", 0.4, 9, false)
	open := inventedCase("other glue", -31, 77, false)
	open.Needed, open.Met = 412, false
	same := inventedCase("no change", 0, 0, false)
	same.SD, same.Equal, same.Better, same.Moves = 0, 1, around(0, 0), nil
	return &decisions.Comparison{
		Title: "What if, on the oat-drink line", Seed: 1, Base: invented(),
		Spec:     decisions.CompareSpec{Replications: 200, Precision: 0.003, Ceiling: 2000, Smallest: 0.005, Confidence: 0.95},
		Cases:    []decisions.CaseResult{dwell, robots, crew, seal, open, same},
		Warnings: []scenarios.Warning{{About: "setting", Text: "no stop depends on the setting, so faster always looks better"}},
	}
}

func TestComparisonScreens(t *testing.T) {
	for name, style := range map[string]reports.Style{"compare-80.txt": {Width: 80}, "compare-120.txt": {Width: 120}} {
		text := written(t, func(w io.Writer) error {
			return reports.Comparison(w, inventedComparison(), ofStudy, reports.Table, style)
		})
		golden(t, name, text)
		fits(t, name, text, style.Width)
	}
}

func TestComparisonDocuments(t *testing.T) {
	for name, format := range map[string]reports.Format{"compare.md": reports.Markdown, "compare.csv": reports.CSV, "compare.json": reports.JSON} {
		golden(t, name, written(t, func(w io.Writer) error {
			return reports.Comparison(w, inventedComparison(), ofStudy, format, reports.Style{})
		}))
	}
}

// alike is a thing whose speed brings as much as it costs.
func alike(iv stats.Interval) decisions.Sides {
	return decisions.Sides{Faster: iv, Slower: iv, Middle: iv}
}

func inventedExplanation() *decisions.Explanation {
	x := &decisions.Explanation{
		Title: "Oat drink", Seed: 1, Replications: 50, Confidence: 0.95, Step: 0.01, Base: invented(),
		Worths: []decisions.Worth{
			{Where: "erector", Cause: "blank jam", Without: "no such stop", Charged: 206.17, Brings: around(171.3, 9.4)},
			{Where: "sealer", Cause: "jaw jam", Without: "no such stop", Charged: 151.7, Brings: around(160.2, 11)},
			{Where: "robot", Cause: "waits for pallet | places", Without: "never runs dry", Charged: 0.4, Brings: around(0.2, 1.3)},
			{Where: "plan", Cause: "break", Without: "worked through", Planned: true, Charged: 483, Brings: around(460, 6)},
		},
		Together: around(700, 20), Interaction: around(-91.7, 14),
		Elasticities: []decisions.Elasticity{
			{Name: "pace of the setting", Ours: true, Sides: alike(around(0.31, 0.02)), Holder: decisions.SettingHolds, PeriodShare: around(0.712, 0.01)},
			{Name: "conveyor (index and revolution)", Sides: alike(around(0.001, 0.004)), Holder: decisions.MasterHolds, PeriodShare: around(0, 0)},
			{Name: "erector", Sides: alike(around(0.0104, 0.0011)), Holder: decisions.StationHolds(0, "erector"), PeriodShare: around(0.074, 0.004)},
			{Name: "sealer", Sides: alike(around(0.66, 0.03)), Holder: decisions.StationHolds(2, "sealer"), PeriodShare: around(0.182, 0.012)},
			{Name: "crew (reaction)", Sides: alike(around(0.0083, 0.0008))},
		},
		Sum: alike(around(0.99, 0.04)), Shift: alike(around(1.01, 0.02)),
		Agreement: decisions.Disagree, Ahead: around(0.35, 0.04),
	}
	x.ByPeriods, x.BySpeed = &x.Elasticities[0], &x.Elasticities[3]
	return x
}

func TestExplanationScreens(t *testing.T) {
	for name, style := range map[string]reports.Style{"explain-80.txt": {Width: 80}, "explain-120.txt": {Width: 120}} {
		text := written(t, func(w io.Writer) error {
			return reports.ExplainedForecast(w, invented(), inventedExplanation(), ofStudy, reports.Table, style)
		})
		golden(t, name, text)
		fits(t, name, text, style.Width)
	}
}

func TestExplanationDocuments(t *testing.T) {
	for name, format := range map[string]reports.Format{"explain.md": reports.Markdown, "explain.csv": reports.CSV} {
		golden(t, name, written(t, func(w io.Writer) error {
			return reports.ExplainedForecast(w, invented(), inventedExplanation(), ofStudy, format, reports.Style{})
		}))
	}
}

// The JSON of an explained run is that of the run, with one key more.
func TestExplanationJSON(t *testing.T) {
	read := func(write func(io.Writer) error) map[string]any {
		var keys map[string]any
		if err := json.Unmarshal(written(t, write), &keys); err != nil {
			t.Fatal(err)
		}
		return keys
	}
	plain := read(func(w io.Writer) error { return reports.Forecast(w, invented(), reports.JSON, reports.Style{}) })
	keys := read(func(w io.Writer) error {
		return reports.ExplainedForecast(w, invented(), inventedExplanation(), ofStudy, reports.JSON, reports.Style{})
	})
	explanation, ok := keys["explanation"].(map[string]any)
	if !ok || len(keys) != len(plain)+1 {
		t.Fatalf("%d keys, %d without the explanation", len(keys), len(plain))
	}
	sum := 0.0
	for _, row := range explanation["elasticities"].([]any) {
		sum += row.(map[string]any)["elasticity"].(map[string]any)["mean"].(float64)
	}
	if got := explanation["elasticity_sum"].(map[string]any)["elasticity"].(map[string]any)["mean"].(float64); math.Abs(got-sum) > 0.01 || explanation["agreement"] != "disagree" {
		t.Errorf("sum %v, want %v; agreement %v", got, sum, explanation["agreement"])
	}
}
