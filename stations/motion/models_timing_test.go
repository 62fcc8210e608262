package motion_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"dwellcast/stations/motion"
)

// indexAxis is one feeding move of a row: travel h within beta degrees at the setting P, all in inches where the row
// is.
func indexAxis(t *testing.T, p parameters) (*motion.Cam, motion.Seconds) {
	t.Helper()
	revolution := motion.Seconds(p.valueOr(t, 0, "revolution"))
	if revolution == 0 {
		revolution = motion.PacePeriod(motion.CartonsPerHour(p.value(t, "P")), lanes(t, p))
	}
	return feed(t, p.value(t, "h", "pitch"), p.value(t, "beta", "index"), p.law(t)), revolution
}

func feed(t testing.TB, travel, beta float64, law motion.Law) *motion.Cam {
	t.Helper()
	return camOf(t, motion.Axis{Name: "conveyor", Segments: []motion.Segment{
		{Name: "index", Kind: motion.Index, From: 0, To: motion.Degrees(beta), Travel: travel, Law: law},
	}})
}

func camOf(t testing.TB, axis motion.Axis) *motion.Cam {
	t.Helper()
	cam, problems := motion.NewCam(axis)
	for _, p := range problems {
		t.Error(p)
	}
	if cam == nil {
		t.FailNow()
	}
	return cam
}

// lanes is k in the formulas of the table: cartons per cycle.
func lanes(t *testing.T, p parameters) int { return int(p.valueOr(t, 1, "k", "lanes")) }

// stretchedAngle, travel and limit of the rows that ask for a setting under a limit.
func (p parameters) settingUnder(t *testing.T, limit string,
	f func(motion.Law, float64, motion.Degrees, float64, int) motion.CartonsPerHour) []float64 {
	h := p.value(t, "h", "stroke") // a bare number is in the unit of the limit, inches
	bound := p.value(t, limit)
	if _, hasUnit := siUnits[unitOf(p.text(t, "h", "stroke"))]; hasUnit && unitOf(p.text(t, "h", "stroke")) == "" {
		h *= inch
	}
	return one(float64(f(p.law(t), h, motion.Degrees(p.value(t, "beta", "index")), bound, lanes(t, p))))
}

func unitOf(text string) string {
	m := leading.FindStringSubmatch(text)
	if m == nil {
		return ""
	}
	return strings.TrimSpace(m[3])
}

var nozzleMove = regexp.MustCompile(`^(.+) over ([\d.]+)\.\.([\d.]+) deg$`)

// nozzle is a nozzle of the table: down over the given angles, or down at once before it and up over them.
func nozzle(t *testing.T, p parameters, up bool) (*motion.Cam, float64) {
	t.Helper()
	m := nozzleMove.FindStringSubmatch(p.words[0])
	if m == nil {
		t.Fatalf("%s: no nozzle move in %q", p.row.id, p.all)
	}
	law, err := motion.LawByName(m[1])
	if err != nil {
		t.Fatal(err)
	}
	stroke, rim := first(p.words[1])*inch, first(p.words[2])*inch
	from, to := motion.Degrees(first(m[2])), motion.Degrees(first(m[3]))
	move := motion.Segment{Name: "move", Kind: motion.Rise, From: from, To: to, Travel: stroke, Law: law}
	back := motion.Segment{Name: "back", Kind: motion.Return, From: to, To: (to + 1).Within(), Travel: stroke, Law: law}
	if up {
		move.Kind, back.Kind = motion.Return, motion.Rise
		back.From, back.To = (from - 1).Within(), from
	}
	return camOf(t, motion.Axis{Name: "nozzle", Segments: []motion.Segment{move, back}}), rim
}

// rimPassing is the angle at which the nozzle passes the rim in the wanted direction.
func rimPassing(t *testing.T, p parameters, down bool) []float64 {
	cam, rim := nozzle(t, p, !down)
	for _, c := range cam.Crossings(rim) {
		if c.Away == down {
			return one(float64(c.At))
		}
	}
	t.Fatal("the rim is not passed")
	return nil
}

// earlyDescent: "e=15; conveyor 0..120; nozzle 60 deg 3-4-5, 9 in; rim 1.5 in".
func earlyDescent(t *testing.T, p parameters) []float64 {
	var index, down []float64
	var law motion.Law
	var stroke, rim float64
	for _, word := range p.words {
		switch {
		case strings.HasPrefix(word, "conveyor"):
			index = numbers(strings.ReplaceAll(word, "..", " "))
		case strings.HasPrefix(word, "nozzle"):
			m := regexp.MustCompile(`^nozzle ([\d.]+) deg (.+), ([\d.]+) in$`).FindStringSubmatch(word)
			down, stroke = numbers(m[1]), first(m[3])*inch
			var err error
			if law, err = motion.LawByName(m[2]); err != nil {
				t.Fatal(err)
			}
		case strings.HasPrefix(word, "rim"):
			rim = first(word) * inch
		}
	}
	start := motion.Degrees(index[1] - p.value(t, "e"))
	end := start + motion.Degrees(down[0])
	station := motion.FillStation{
		Conveyor: camOf(t, motion.Axis{Name: "conveyor", Segments: []motion.Segment{
			{Kind: motion.Index, From: motion.Degrees(index[0]), To: motion.Degrees(index[1]), Travel: 0.1, Law: law}}}),
		Nozzle: camOf(t, motion.Axis{Name: "nozzle", Segments: []motion.Segment{
			{Kind: motion.Rise, From: start, To: end, Travel: stroke, Law: law},
			{Kind: motion.Return, From: end, To: motion.Degrees(index[0] + 360).Within(), Travel: stroke, Law: law}}}),
		RimBelowTop: rim,
	}
	return one(station.NozzleOutWhileMoving(3).Distance / inch)
}

