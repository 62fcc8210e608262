package stations_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"dwellcast/sim/random"
	"dwellcast/stations"
)

// TestReferenceTraces runs every exact trace of the reference table, to the nanosecond.
func TestReferenceTraces(t *testing.T) {
	file, err := os.Open("../testdata/theory.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	ran := 0
	for _, row := range rows {
		id, topic, parameters, expected := row[0], row[1], row[3], row[4]
		if topic != "trace" {
			continue
		}
		ran++
		t.Run(id, func(t *testing.T) {
			want := strings.Split(expected, "|")
			if got := measured(t, parametersOf(parameters)); !cmp.Equal(got, want) {
				t.Errorf("got %v, want %v", got, want)
			}
		})
	}
	if ran == 0 {
		t.Error("the table has no trace")
	}
}

func parametersOf(text string) map[string]string {
	values := map[string]string{}
	for _, field := range strings.Split(text, ";") {
		key, value, _ := strings.Cut(field, "=")
		values[key] = value
	}
	return values
}

// measured runs the line of the parameters and gives the rows of its measure, in seconds.
func measured(t *testing.T, parameters map[string]string) []string {
	line, parts := traceLine(t, parameters)
	stretches := traced(t, newSimulation(t, line), 1, 0)
	visits := stays(line, stretches, parts+1)[:parts]
	switch measure := parameters["measure"]; {
	case strings.HasPrefix(measure, "departure time"):
		rows := make([]string, parts)
		for i, row := range visits {
			gone := make([]time.Duration, len(row))
			for j, v := range row {
				gone[j] = v.gone
			}
			rows[i] = seconds(gone)
		}
		return rows
	case measure == "starved totals|blocked totals":
		return []string{
			seconds(totals(line, stretches, visits, stations.Starved)),
			seconds(totals(line, stretches, visits, stations.Blocked)),
		}
	default:
		t.Fatalf("no measure %q", measure)
		return nil
	}
}

// traceLine builds the line whose service times are given part by part. One more part than given occupies the first station
// beyond the end, so that no further part comes.
func traceLine(t *testing.T, parameters map[string]string) (line *stations.Line, parts int) {
	rows := strings.Split(parameters["service"], "/")
	n := len(strings.Fields(rows[0]))
	line = &stations.Line{Lanes: 1, Shift: stations.Shift{Length: time.Second}}
	services := make([][]time.Duration, n)
	for _, row := range rows {
		for j, field := range strings.Fields(row) {
			d := time.Duration(number(t, field)*1e9 + 0.5)
			services[j] = append(services[j], d)
			line.Shift.Length += d
		}
	}
	services[0] = append(services[0], 2*line.Shift.Length)
	for j := range n {
		st := stations.Station{Name: strconv.Itoa(j + 1), Kind: stations.Machine, Units: 1, Feed: stations.Feed{Conveyor: -1},
			Parts: []stations.Part{{Name: "service", Time: must(random.Recorded(services[j]))}}}
		if j > 0 {
			b := strings.Split(parameters["b"], ",")[j-1]
			st.Feed.Buffer = &stations.Buffer{Capacity: int(number(t, b))}
		}
		line.Stations = append(line.Stations, st)
	}
	return line, len(rows)
}

// totals is the time of each station in a state up to its own last departure.
func totals(line *stations.Line, stretches map[unitOf][]stations.Stretch, visits [][]visit, state stations.State) []time.Duration {
	sums := make([]time.Duration, len(line.Stations))
	for j, st := range line.Stations {
		end := visits[len(visits)-1][j].gone
		for _, x := range stretches[unitOf{st.Name, 0}] {
			if x.State == state {
				sums[j] += max(0, min(x.To, end)-x.From)
			}
		}
	}
	return sums
}

func seconds(times []time.Duration) string {
	texts := make([]string, len(times))
	for i, d := range times {
		texts[i] = strconv.FormatFloat(d.Seconds(), 'f', -1, 64)
	}
	return strings.Join(texts, " ")
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
