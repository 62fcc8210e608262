package bottleneck_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"dwellcast/sim/bottleneck"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// noise is what the numerically exact shares may be wrong by, well above the
// solver's 1e-13 a sweep.
const noise = 1e-9

// row is one line of the reference table.
type row struct {
	id, model, expected string
	parameters          map[string]string
}

func theoryRows(t *testing.T, topic string) []row {
	t.Helper()
	file, err := os.Open("../../testdata/theory.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, r := range records[1:] {
		if r[1] != topic {
			continue
		}
		parameters := map[string]string{}
		for part := range strings.SplitSeq(r[3], ";") {
			key, value, _ := strings.Cut(part, "=")
			parameters[key] = value
		}
		rows = append(rows, row{r[0], r[2], r[4], parameters})
	}
	if len(rows) == 0 {
		t.Fatalf("no rows of topic %s", topic)
	}
	return rows
}

// Every row of the topic, each with the source its own column gives. The
// elasticities are not a rule of this package: here they check the chain
// that the rules are tried on.
func TestBottleneckRows(t *testing.T) {
	for _, r := range theoryRows(t, "bottleneck") {
		t.Run(r.id, func(t *testing.T) {
			switch {
			case strings.Contains(r.model, "elasticity"):
				checkElasticities(t, r)
			case strings.Contains(r.model, "average active period"):
				checkAverage(t, r)
			case strings.Contains(r.model, "shifting bottleneck"):
				checkShifting(t, r)
			case strings.Contains(r.model, "exact blocked/starved shares"):
				checkRulesOnLine(t, r)
			case strings.Contains(r.model, "arrow rule"):
				checkArrows(t, r)
			default:
				t.Fatalf("no check for the model %q", r.model)
			}
		})
	}
}

// activity parses "A:0-6 8-30|B:1-10", in seconds. The key may carry a note.
func activity(t *testing.T, r row) (log bottleneck.Log, from, to time.Duration) {
	t.Helper()
	for key, value := range r.parameters {
		if !strings.HasPrefix(key, "log") {
			continue
		}
		for station := range strings.SplitSeq(value, "|") {
			_, list, _ := strings.Cut(station, ":")
			var periods []bottleneck.Period
			for field := range strings.FieldsSeq(list) {
				start, end, _ := strings.Cut(field, "-")
				periods = append(periods, bottleneck.Period{Start: seconds(t, start), End: seconds(t, end)})
			}
			log = append(log, periods)
		}
	}
	start, end, ok := strings.Cut(r.parameters["horizon"], "..")
	if !ok {
		t.Fatalf("no horizon in %v", r.parameters)
	}
	return log, seconds(t, start), seconds(t, end)
}

func seconds(t *testing.T, text string) time.Duration {
	t.Helper()
	d, err := time.ParseDuration(strings.TrimSpace(text) + "s")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var xs []float64
	for _, field := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;", r) }) {
		x, err := strconv.ParseFloat(field, 64)
		if err != nil {
			t.Fatal(err)
		}
		xs = append(xs, x)
	}
	return xs
}

func checkAverage(t *testing.T, r row) {
	log, from, to := activity(t, r)
	means, station := bottleneck.AverageActivePeriod(log, from, to)
	list, name, _ := strings.Cut(r.expected, " -> ")
	for i, want := range numbers(t, list) {
		if math.Abs(means[i].Seconds()-want) > 1e-6 {
			t.Errorf("mean of %c: got %v, want %g s", 'A'+i, means[i], want)
		}
	}
	if got := string(rune('A' + station)); got != name {
		t.Errorf("bottleneck: got %s, want %s", got, name)
	}
}

