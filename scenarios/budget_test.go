package scenarios_test

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"dwellcast/scenarios"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// referenceRows reads the rows of a topic from a reference table, by the names of its columns.
func referenceRows(t *testing.T, table, topic string) []map[string]string {
	t.Helper()
	file, err := os.Open("../testdata/" + table)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		if row["topic"] == topic {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no row of topic %s", table, topic)
	}
	return rows
}

func seconds(t *testing.T, text string) time.Duration {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return time.Duration(math.Round(x * 1e9))
}

func part(d time.Duration) []stations.Part {
	return []stations.Part{{Name: "act", Time: random.Fixed(d)}}
}

// alone is a line of stations that run on their own, hand to hand.
func alone(acts ...time.Duration) *stations.Line {
	line := &stations.Line{Lanes: 1, Shift: stations.Shift{Length: 8 * time.Hour}}
	for i, act := range acts {
		st := stations.Station{Name: "station " + strconv.Itoa(i+1), Kind: stations.Machine, Units: 1, Parts: part(act),
			Feed: stations.Feed{Conveyor: -1}}
		if i > 0 {
			st.Feed.Buffer = &stations.Buffer{}
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}

// onConveyor is the same line with all stations on one conveyor.
func onConveyor(index time.Duration, acts ...time.Duration) *stations.Line {
	line := alone(acts...)
	line.Conveyors = []stations.Conveyor{{Index: index}}
	for i := range line.Stations {
		line.Stations[i].Feed = stations.Feed{Conveyor: 0, Pitches: min(i, 1)}
	}
	return line
}

// Rows of topic replenishment, such as TR052: "1200/h: blanks 200/magazine 45 s; glue 6000 120 s; ..." gives the operator's
// seconds an hour and the share of his time.
func TestReplenishment(t *testing.T) {
	head := regexp.MustCompile(`^(\d+)/h: (.*)$`)
	item := regexp.MustCompile(`^(\w+) (\d+)(?:/\w+)? (\d+) s$`)
	answer := regexp.MustCompile(`^([\d.]+) operator-s/h = ([\d.]+)%$`)
	for _, row := range referenceRows(t, "trade.csv", "replenishment") {
		given, want := head.FindStringSubmatch(row["inputs"]), answer.FindStringSubmatch(row["expected"])
		if given == nil || want == nil {
			t.Fatalf("%s is written in another way: %q, %q", row["id"], row["inputs"], row["expected"])
		}
		line := alone(time.Second)
		line.Setting, _ = strconv.ParseFloat(given[1], 64)
		line.Crew.Attendants = 1
		for text := range strings.SplitSeq(given[2], "; ") {
			m := item.FindStringSubmatch(text)
			if m == nil {
				t.Fatalf("%s: can't read %q", row["id"], text)
			}
			holds, _ := strconv.Atoi(m[2])
			line.Stations[0].Materials = append(line.Stations[0].Materials,
				stations.Material{Name: m[1], Holds: holds, Reload: holds, Takes: random.Fixed(seconds(t, m[3]))})
		}
		crew := scenarios.BudgetOf(line).Crew
		wantSeconds, _ := strconv.ParseFloat(want[1], 64)
		if math.Abs(crew.Seconds-wantSeconds) > 1e-6 {
			t.Errorf("%s: %g s of work an hour, want %g", row["id"], crew.Seconds, wantSeconds)
		}
		if got := strconv.FormatFloat(100*crew.Load, 'f', 3, 64); got != want[2] {
			t.Errorf("%s: %s %% of the time, want %s", row["id"], got, want[2])
		}
	}
}

// Rows of topic timing-chart, such as TR036: "erect 1.2 fill 2.4 seal 3.0 offload 2.8 s; then seal 3.5" gives a rate for each
// state of the line.
func TestTimingChart(t *testing.T) {
	word := regexp.MustCompile(`(\w+) ([\d.]+)`)
	number := regexp.MustCompile(`[\d.]+`)
	for _, row := range referenceRows(t, "trade.csv", "timing-chart") {
		wants := number.FindAllString(row["expected"], -1)
		times, order := map[string]time.Duration{}, []string{}
		for k, change := range strings.Split(row["inputs"], "; then ") {
			for _, m := range word.FindAllStringSubmatch(change, -1) {
				if _, known := times[m[1]]; !known {
					order = append(order, m[1])
				}
				times[m[1]] = seconds(t, m[2])
			}
			var acts []time.Duration
			for _, name := range order {
				acts = append(acts, times[name])
			}
			if got := strconv.FormatFloat(scenarios.BudgetOf(alone(acts...)).Rate, 'f', 3, 64); got != wants[k] {
				t.Errorf("%s: %s cartons/h after %q, want %s", row["id"], got, change, wants[k])
			}
		}
	}
}

// The mean of the longest of n exponential acts is H_n and its variance the sum of 1/k^2 (order statistics, David and Nagaraja
// 2003, from memory); the sampled cycle lies within five standard errors.
func TestDrawnTimesLengthenTheCycle(t *testing.T) {
	for n := 1; n <= 5; n++ {
		acts := make([]time.Duration, n)
		line := onConveyor(0, acts...)
		mean, variance := 0.0, 0.0
		for k := range line.Stations {
			law, err := random.Exponential(1)
			if err != nil {
				t.Fatal(err)
			}
			line.Stations[k].Parts = []stations.Part{{Name: "act", Time: random.Drawn(law)}}
			mean += 1 / float64(k+1)
			variance += 1 / float64((k+1)*(k+1))
		}
		got := scenarios.BudgetOf(line).Sections[0].Expected.Seconds()
		if margin := 5 * math.Sqrt(variance/40_000); math.Abs(got-mean) > margin {
			t.Errorf("%d stations: mean cycle %g s, want %g within %g", n, got, mean, margin)
		}
	}
}

// Cam gate with deterministic work (elementary): 1.05 s of work wait for the second zero of a 1 s master, 1.0 s for none.
func TestCamZero(t *testing.T) {
	for _, c := range []struct{ work, cycle time.Duration }{
		{1050 * time.Millisecond, 2 * time.Second}, {time.Second, time.Second}, {time.Second + 1, 2 * time.Second},
	} {
		line := onConveyor(0, c.work)
		line.Conveyors[0].Revolution, line.Conveyors[0].Release = time.Second, stations.AtCamZero
		if got := scenarios.BudgetOf(line).Sections[0].Cycle; got != c.cycle {
			t.Errorf("work of %v gives a cycle of %v, want %v", c.work, got, c.cycle)
		}
	}
	line := onConveyor(0, time.Second/2)
	line.Setting = 2400 // 1.5 s
	line.Conveyors[0].Revolution, line.Conveyors[0].Release = time.Second, stations.AtCamZero
	b := scenarios.BudgetOf(line)
	if b.Rate != 1800 || b.Limit.Kind != scenarios.ByCamZero {
		t.Errorf("rate %g limited by %v, want 1800 by the cam zero", b.Rate, b.Limit)
	}
}

// A conveyor that is not the slowest has whole revolutions of slack only: behind it a station of 2.5 s leaves a 1 s master two of
// them, so 0.4 s of work may grow to 2 s (hand arithmetic).
func TestCamZeroLeavesWholeRevolutions(t *testing.T) {
	line := onConveyor(0, 400*time.Millisecond)
	line.Conveyors[0].Revolution, line.Conveyors[0].Release = time.Second, stations.AtCamZero
	line.Stations = append(line.Stations, stations.Station{Name: "slow", Kind: stations.Machine, Units: 1,
		Parts: part(2500 * time.Millisecond), Feed: stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 10}}})
	st := scenarios.BudgetOf(line).Sections[0].Stations[0]
	if st.Slack != 1600*time.Millisecond || st.Parts[0].Turns != 2*time.Second {
		t.Errorf("slack %v, critical above %v; want 1.6 s and 2 s", st.Slack, st.Parts[0].Turns)
	}
}

