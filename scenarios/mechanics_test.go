package scenarios_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"dwellcast/scenarios"
	"dwellcast/stations"
	"dwellcast/stations/motion"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// moving is a line whose times all come from its motions.
const moving = `
setting: 1200 cartons/h
carton: {length: 95 mm, width: 95 mm, height: 240 mm, level: 200 mm}
liquid: {damping: 1 %, freeboard: 30 mm, modes: 3}
conveyor: {pitch: 150 mm, revolution: 0.75 of pace, index: {from: 10 deg, to: 100 deg, law: cycloidal}, acceleration: 4 m/s2}
stations:
  - name: erector
    kind: erect
    bottom_seal: 0.5 s
    cams:
      arm: [{move: index, by: 90 deg, from: 10 deg, to: 140 deg, law: cycloidal}]
      plough:
        moves: [{move: rise, by: 40 mm, from: 120 deg, to: 200 deg, law: polynomial 3-4-5}, {move: return, by: 40 mm, from: 200 deg, to: 280 deg, law: polynomial 3-4-5}]
        clear: [{below: 1 mm, while: conveyor moves}, {above: 10 mm, from: 180 deg, to: 220 deg}]
    drop: {at: 300 deg, height: 50 mm, free: 5 deg}
  - name: sealer
    kind: seal
    after: {pitches: 2}
    lag: 20 ms
    jaws: {stroke: 80 mm, speed: 0.5 m/s, acceleration: 5 m/s2, clear_at: 40 mm}
    dwell: derived
    heat: {board: 0.5 mm, diffusivity: 0.12 mm2/s, jaws: 180 degC, wanted: 110 degC, start: 20 degC, margin: 80 ms}
    reject: 1 %
    reject_by_margin: [{margin: 0 s, reject: 4 %}, {margin: 0.1 s, reject: 2 %}]
  - name: robot
    kind: offload
    after: {buffer: 10 cartons}
    moves:
      - {name: over, distance: 1.0 m, speed: 2 m/s, acceleration: 8 m/s2}
      - {name: wrist, turn: 90 deg, speed: 180 deg/s, acceleration: 720 deg/s2}
      - {name: grip, takes: 0.2 s}
`

// TestTimesComeFromMotion: each time against its closed form.
func TestTimesComeFromMotion(t *testing.T) {
	f := readLine(t, moving)
	const revolution = 0.75 * 3.0
	degree := revolution / 360
	want := map[string]float64{
		"erector/arm":         40 * degree, // from the end of the index at 100 deg to that of the arm at 140 deg
		"erector/bottom seal": 0.5,
		"erector/drop":        200*degree + math.Sqrt(2*0.05/motion.StandardGravity) - 40*degree - 0.5,
		"sealer/lag":          0.02,
		// 80 mm at 0.5 m/s and 5 m/s2: 0.1 s up, 0.1 s down, 0.06 s between.
		"sealer/close": 0.26,
		// Half of the stroke is done in half of the time.
		"sealer/open": 0.13,
		"robot/over":  1.0/2 + 2.0/8,
		"robot/wrist": 90.0/180 + 180.0/720,
		"robot/grip":  0.2,
	}
	for name, seconds := range want {
		station, p, _ := strings.Cut(name, "/")
		if got := partTime(f, station, p); math.Abs(got-seconds) > 2e-9 {
			t.Errorf("%s: %.9f s, want %.9f s", name, got, seconds)
		}
	}
	// The interface of two boards between hot jaws in perfect contact is the middle of a plane wall: the first term of the series
	// (Carslaw and Jaeger 1959, 3.3), 4/pi exp(-pi2 Fo/4) = 7/16 of the first difference; from Fo = 0.2 on the others are nothing.
	least := 0.25 / 0.12 * math.Log(64/(7*math.Pi)) * 4 / (math.Pi * math.Pi)
	if got := partTime(f, "sealer", "dwell"); math.Abs(got-least-0.08) > 0.001*least {
		t.Errorf("derived dwell %.6f s, want %.6f s", got, least+0.08)
	}
	near(t, "rejects", f.Line.Stations[1].Reject, 1-0.99*(1-0.024), 1e-6)
	m := f.Mechanics
	near(t, "freeboard", m.Liquid.Freeboard, 0.03, 1e-12)
	if len(m.Stations[0].Axes) != 2 || len(m.Stations[0].Axes[1].Clearances) != 2 || !m.Stations[0].Axes[0].Turns {
		t.Errorf("axes of the erector: %+v", m.Stations[0].Axes)
	}
}

