package reports_test

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"dwellcast/reports"
	"dwellcast/scenarios"
	"dwellcast/stations"
)

// answer is the part of the JSON that scripts rely on.
type answer struct {
	Schema       int
	GoodRate     map[string]any `json:"good_rate"`
	GoodPerShift map[string]any `json:"good_per_shift"`
	Ideal        float64        `json:"ideal_per_shift"`
	SettingShare *float64       `json:"setting_share"`
	Replications int            `json:"shifts"`
	Seed         uint64
	Stations     []struct {
		Name, Kind string
		Shares     map[string]float64
		Bottleneck *float64 `json:"bottleneck_share"`
	}
	Losses []struct {
		Where, Cause string
		Cartons      float64
	}
}

func jsonOf(t rapid.TB, f *scenarios.Forecast) answer {
	var text strings.Builder
	if err := reports.Forecast(&text, f, reports.JSON, reports.Style{}); err != nil {
		t.Fatal(err)
	}
	var a answer
	if err := json.Unmarshal([]byte(text.String()), &a); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestJSONHoldsTheFixedKeys(t *testing.T) {
	a := jsonOf(t, invented())
	for _, key := range []string{"mean", "low", "high"} {
		if _, ok := a.GoodRate[key]; !ok {
			t.Errorf("good_rate has no %s", key)
		}
	}
	for _, key := range []string{"mean", "low", "high", "p10", "p50", "p90", "sd"} {
		if _, ok := a.GoodPerShift[key]; !ok {
			t.Errorf("good_per_shift has no %s", key)
		}
	}
	if a.Schema != 1 || a.Replications != 200 || a.Seed != 1 || a.SettingShare == nil || len(a.Stations) != 4 || len(a.Losses) != 10 {
		t.Errorf("keys are missing: %+v", a)
	}
	for _, st := range a.Stations {
		for state := range stations.NumStates {
			if _, ok := st.Shares[state.String()]; !ok {
				t.Errorf("%s has no share %s", st.Name, state)
			}
		}
		if len(st.Shares) != int(stations.NumStates) || st.Bottleneck == nil || st.Kind == "" {
			t.Errorf("keys of %s: %+v", st.Name, st)
		}
	}
}

// One replication gives no interval: bounds are null in JSON and "~" elsewhere.
func TestNothingAssessed(t *testing.T) {
	f := invented()
	f.Replications, f.GoodRate, f.GoodPerShift.Interval = 1, unassessed(f.GoodRate.Mean), unassessed(f.GoodPerShift.Mean)
	for format, want := range map[reports.Format]string{reports.JSON: `"low": null`, reports.CSV: ",~,~,", reports.Table: "~, not assessed"} {
		var text strings.Builder
		if err := reports.Forecast(&text, f, format, reports.Style{Width: 80}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(text.String(), want) {
			t.Errorf("%s does not hold %q", format, want)
		}
	}
}

// drawSheet draws a forecast in which ideal = good + losses holds in whole cartons.
func drawSheet(t *rapid.T) *scenarios.Forecast {
	f := invented()
	f.Replications = rapid.IntRange(1, 1000).Draw(t, "shifts")
	f.Losses = nil
	ideal := rapid.Int64Range(1, 20_000).Draw(t, "ideal")
	rest := ideal * int64(f.Replications)
	for i := range rapid.IntRange(0, 12).Draw(t, "losses") {
		total := rapid.Int64Range(-20, rest).Draw(t, "total")
		if rapid.Bool().Draw(t, "small") {
			total %= 300
		}
		rest -= total
		mean := float64(total) / float64(f.Replications)
		f.Losses = append(f.Losses, scenarios.Loss{Where: "station", Cause: fmt.Sprint("cause ", i), Kind: stations.Stoppage,
			Cartons: around(mean, 1), Total: total})
	}
	f.IdealPerShift = float64(ideal)
	f.GoodPerShift.Interval = around(float64(rest)/float64(f.Replications), rapid.Float64Range(0, 50).Draw(t, "half-width"))
	return f
}

func TestJSONAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := jsonOf(t, drawSheet(t))
		sum, _ := a.GoodPerShift["mean"].(float64)
		for _, loss := range a.Losses {
			sum += loss.Cartons
		}
		if math.Abs(sum-a.Ideal) > 1e-6 {
			t.Fatalf("good + losses = %.9f, ideal = %.9f", sum, a.Ideal)
		}
	})
}

var sheetRow = regexp.MustCompile(`\| (ideal|good|station) +\|[^|]*\| +([-.\d]+) \|[^|]*\|[^|]*\| +([-.\d]+) \|`)

