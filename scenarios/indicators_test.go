package scenarios_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

func agrees(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.9g, want %.9g", what, got, want)
	}
}

// TestIndicatorsOfReference checks the arithmetic against the rows oee-* of testdata/theory.csv and kpi-* of testdata/trade.csv,
// which carry their sources.
func TestIndicatorsOfReference(t *testing.T) {
	for _, r := range theoryRows(t) {
		want := numbers(strings.ReplaceAll(r.expected, "/", " "))
		switch {
		case strings.Contains(r.model, "ISO 22400-2"):
			p := scenarios.Production{PlannedBusy: 60 * r.number("PBT"), ActualProduction: 60 * r.number("APT"), PerCarton: r.number("PRI"), Produced: r.number("PQ"), Good: r.number("GQ")}
			i := p.Indicators()
			for k, got := range []float64{i.Availability, i.Effectiveness, i.Quality, i.OEE} {
				agrees(t, fmt.Sprintf("%s[%d]", r.id, k), got, want[k], 1e-8)
			}
		case r.model == "OEE factors":
			p := scenarios.Production{PlannedBusy: r.number("loading"), ActualProduction: r.number("loading") - r.number("downtime"),
				PerCarton: r.number("ideal cycle"), Produced: r.number("output"), Good: r.number("output") - r.number("defects")}
			i := p.Indicators()
			for k, got := range []float64{i.Availability, i.Effectiveness, i.Quality, i.OEE} {
				agrees(t, fmt.Sprintf("%s[%d]", r.id, k), got, want[k], 1e-6)
			}
		}
	}
	for _, r := range tradeRows(t) {
		switch r[1] {
		case "kpi-iso22400":
			var pbt, apt, rate, pq, gq, a, e, q, oee float64
			scan(t, r[2], "PBT %g min; APT %g min; PRU 1/%g min; PQ %g; GQ %g", &pbt, &apt, &rate, &pq, &gq)
			scan(t, r[3], "availability %g; effectiveness %g; quality ratio %g; OEE %g;", &a, &e, &q, &oee)
			i := scenarios.Production{PlannedBusy: pbt, ActualProduction: apt, PerCarton: 1 / rate, Produced: pq, Good: gq}.Indicators()
			agrees(t, r[0]+" availability", i.Availability, a, 1e-6)
			agrees(t, r[0]+" effectiveness", i.Effectiveness, e, 1e-9)
			agrees(t, r[0]+" quality", i.Quality, q, 1e-9)
			agrees(t, r[0]+" OEE", i.OEE, oee, 1e-9)
		case "kpi-technical-efficiency":
			var apt, adet, want float64
			scan(t, r[2], "APT %g; ADET %g", &apt, &adet)
			scan(t, r[3], "APT/(APT+ADET)=%g", &want)
			agrees(t, r[0], scenarios.TechnicalEfficiency(apt, adet), want, 1e-6)
		}
	}
}

func scan(t *testing.T, text, format string, into ...any) {
	t.Helper()
	if n, err := fmt.Sscanf(text, format, into...); n < len(into) {
		t.Fatalf("%q does not read as %q: %v", text, format, err)
	}
}

func tradeRows(t *testing.T) [][]string {
	t.Helper()
	f, err := os.Open("../testdata/trade.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// TestIndicatorsOfRun: whatever the split, OEE = good x PRI/PBT (row oee-identity of testdata/theory.csv), worked out from what a
// run says beside the indicators.
func TestIndicatorsOfRun(t *testing.T) {
	f, err := scenarios.Open("example:oat-drink", nil)
	if err != nil {
		t.Fatal(err)
	}
	out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 20})
	if err != nil {
		t.Fatal(err)
	}
	busy := out.IdealPerShift
	for _, loss := range out.Losses {
		if loss.Kind == stations.PlannedStop {
			busy -= loss.Cartons.Mean
		}
	}
	i := out.Indicators
	agrees(t, "OEE", i.OEE, out.GoodPerShift.Mean/busy, 1e-12)
	agrees(t, "product", i.Availability*i.Effectiveness*i.Quality, i.OEE, 1e-12)
	if i.Availability <= 0 || i.Availability > 1 || i.Effectiveness > 1 || i.Quality > 1 {
		t.Errorf("not shares: %+v", i)
	}
}

// TestPublishedLineFigures runs published figures of lines as line files: rows kpi-throughput of testdata/trade.csv.
func TestPublishedLineFigures(t *testing.T) {
	for _, r := range tradeRows(t) {
		if r[1] != "kpi-throughput" {
			continue
		}
		var run, of, rate, perMinute, units float64
		scan(t, r[2], "run %g of %g min at %g/min", &run, &of, &rate)
		fields := strings.Split(r[3], "; ")
		scan(t, fields[1], "%g/min", &perMinute)
		scan(t, fields[2], "%g units", &units)
		// The time not run is one planned stop.
		line := fmt.Sprintf(`
setting: %g cartons/h
shift: {length: %g min, start_up: %g min}
stations: [{name: line, kind: machine, cycle: %.9f s}]
`, 60*rate, of, of-run, 60/rate)
		f, err := scenarios.Read(r[0], strings.NewReader(line), nil)
		if err != nil {
			t.Fatal(err)
		}
		out, err := scenarios.Run(context.Background(), f, scenarios.Options{Replications: 2})
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, r[0]+" units", out.GoodPerShift.Mean, units, 1)            // the last carton may be cut short
		agrees(t, r[0]+" per minute", out.GoodRate.Mean/60, perMinute, 1/of) // one carton in that time
	}
}
