package reports_test

import (
	"io"
	"math"
	"strings"
	"testing"

	"dwellcast/reports"
	"dwellcast/reports/chart"
	"dwellcast/scenarios/decisions"
)

// inventedSweep is a sweep of five points with a knee.
func inventedSweep(t *testing.T) *decisions.Sweep {
	t.Helper()
	vary, err := decisions.ParseVary("sealer.dwell=1s..1.4s/5")
	if err != nil {
		t.Fatal(err)
	}
	today, err := decisions.ParseValue("1.15 s")
	if err != nil {
		t.Fatal(err)
	}
	s := &decisions.Sweep{Title: "Oat drink", Vary: []decisions.Vary{vary}, Replications: 50, Confidence: 0.95, Today: &today, Target: 1350,
		Figure: decisions.Figure{Name: "good_rate", Unit: "cartons/h"}, Bend: decisions.Kneed,
		Knee: &decisions.Knee{At: around(1.2204317, 0.0012), Before: around(0.1, 0.4), After: around(-512.3, 61), Level: 1340, From: decisions.SettingHolds, To: decisions.StationHolds(2, "sealer")}}
	for i, v := range vary.Values {
		s.Points = append(s.Points, decisions.Point{Values: []decisions.Value{v}, Figure: around(1340-20*float64(i), 6.3), Holder: decisions.StationHolds(2, "sealer"), HolderShare: 0.9})
	}
	return s
}

// A sweep shows no digit of the knee, or of its slopes, that the intervals do not support, and a bend that is no knee is called none.
func TestSweepWords(t *testing.T) {
	s := inventedSweep(t)
	words := func() string {
		return string(written(t, func(w io.Writer) error { return reports.Sweep(w, s, ofStudy, reports.Table, reports.Style{Width: 200}) }))
	}
	want := "good_rate of sealer.dwell: flat to 1.2204 s, where sealer becomes critical; then down by 5.1 cartons/h for every 10 ms"
	for _, text := range []string{want, "Knee at 1.2204 s (95 % interval 1.2192 to 1.2217)"} {
		if got := words(); !strings.Contains(got, text) {
			t.Errorf("no %q in\n%s", text, got)
		}
	}
	s.Knee = nil
	for bend := decisions.NotSought; bend < decisions.Kneed; bend++ {
		s.Bend = bend
		if got := words(); !strings.Contains(strings.ToLower(got), "knee") && bend != decisions.Unclear || strings.Contains(got, "Knee at") {
			t.Errorf("bend %d:\n%s", bend, got)
		}
	}
}

// Today's value, the target and the knee are lines in the chart.
func TestSweepChartShowsWhereTheLineStands(t *testing.T) {
	s := inventedSweep(t)
	at := func() map[string]float64 {
		list := map[string]float64{}
		for _, r := range reports.SweepChart(s, ofStudy).(chart.Line).References {
			list[r.Label] = r.At
		}
		return list
	}
	if got := at(); got["today 1.15 s"] != 1.15 || got["target 1350 cartons/h"] != 1350 || got["knee 1.2204 s"] != 1.2204317 {
		t.Errorf("%v", got)
	}
	s.Today, s.Target, s.Knee = nil, math.NaN(), nil
	if got := at(); len(got) != 0 {
		t.Errorf("%v", got)
	}
}
