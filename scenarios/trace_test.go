package scenarios_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// TestTraces replays the exact traces of testdata/theory.csv (topic trace) through a line file with recorded times, and compares
// departure times, or starved and blocked totals up to the last departure, to the nanosecond.
func TestTraces(t *testing.T) {
	for _, r := range theoryRows(t) {
		if r.topic != "trace" {
			continue
		}
		var service [][]float64
		for _, part := range strings.Split(r.param("service"), "/") {
			service = append(service, numbers(part))
		}
		parts, n := len(service), len(service[0])
		var cycles []string
		for i := range n {
			var times []string
			for _, part := range service {
				times = append(times, fmt.Sprintf("%g s", part[i]))
			}
			cycles = append(cycles, "{recorded: ["+strings.Join(times, ", ")+"]}")
		}
		f, err := scenarios.Read(r.id, strings.NewReader(serialLine("shift: {length: 200 s}\n", cycles, numbers(r.param("b")), nil)), nil)
		if err != nil {
			t.Fatal(err)
		}
		list, err := scenarios.Trace(context.Background(), f, 1)
		if err != nil {
			t.Fatal(err)
		}
		leaves := departures(list, n, parts)
		if strings.Contains(r.parameters, "departure time") {
			var rows []string
			for p := range parts {
				var row []string
				for i := range n {
					row = append(row, fmt.Sprint(leaves[i][p].Seconds()))
				}
				rows = append(rows, strings.Join(row, " "))
			}
			if diff := cmp.Diff(r.expected, strings.Join(rows, "|")); diff != "" {
				t.Errorf("%s: %s", r.id, diff)
			}
			continue
		}
		totals := func(state stations.State) string {
			var row []string
			for i := range n {
				row = append(row, fmt.Sprint(inState(list, i, state, leaves[i][parts-1]).Seconds()))
			}
			return strings.Join(row, " ")
		}
		if diff := cmp.Diff(r.expected, totals(stations.Starved)+"|"+totals(stations.Blocked)); diff != "" {
			t.Errorf("%s: %s", r.id, diff)
		}
	}
}

// departures are when each of the first cartons left each station: the end of its last stretch there.
func departures(list []stations.Stretch, n, parts int) [][]time.Duration {
	leaves := make([][]time.Duration, n)
	for i := range leaves {
		leaves[i] = make([]time.Duration, parts)
	}
	for _, s := range list {
		if s.Carton >= 1 && s.Carton <= parts && s.State != stations.Starved {
			var i int
			fmt.Sscanf(s.Station, "m%d", &i)
			leaves[i-1][s.Carton-1] = max(leaves[i-1][s.Carton-1], s.To)
		}
	}
	return leaves
}

func inState(list []stations.Stretch, i int, state stations.State, until time.Duration) time.Duration {
	var sum time.Duration
	for _, s := range list {
		if s.Station == fmt.Sprintf("m%d", i+1) && s.State == state && s.From < until {
			sum += min(s.To, until) - s.From
		}
	}
	return sum
}