func checkShifting(t *testing.T, r row) {
	log, from, to := activity(t, r)
	if !strings.HasPrefix(r.parameters["measure"], "sole time") {
		t.Fatalf("no check for measure %q", r.parameters["measure"])
	}
	var want []time.Duration
	for field := range strings.FieldsSeq(r.expected) {
		want = append(want, seconds(t, field))
	}
	if diff := cmp.Diff(want, bottleneck.Shifting(log, from, to).Sole); diff != "" {
		t.Errorf("sole times from the log (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(want, track(bottleneck.NewTracker(len(log)), log, to).Sole); diff != "" {
		t.Errorf("sole times from the tracker (-want +got):\n%s", diff)
	}
}

func checkArrows(t *testing.T, r row) {
	got := bottleneck.ArrowRule(numbers(t, r.parameters["BL"]), numbers(t, r.parameters["ST"]), noise)
	parts := strings.Split(r.expected, ";")
	if set := oneBased(got.Stations, ", "); set != parts[0] {
		t.Errorf("bottlenecks: got %s, want %s", set, parts[0])
	}
	if primary := fmt.Sprintf("primary=%d", got.Primary+1); primary != parts[1] {
		t.Errorf("got %s, want %s", primary, parts[1])
	}
	want := numbers(t, strings.TrimPrefix(parts[2], "severity="))
	if diff := cmp.Diff(want, got.Severity, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Errorf("severity (-want +got):\n%s", diff)
	}
}

// meansAndSlots reads "means=1.2,1,1" and "b=1,1".
func meansAndSlots(t *testing.T, r row) serialLine {
	t.Helper()
	line := serialLine{means: numbers(t, r.parameters["means"])}
	for _, b := range numbers(t, r.parameters["b"]) {
		line.slots = append(line.slots, int(b))
	}
	return line
}

// checkElasticities takes central differences of the exact throughput.
func checkElasticities(t *testing.T, r row) {
	const step = 1e-3 // in ln speed; the error is of its square
	line := meansAndSlots(t, r)
	want := numbers(t, r.expected)
	for i, mean := range line.means {
		line.means[i] = mean * math.Exp(-step)
		faster := line.solve().throughput
		line.means[i] = mean * math.Exp(step)
		slower := line.solve().throughput
		line.means[i] = mean
		if got := math.Log(faster/slower) / (2 * step); math.Abs(got-want[i]) > 2e-6 {
			t.Errorf("elasticity to station %d: got %.6f, want %.6f", i+1, got, want[i])
		}
	}
}

func checkRulesOnLine(t *testing.T, r row) {
	exact := meansAndSlots(t, r).solve()
	arrows := bottleneck.ArrowRule(exact.blocked, exact.starved, noise)
	turning := bottleneck.TurningPoint(exact.blocked, exact.starved, noise)
	got := fmt.Sprintf("%s|%s|%d", oneBased(turning, ", "), oneBased(arrows.Stations, ", "), arrows.Primary+1)
	if got != r.expected {
		t.Errorf("turning|arrow set|primary: got %s, want %s\nblocked %.4f\nstarved %.4f", got, r.expected, exact.blocked, exact.starved)
	}
}

// oneBased prints stations as the table numbers them.
func oneBased(stations []int, separator string) string {
	var names []string
	for _, i := range stations {
		names = append(names, strconv.Itoa(i+1))
	}
	return "[" + strings.Join(names, separator) + "]"
}

// The chain that the rules are checked on is itself checked by the
// throughput of every row of the topic serial-exp it can express.
func TestExponentialLineThroughput(t *testing.T) {
	checked := 0
	for _, r := range theoryRows(t, "serial-exp") {
		line, ok := lineOf(r)
		if !ok || r.parameters["measure"] != "throughput" {
			continue
		}
		want, err := strconv.ParseFloat(r.expected, 64)
		if err != nil {
			continue
		}
		checked++
		if got := line.solve().throughput; math.Abs(got-want) > 1e-7 {
			t.Errorf("%s: throughput %.8f, want %.8f", r.id, got, want)
		}
	}
	if checked < 10 {
		t.Errorf("only %d rows could be read", checked)
	}
}

// lineOf reads "means=all 1" or "means=1,2" and "b=2 each" or "b=1,2", for
// lines small enough to be solved at once.
func lineOf(r row) (line serialLine, ok bool) {
	n, err := strconv.Atoi(r.parameters["stations"])
	if err != nil || n > 4 {
		return line, false
	}
	means := listOf(strings.TrimPrefix(r.parameters["means"], "all "), n)
	slots := listOf(strings.TrimSuffix(r.parameters["b"], " each"), n-1)
	for _, b := range slots {
		line.slots = append(line.slots, int(b))
	}
	line.means = means
	return line, len(means) == n && len(slots) == n-1
}

// listOf reads n numbers, or one that stands for all.
func listOf(text string, n int) (xs []float64) {
	fields := strings.Split(text, ",")
	for i := range n {
		if len(fields) != 1 && i >= len(fields) {
			return nil
		}
		x, err := strconv.ParseFloat(fields[min(i, len(fields)-1)], 64)
		if err != nil {
			return nil
		}
		xs = append(xs, x)
	}
	return xs
}