// TestGivenTimesStand: a time that is given is taken, whatever else the file describes.
func TestGivenTimesStand(t *testing.T) {
	f := readLine(t, moving, "sealer.dwell=0.9 s", "sealer.close=0.3 s", "sealer.open=0.4 s", "sealer.reject_by_margin.2.margin=1 s")
	got := []float64{partTime(f, "sealer", "close"), partTime(f, "sealer", "dwell"), partTime(f, "sealer", "open")}
	if diff := cmp.Diff([]float64{0.3, 0.9, 0.4}, got); diff != "" {
		t.Error(diff)
	}
	if f := readLine(t, moving, "sealer.dwell=derived", "sealer.heat.margin=0 s"); math.Abs(f.Line.Stations[1].Reject-(1-0.99*0.96)) > 1e-6 {
		t.Errorf("rejects without a margin: %v", f.Line.Stations[1].Reject)
	}
}

// TestGlue: the dwell of a glue is its set time, or the longer compression.
func TestGlue(t *testing.T) {
	const glued = "stations: [{name: sealer, kind: seal, close: 0.2 s, open: 0.2 s, dwell: derived, glue: {open: 6 s, set: 0.8 s, margin: 50 ms}}]\n"
	if got := partTime(readLine(t, glued), "sealer", "dwell"); got != 0.85 {
		t.Errorf("set time: %v", got)
	}
	if got := partTime(readLine(t, glued, "sealer.glue.compression=1 s"), "sealer", "dwell"); got != 1.05 {
		t.Errorf("compression: %v", got)
	}
}

// TestDosingRules: common practice, no source: one inch of piston travel meters 10 US fl oz, so a gallon needs 12.8 in; the motor
// turns once an inch.
func TestDosingRules(t *testing.T) {
	f := oatDrink(t, "filler.dosing.dose=1 gal", "filler.dosing.declared=1 gal", "filler.dosing.cylinder.travel=13 in", "carton.length=150 mm", "carton.width=130 mm", "filler.dosing.tip.at_most=90 mm")
	timing := timed(t, f)
	near(t, "stroke", timing.Stations[1].Dosing.Stroke, 12.8*0.0254, 1e-12)
	near(t, "pulses a degree", timing.Conveyors[0].PulsesPerDegree, 262144.0/360, 1e-12)
	near(t, "drop of the motor", f.Mechanics.Stations[1].Axes[1].Drive.TravelPerTurn, 0.0254, 1e-12)
}

// TestOddSettings: the ceiling does not depend on the setting of the file, even where that is far off.
func TestOddSettings(t *testing.T) {
	want, limit, _ := scenarios.Ceiling(oatDrink(t))
	for _, setting := range []string{"1 cartons/h", "300 cartons/h", "50000 cartons/h", "1000000 cartons/h"} {
		got, by, known := scenarios.Ceiling(oatDrink(t, "setting="+setting))
		if !known || by != limit || math.Abs(got-want) > 0.1 {
			t.Errorf("%s: ceiling %.2f by %s, want %.2f by %s", setting, got, by, want, limit)
		}
	}
}

// TestNeverStops: a master that never stops waits for the next cam zero.
func TestNeverStops(t *testing.T) {
	f := readLine(t, moving, "conveyor.release=at cam zero", "conveyor.revolution=1.4 s")
	timing := timed(t, f)
	c := timing.Conveyors[0]
	near(t, "cycle", float64(c.Cycle), 4.2, 1e-9) // three turns reach the pace period of 3 s
	if !c.Continuous {
		t.Error("continuous is not said")
	}
}

// TestTimingNeedsSetting: a line without a setting has none to be timed at.
func TestTimingNeedsSetting(t *testing.T) {
	f := readLine(t, "stations: [{name: a, kind: machine, cycle: 2 s}]\n")
	if _, err := scenarios.TimingOf(f); err != scenarios.ErrNoSetting {
		t.Errorf("error %v", err)
	}
}

// TestMotionMistakes: what is said of each mistake in testdata/motionmistakes.txt, word for word.
func TestMotionMistakes(t *testing.T) {
	const path, said = "testdata/motionmistakes.txt", ": said"
	before, after, _ := strings.Cut(moving, "  - name: robot")
	sections := readSections(t, path)
	for i := 1; i+1 < len(sections); i += 2 {
		golden := &sections[i+1]
		t.Run(sections[i].name, func(t *testing.T) {
			if golden.name != sections[i].name+said {
				t.Fatalf("%q is followed by %q", sections[i].name, golden.name)
			}
			overrides := strings.Split(strings.TrimSpace(sections[i].text), "\n")
			_, err := scenarios.Read("line.yaml", strings.NewReader(before+filling+"  - name: robot"+after), overrides)
			if err == nil {
				t.Fatal("read without a mistake")
			}
			if *update {
				golden.text = err.Error() + "\n"
			} else if diff := cmp.Diff(golden.text, err.Error()+"\n"); diff != "" {
				t.Error(diff)
			}
		})
	}
	if *update {
		writeSections(t, path, sections)
	}
}

