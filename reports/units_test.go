package reports_test

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"dwellcast/reports"
	"dwellcast/scenarios"
)

// movingLine is a line with all that a timing tells of lengths, volumes, speeds, torques and temperatures. Each quantity stands in it twice, in
// US units and in metric ones: <6 in|152.4 mm>.
const movingLine = `
setting: 900 cartons/h
carton: {length: <4 in|101.6 mm>, width: <4 in|101.6 mm>, height: <10 in|254 mm>}
liquid: {damping: 1 %, freeboard: <1.5 in|38.1 mm>}
conveyor:
  pitch: <6 in|152.4 mm>
  revolution: 75 % of pace
  index: {from: 0 deg, to: 110 deg, law: modified sine}
  acceleration: <10 ft/s2|3.048 m/s2>
  drive: {travel: <6 in/rev|152.4 mm/rev>, mass: 45 kg, rated_speed: 600 rpm, rated_torque: <40 lbf in|4.5193933 N m>, peak_torque: <120 lbf in|13.55818 N m>}
stations:
  - name: erector
    kind: erect
    bottom_seal: 0.5 s
    cams:
      arm: [{move: index, by: 90 deg, from: 0 deg, to: 120 deg, law: cycloidal}]
    drop: {at: 150 deg, height: <2 in|50.8 mm>, free: 5 deg}
  - name: filler
    kind: fill
    after: {pitches: 2}
    dosing:
      dose: <60 fl oz|1774.41176 mL>
      declared: <59 fl oz|1744.83823 mL>
      spread: <0.2 fl oz|5.914706 mL>
      cylinder: {volume: <10 floz/in|11.6431 mL/mm>, travel: <7 in|177.8 mm>}
      nozzle_bore: <2 in|50.8 mm>
      splash: <12 ft/s|3.6576 m/s>
      tip: {top: <11 in|279.4 mm>, at_least: <0.2 in|5.08 mm>}
    cams:
      nozzle:
        moves:
          - {move: rise, by: <8 in|203.2 mm>, from: 112 deg, to: 170 deg, law: modified sine}
          - {move: return, by: <8 in|203.2 mm>, from: 175 deg, to: 355 deg, law: modified sine}
        drive: {travel: <2 in/rev|50.8 mm/rev>, mass: 8 kg, rated_torque: <12 lbf in|1.355818 N m>}
      piston:
        moves:
          - {move: rise, by: dose, from: 0 deg, to: 150 deg, law: modified sine}
          - {move: return, by: dose, from: 180 deg, to: 290 deg, law: modified sine}
      plough:
        moves: [{move: rise, by: <1 in|25.4 mm>, from: 120 deg, to: 200 deg, law: cycloidal}, {move: return, by: <1 in|25.4 mm>, from: 200 deg, to: 280 deg, law: cycloidal}]
        clear: [{below: <0.1 in|2.54 mm>, while: conveyor moves}]
        acceleration: <100 ft/s2|30.48 m/s2>
  - name: sealer
    kind: seal
    after: {pitches: 2}
    jaws: {stroke: <3 in|76.2 mm>, speed: <2 ft/s|0.6096 m/s>, acceleration: <20 ft/s2|6.096 m/s2>}
    dwell: 1.4 s
    heat: {board: <0.02 in|0.508 mm>, diffusivity: 0.13 mm2/s, jaws: <390 degF|198.8888889 degC>, wanted: <212 degF|100 degC>}
`

// inUnits is the line in one of its two systems of units.
func inUnits(us bool) string {
	return regexp.MustCompile(`<([^|>]*)\|([^>]*)>`).ReplaceAllStringFunc(movingLine, func(both string) string {
		one, other, _ := strings.Cut(strings.Trim(both, "<>"), "|")
		if us {
			return one
		}
		return other
	})
}

func timingOf(t *testing.T, text string, format reports.Format) string {
	t.Helper()
	f, err := scenarios.Read("line.yaml", strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	timing, err := scenarios.TimingOf(f)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := reports.Timing(&out, timing, format, reports.Style{Width: 200}); err != nil {
		t.Fatal(err)
	}
	return strings.NewReplacer("plough below 0.1 in", "plough low", "plough below 2.54 mm", "plough low").Replace(out.String()) // as written
}

// TestUnitsComeBack: a page tells lengths, volumes, speeds, torques and temperatures in the units that the file is written in, and in no other.
func TestUnitsComeBack(t *testing.T) {
	metric := regexp.MustCompile(`\d (mm|mL|L/s|m/s2?|N m|°C)\b|\bm {2,}\d|kelvin`)
	us := regexp.MustCompile(`\d (in|fl oz|ft/s|lbf in|in/s2|°F)\b|\bin {2,}\d`)
	for _, c := range []struct {
		us          bool
		wanted, not *regexp.Regexp
	}{{true, us, metric}, {false, metric, us}} {
		page := timingOf(t, inUnits(c.us), reports.Table)
		if found := c.not.FindAllString(page, -1); found != nil {
			t.Errorf("US %v: %q in\n%s", c.us, found, page)
		}
		if found := c.wanted.FindAllString(page, -1); len(found) < 30 {
			t.Errorf("US %v: only %d quantities: %q", c.us, len(found), found)
		}
	}
}

// TestDataAreMetric: figures in JSON and CSV are SI, however the file is written.
func TestDataAreMetric(t *testing.T) {
	number := regexp.MustCompile(`-?\d+(\.\d+)?(e[-+]?\d+)?`)
	for _, format := range []reports.Format{reports.JSON, reports.CSV} {
		us, metric := figuresOf(timingOf(t, inUnits(true), format)), figuresOf(timingOf(t, inUnits(false), format))
		if a, b := number.ReplaceAllString(us, "#"), number.ReplaceAllString(metric, "#"); a != b {
			t.Errorf("%s: other words", format)
		}
		a, b := number.FindAllString(us, -1), number.FindAllString(metric, -1)
		for i := range min(len(a), len(b)) {
			x, errX := strconv.ParseFloat(a[i], 64)
			y, errY := strconv.ParseFloat(b[i], 64)
			if errX != nil || errY != nil || math.Abs(x-y) > 1e-4*max(math.Abs(x), 0.1) { // the metric line is written to some seven digits
				t.Errorf("%s: %s and %s", format, a[i], b[i])
			}
		}
	}
}

// figuresOf leaves out the sentences of a CSV, which are those of the page.
func figuresOf(text string) string {
	return regexp.MustCompile(`(?m)^text,.*\n`).ReplaceAllString(text, "")
}