// A 1.42 s seal act after a 0.71 s index allows 1690/h, and 0.1 s more dwell 1614/h (hand arithmetic: 3600 s over 2.13 and 2.23 s).
func TestCriticalStationChangesWithTheSetting(t *testing.T) {
	line := onConveyor(710*time.Millisecond, 900*time.Millisecond, 1420*time.Millisecond)
	line.Setting = 1500 // 2.4 s
	b := scenarios.BudgetOf(line)
	if b.Limit.Kind != scenarios.BySetting || b.Rate != 1500 || b.Next != 1 || math.Round(b.Ceiling) != 1690 {
		t.Errorf("limit %v, rate %g, next %d at %g; want the setting, 1500, the second at 1690", b.Limit, b.Rate, b.Next, b.Ceiling)
	}
	sealer := b.Sections[0].Stations[1]
	if sealer.Slack != 270*time.Millisecond || sealer.Parts[0].Turns != 1690*time.Millisecond {
		t.Errorf("slack %v, critical above %v; want 0.27 s and 1.69 s", sealer.Slack, sealer.Parts[0].Turns)
	}
	line.Setting = 1800 // 2 s
	b = scenarios.BudgetOf(line)
	sealer = b.Sections[0].Stations[1]
	if !sealer.Critical || sealer.Relief != 130*time.Millisecond || sealer.Parts[0].Turns != 1290*time.Millisecond {
		t.Errorf("critical %v, relief %v, free below %v; want 0.13 s and 1.29 s", sealer.Critical, sealer.Relief, sealer.Parts[0].Turns)
	}
	line.Stations[1].Parts = part(1520 * time.Millisecond)
	if b = scenarios.BudgetOf(line); math.Round(b.Rate) != 1614 {
		t.Errorf("rate %g, want 1614", b.Rate)
	}
}

// What the budget says of a part is what happens when the part is changed to that.
func TestTurningPointsAreTurningPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := drawLine(t)
		b := scenarios.BudgetOf(line)
		for _, s := range b.Sections {
			for _, st := range s.Stations {
				turns := st.Parts[0].Turns
				if turns <= 2 {
					continue
				}
				line.Stations[st.Station].Parts = part(turns - 2)
				below := scenarios.BudgetOf(line)
				line.Stations[st.Station].Parts = part(turns + 2 + turns/1000)
				above := scenarios.BudgetOf(line)
				line.Stations[st.Station].Parts = part(st.Act)
				if below.Rate < b.Rate*(1-1e-8) {
					t.Fatalf("station %d at %v, before it turns, lowers the rate from %g to %g", st.Station, turns, b.Rate, below.Rate)
				}
				if above.Rate >= below.Rate {
					t.Fatalf("station %d past %v leaves the rate at %g", st.Station, turns, above.Rate)
				}
				if above.Limit != (scenarios.Limit{Kind: scenarios.ByStation, Station: st.Station}) {
					t.Fatalf("station %d past %v is not critical: %v", st.Station, turns, above.Limit)
				}
			}
		}
	})
}

// drawLine draws a line of fixed times: a conveyor, then stations on their own.
func drawLine(t *rapid.T) *stations.Line {
	act := rapid.Int64Range(int64(time.Millisecond), int64(5*time.Second))
	line := &stations.Line{Lanes: rapid.IntRange(1, 3).Draw(t, "lanes"), Shift: stations.Shift{Length: time.Hour}}
	line.Setting = rapid.Float64Range(300, 9000).Draw(t, "setting")
	conveyor := stations.Conveyor{Index: time.Duration(rapid.Int64Range(0, int64(time.Second)).Draw(t, "index"))}
	if rapid.Bool().Draw(t, "gate") {
		conveyor.Revolution, conveyor.Release = time.Duration(act.Draw(t, "revolution")), stations.AtCamZero
	}
	line.Conveyors = []stations.Conveyor{conveyor}
	for i := range rapid.IntRange(1, 6).Draw(t, "stations") {
		st := stations.Station{Name: strconv.Itoa(i), Kind: stations.Machine, Units: 1, Parts: part(time.Duration(act.Draw(t, "act")))}
		if i >= 3 {
			st.Units = rapid.IntRange(1, 2).Draw(t, "units")
			st.Feed = stations.Feed{Conveyor: -1, Buffer: &stations.Buffer{Capacity: 10}}
		}
		line.Stations = append(line.Stations, st)
	}
	return line
}