// filling is a filler on a conveyor of its own between sealer and robot, so that its mistakes can be tried too.
const filling = `  - name: filler
    kind: fill
    after: {buffer: 10 cartons}
    conveyor: {pitch: 150 mm, revolution: pace, index: {from: 0 deg, to: 90 deg, law: modified sine}}
    dosing: {dose: 1.5 L, declared: 1.5 L, cylinder: {bore: 120 mm, travel: 150 mm}, nozzle_bore: 50 mm, splash: 3 m/s, tip: {top: 270 mm, at_least: 5 mm}}
    cams:
      nozzle:
        - {name: down, move: rise, by: 220 mm, from: 80 deg, to: 150 deg, law: cycloidal}
        - {name: up, move: return, by: 220 mm, from: 160 deg, to: 350 deg, law: cycloidal}
      piston:
        - {name: draw, move: rise, by: dose, from: 0 deg, to: 140 deg, law: cycloidal}
        - {name: dose, move: return, by: dose, from: 165 deg, to: 300 deg, law: cycloidal}
`

// TestAnyMechanicsAreTimed: whatever the quantities, a file that is read can be timed, its ceiling keeps every limit, and the
// setting is refused exactly when some limit is broken.
func TestAnyMechanicsAreTimed(t *testing.T) {
	quantities := map[string]string{
		"setting": "cartons/h", "conveyor.pitch": "mm", "conveyor.index.to": "deg", "carton.length": "mm", "carton.height": "mm", "liquid.damping": "%",
		"filler.dosing.dose": "mL", "filler.dosing.valve_lag": "ms", "filler.dosing.splash": "m/s", "filler.cams.nozzle.moves.down.from": "deg",
		"erector.drop.at": "deg", "erector.drop.height": "mm", "sealer.jaws.stroke": "mm", "sealer.jaws.jerk": "m/s3", "sealer.dwell": "ms", "sealer.heat.board": "mm",
	}
	usual := map[string]float64{
		"setting": 1450, "conveyor.pitch": 152, "conveyor.index.to": 110, "carton.length": 95, "carton.height": 250, "liquid.damping": 2,
		"filler.dosing.dose": 1900, "filler.dosing.valve_lag": 30, "filler.dosing.splash": 2.6, "filler.cams.nozzle.moves.down.from": 95,
		"erector.drop.at": 120, "erector.drop.height": 60, "sealer.jaws.stroke": 80, "sealer.jaws.jerk": 130, "sealer.dwell": 1250, "sealer.heat.board": 0.55,
	}
	var paths []string
	for path := range quantities {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	timedFiles := 0
	for seed := range 40 {
		var overrides []string
		for k := range 3 {
			path := rapid.SampledFrom(paths).Example(10*seed + k)
			factor := math.Exp(rapid.Float64Range(-0.5, 0.5).Example(10*seed + k))
			overrides = append(overrides, fmt.Sprintf("%s=%.6f %s", path, usual[path]*factor, quantities[path]))
		}
		f, err := scenarios.Open("example:oat-drink", overrides)
		if err != nil {
			continue
		}
		timedFiles++
		c := timed(t, f).Ceiling
		broken := 0
		for _, l := range c.Limits {
			if c.Setting > 0 && l.Margin(c.Setting) < 0 {
				t.Errorf("%v: %s is broken at the ceiling of %.2f", overrides, l.Name, c.Setting)
			}
			if l.Now < 0 {
				broken++
			}
		}
		if got := len(scenarios.BeyondCeiling(f)); got != broken {
			t.Errorf("%v: %d limits refuse the setting, %d are broken", overrides, got, broken)
		}
	}
	if timedFiles < 10 {
		t.Errorf("only %d of 40 files could be read", timedFiles)
	}
}

// TestPartsAreNotKnownByTheirNames: steps of a machine, and moves of a robot, that are called as parts of another kind are none of these.
func TestPartsAreNotKnownByTheirNames(t *testing.T) {
	f := readLine(t, `
stations:
  - {name: capper, kind: machine, steps: [{name: lag, takes: 1 s}, {name: close, takes: 1 s}, {name: dwell, takes: 1 s}, {name: open, takes: 1 s}, {name: arm, takes: 1 s}, {name: drop, takes: 1 s}]}
  - {name: robot, kind: offload, after: {buffer: 4 cartons}, moves: [{name: dwell, takes: 1 s}, {name: arm, takes: 1 s}]}
`)
	for _, st := range f.Line.Stations {
		for _, part := range st.Parts {
			if part.Does != stations.OtherPart {
				t.Errorf("%s: %s is taken for part %d", st.Name, part.Name, part.Does)
			}
		}
	}
}