func timingModels() []modelWords {
	pace := func(t *testing.T, p parameters) []float64 {
		setting := motion.CartonsPerHour(p.value(t, "P", "setting"))
		return one(float64(motion.PacePeriod(setting, lanes(t, p))))
	}
	encoder := motion.Encoder{PulsesPerTurn: 262144} // common practice, no source
	return []modelWords{
		{"T = 3600 k/P", pace}, {"pace period", pace},
		{"t(1 deg) = 10 k/P s", func(t *testing.T, p parameters) []float64 {
			return one(float64(motion.Degrees(1).Time(motion.Seconds(pace(t, p)[0]))))
		}},
		{"pulses per cam degree", func(*testing.T, parameters) []float64 { return one(encoder.PulsesPerDegree()) }},
		{"quarter turn", func(*testing.T, parameters) []float64 { return one(encoder.Pulses(0.25)) }},
		{"two cycles = two master revolutions, pulses", func(*testing.T, parameters) []float64 { return one(encoder.Pulses(2)) }},
		{"pulses/s of the master", func(t *testing.T, p parameters) []float64 {
			e := motion.Encoder{PulsesPerTurn: int(first(p.words[0]))}
			return one(e.Frequency(motion.Seconds(p.value(t, "revolution"))))
		}},
		{"v_peak = Cv h/t", peakOf(func(k motion.Peaks) float64 { return k.Velocity.Value / inch })},
		{"a_peak = Ca h/t^2", peakOf(func(k motion.Peaks) float64 { return k.Acceleration.Value / inch })},
		{"j_peak = Cj h/t^3", peakOf(func(k motion.Peaks) float64 { return k.Jerk.Value / inch })},
		{"conveyor peak speed", peakOf(func(k motion.Peaks) float64 { return k.Velocity.Value / inch })},
		{"conveyor peak acceleration", peakOf(func(k motion.Peaks) float64 { return k.Acceleration.Value / inch })},
		{"motor rpm peak", motorSpeed}, {"motor speed at 1 in per turn", motorSpeed},
		{"P_v = 10 k beta", func(t *testing.T, p parameters) []float64 {
			return p.settingUnder(t, "v_lim", motion.SettingAtPeakVelocity)
		}},
		{"P_a = 10 k beta", func(t *testing.T, p parameters) []float64 {
			return p.settingUnder(t, "a_lim", motion.SettingAtPeakAcceleration)
		}},
		{"P_j = 10 k beta", func(t *testing.T, p parameters) []float64 {
			return p.settingUnder(t, "j_lim", motion.SettingAtPeakJerk)
		}},
		{"with peak acceleration limit when cams stretch", func(t *testing.T, p parameters) []float64 {
			return p.settingUnder(t, "limit", motion.SettingAtPeakAcceleration)
		}},
		{"seal only while conveyor stands", func(t *testing.T, p parameters) []float64 {
			needed := 0.0
			for _, x := range strings.Split(p.words[0], "+") {
				needed += first(x)
			}
			return one(float64(motion.SettingAtStand(360-motion.Degrees(p.value(t, "beta")), motion.Seconds(needed), lanes(t, p))))
		}},
		{"free split", func(t *testing.T, p parameters) []float64 {
			limit := p.value(t, "a_lim") // in/s2, as the travel is in inches
			return one(float64(motion.SettingWithFreeSplit(p.law(t), p.value(t, "h"), limit*inch, motion.Seconds(p.value(t, "t_fixed")), lanes(t, p))))
		}},
		{"nozzle tip passes the rim going down", func(t *testing.T, p parameters) []float64 { return rimPassing(t, p, true) }},
		{"nozzle tip leaves the carton", func(t *testing.T, p parameters) []float64 { return rimPassing(t, p, false) }},
		{"minimum height of tip above rim while the conveyor moves", earlyDescent},
		{"until a timer of resolution r slips one cycle", func(t *testing.T, p parameters) []float64 {
			period := motion.PacePeriod(motion.CartonsPerHour(p.value(t, "P")), lanes(t, p))
			resolution := regexp.MustCompile(`\s*\(.*`).ReplaceAllString(p.text(t, "r"), "")
			r, err := quantity(resolution)
			if err != nil {
				t.Fatal(err)
			}
			return one(motion.CyclesUntilTimerSlips(period, motion.Seconds(r)))
		}},
		{"erector 90 deg turn: alpha_peak", turnPeak(func(k motion.Peaks) float64 { return k.Acceleration.Value })},
		{"erector 90 deg turn: omega_peak", turnPeak(func(k motion.Peaks) float64 { return k.Velocity.Value })},
		{"erector 90 deg turn", turnPeak(func(k motion.Peaks) float64 { return k.Velocity.Value })},
	}
}

func peakOf(pick func(motion.Peaks) float64) calculation {
	return func(t *testing.T, p parameters) []float64 {
		cam, revolution := indexAxis(t, p)
		return one(pick(cam.Peaks(revolution)))
	}
}

func motorSpeed(t *testing.T, p parameters) []float64 {
	cam, revolution := indexAxis(t, p)
	return one(motion.Drive{TravelPerTurn: inch}.Load(cam, revolution).Speed)
}

// turnPeak is a peak of an arm that turns by a quarter in the time t, in radians.
func turnPeak(pick func(motion.Peaks) float64) calculation {
	return func(t *testing.T, p parameters) []float64 {
		const beta = 120
		arm := feed(t, math.Pi/2, beta, p.law(t))
		return one(pick(arm.Peaks(motion.Seconds(p.value(t, "t") * 360 / beta))))
	}
}