// The printed figures of the loss sheet add up as a reader would add them, row by row and to the foot.
func TestPrintedSheetAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawSheet(t)
		var text strings.Builder
		if err := reports.Forecast(&text, f, reports.Markdown, reports.Style{}); err != nil {
			t.Fatal(err)
		}
		rows := sheetRow.FindAllStringSubmatch(text.String(), -1)
		if len(rows) < 2 || rows[0][1] != "ideal" || rows[len(rows)-1][1] != "good" {
			t.Fatalf("no sheet in:\n%s", text.String())
		}
		left := tenths(t, rows[0][2])
		for _, row := range rows[1 : len(rows)-1] {
			left += tenths(t, row[2])
			if left != tenths(t, row[3]) {
				t.Fatalf("row %q leaves %s, want %g tenths", row[0], row[3], left)
			}
		}
		if good := rows[len(rows)-1]; left != tenths(t, good[2]) || left != tenths(t, good[3]) {
			t.Fatalf("rows leave %g tenths, the foot says %s", left, good[2])
		}
	})
}

func tenths(t rapid.TB, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return math.Round(10 * x)
}

// Each warning is shown exactly once, with its mark beside a figure.
func TestWarningsTravelWithTheirFigures(t *testing.T) {
	f := invented()
	for _, about := range []string{"good_per_shift", "target", "bottleneck", "losses", "crew", "station sealer", "buffer robot",
		"loss erector/blank jam", "stop robot/waits for pallet | places", "", "something else"} {
		f.Warnings = append(f.Warnings, scenarios.Warning{About: about, Text: "careful of <" + about + ">"})
	}
	var out strings.Builder
	if err := reports.Forecast(&out, f, reports.Table, reports.Style{Width: 120}); err != nil {
		t.Fatal(err)
	}
	text, notes, _ := strings.Cut(out.String(), "\nNotes\n")
	for i := range f.Warnings {
		mark := fmt.Sprintf("[%d]", i+1)
		inText, inNotes := strings.Count(text, mark), strings.Count(notes, mark)
		if !(inText == 2 && inNotes == 0 || inText == 0 && inNotes == 1) {
			t.Errorf("%s stands %d times in the report and %d times in the notes", mark, inText, inNotes)
		}
		if n := strings.Count(out.String(), f.Warnings[i].Text); n != 1 {
			t.Errorf("%q is shown %d times", f.Warnings[i].Text, n)
		}
	}
	if n := strings.Count(notes, "["); n != 3 {
		t.Errorf("%d warnings are among the notes, want 3:\n%s", n, notes)
	}
}

// Names with bars and stars don't break the Markdown: every row of a table has as many bars as its head.
func TestMarkdownIsEscaped(t *testing.T) {
	var out strings.Builder
	f := invented()
	f.Title, f.Stations[0].Name = "# *Oat* | <b>", "a|b_c*"
	if err := reports.Forecast(&out, f, reports.Markdown, reports.Style{}); err != nil {
		t.Fatal(err)
	}
	bars, escaped := 0, regexp.MustCompile(`\\.`)
	pictures := regexp.MustCompile("(?s)```text.*?```")
	for line := range strings.Lines(pictures.ReplaceAllString(out.String(), "")) {
		n := strings.Count(escaped.ReplaceAllString(line, ""), "|")
		if bars != 0 && n != 0 && n != bars {
			t.Errorf("%d bars, want %d: %s", n, bars, line)
		}
		bars = n
	}
	if strings.Contains(out.String(), "<b>") || strings.Contains(out.String(), " *Oat*") {
		t.Error("text from the file is taken for markup")
	}
}

func TestFormats(t *testing.T) {
	for _, f := range reports.Formats() {
		if got, err := reports.ParseFormat(string(f)); err != nil || got != f {
			t.Errorf("%s: %v", f, err)
		}
	}
	if _, err := reports.ParseFormat("pdf"); err == nil || !strings.Contains(err.Error(), "markdown") {
		t.Errorf("error is %v", err)
	}
}

// Errors of the writer are passed on.
func TestWriteErrors(t *testing.T) {
	for _, format := range reports.Formats() {
		if err := reports.Forecast(full{}, invented(), format, reports.Style{}); err == nil {
			t.Errorf("%s says nothing of a full disk", format)
		}
		if err := reports.Budget(full{}, inventedBudget(nil), format, reports.Style{}); err == nil {
			t.Errorf("%s says nothing of a full disk", format)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }
