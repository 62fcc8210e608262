package reports

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"dwellcast/reports/layout"
	"dwellcast/scenarios"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// seconds prints a time to the millisecond.
func seconds(s motion.Seconds) string { return exactly3(float64(s)) + " s" }

func secondsCell(s motion.Seconds) layout.Cell { return layout.Shown(seconds(s), float64(s)).In("s") }

func inMilliseconds(s motion.Seconds) layout.Cell { return layout.Scaled(ms(s), float64(s)).In("s") }

func angleCell(a motion.Degrees) layout.Cell { return layout.Shown(degrees(a), float64(a)).In("deg") }

func ms(s motion.Seconds) string { return layout.Fixed(1000*float64(s), 0) + " ms" }

func degrees(a motion.Degrees) string { return layout.Fixed(float64(a), 1) + "°" }

// masterSection is the time budget of a conveyor's cycle: what is degrees of the master, and what is not.
func masterSection(t *scenarios.Timing, conveyor int) layout.Section {
	c := &t.Conveyors[conveyor]
	s := layout.Section{Key: "window", Heading: "Time budget of one cycle" + ofConveyor(t, c)}
	words := fmt.Sprintf("Cycle of %s: index %s, stand %s", seconds(c.Cycle), seconds(c.Index), seconds(c.Stand))
	if c.Revolution > 0 {
		turns := "turns on demand"
		if c.Continuous {
			turns = "never stops"
		}
		words += fmt.Sprintf("; the master %s, a revolution takes %s", turns, seconds(c.Revolution))
	}
	if c.PulsesPerSecond > 0 {
		words += fmt.Sprintf(" (%s pulses/s, %s a degree)", layout.Fixed(c.PulsesPerSecond, 0), layout.Fixed(c.PulsesPerDegree, 1))
	}
	s.Text = append(append(s.Text, words), turnWords(t, conveyor)...)
	table := &layout.Table{Columns: []layout.Column{layout.Words("station"), layout.Words("window"), layout.Figures("from", "from"), layout.Figures("to", "to"),
		layout.Figures("takes", "takes"), layout.Told("timed by", "timed_by"), layout.Figures("slack", "slack"), layout.Drawn("")}}
	for _, st := range t.Stations {
		if st.Conveyor != conveyor {
			continue
		}
		for k, w := range st.Windows {
			name, slack, critical := layout.Word(st.Name), layout.Blank, layout.Blank
			if k > 0 {
				name = name.Again()
			} else if slack = inMilliseconds(st.Slack); st.Critical {
				critical = layout.Word("no slack")
			}
			table.Add(name, layout.Word(w.Name), secondsCell(w.From), secondsCell(w.To), inMilliseconds(w.To-w.From), layout.Word(timedBy(w)), slack, critical)
		}
	}
	s.Table = table
	return s
}

func timedBy(w scenarios.StationWindow) string {
	if w.ByMaster {
		return "master"
	}
	return "itself"
}

// turnWords say how many turns of a master that never stops a cycle lasts, which station needs how many, and at which settings that changes.
func turnWords(t *scenarios.Timing, conveyor int) []string {
	c := &t.Conveyors[conveyor]
	if c.Turns == 0 {
		return nil
	}
	var needs, from []string
	for _, st := range t.Stations {
		if st.Conveyor == conveyor {
			needs = append(needs, fmt.Sprintf("%s %d", st.Name, st.Turns))
		}
	}
	for _, f := range c.TurnsFrom {
		from = append(from, fmt.Sprintf("%d from %s on", f.Turns, quantity.FormatRate(roundedUp(f.Setting))))
	}
	words := []string{fmt.Sprintf("A cycle lasts %s of the master; of these the act of a station needs: %s", turnCount(c.Turns), strings.Join(needs, ", "))}
	if len(from) > 0 {
		words = append(words, "Turns by setting: "+strings.Join(from, "; "))
	}
	return words
}

func turnCount(n int) string {
	if n == 1 {
		return "one turn"
	}
	return fmt.Sprintf("%d turns", n)
}

func ofConveyor(t *scenarios.Timing, c *scenarios.ConveyorTiming) string {
	if len(t.Conveyors) == 1 {
		return ""
	}
	return ", " + c.Name
}

// axisSection lists the peaks of every axis, in the unit of its stroke and seconds.
func axisSection(c *scenarios.ConveyorTiming) layout.Section {
	s := layout.Section{Key: "peak", Heading: "Peaks of the axes"}
	table := &layout.Table{Columns: []layout.Column{layout.Words("axis"), layout.Figures("stroke", "stroke"), layout.Drawn("in"), layout.Figures("speed\n1/s", "speed"),
		layout.Figures("at", "speed_at"), layout.Figures("accel.\n1/s2", "acceleration"), layout.Figures("at", "acceleration_at"), layout.Figures("rms\naccel.", "rms_acceleration"),
		layout.Figures("jerk\n1/s3", "jerk")}}
	for _, a := range c.Axes {
		if !a.Known {
			continue
		}
		p := a.Peaks
		unit, per := travelUnit(a.Turns, a.Units)
		si := strokeUnit(a.Turns)
		in := func(x float64, decimals int, over string) layout.Cell {
			return layout.Scaled(layout.Fixed(per*x, decimals), x).In(si + over)
		}
		acceleration, jerk := in(p.Acceleration.Value, 2, "/s2"), in(p.Jerk.Value, 0, "/s3")
		if p.AccelerationSteps {
			jerk = layout.Word("steps")
		}
		if p.VelocitySteps {
			acceleration, jerk = layout.Word("jolts"), layout.Word("jolts")
		}
		table.Add(layout.Word(a.Name), in(a.Cam.Stroke(), 4, ""), layout.Word(unit), in(p.Velocity.Value, 3, "/s"), angleCell(p.Velocity.At),
			acceleration, angleCell(p.Acceleration.At), in(p.AccelerationRMS, 2, "/s2"), jerk)
	}
	s.Table = table
	return s
}

// motorSection lists what each axis asks of its motor.
func motorSection(c *scenarios.ConveyorTiming) layout.Section {
	s := layout.Section{Key: "motor", Heading: "Motors, with the share of their ratings"}
	table := &layout.Table{Columns: []layout.Column{layout.Words("axis"), layout.Figures("speed", "speed"), layout.Figures("share", "speed_share"),
		layout.Figures("peak\ntorque", "peak_torque"), layout.Figures("share", "peak_torque_share"), layout.Figures("rms\ntorque", "rms_torque"),
		layout.Figures("share", "rms_torque_share"), layout.Figures("pulses/s", "pulses")}}
	for _, a := range c.Axes {
		if l := a.Load; l != nil {
			table.Add(layout.Word(a.Name), layout.Measure(l.Speed, 0, "rpm"), ofRating(l.SpeedShare), torqueCell(l.Torque, a.TorqueUnits), ofRating(l.TorqueShare),
				torqueCell(l.TorqueRMS, a.TorqueUnits), ofRating(l.TorqueRMSShare), pulses(l.PulsesPerSecond))
		}
	}
	s.Table = table
	return s
}

// torqueCell is a torque; of a law that jolts it has no bound.
func torqueCell(nm float64, in scenarios.Units) layout.Cell {
	if math.IsInf(nm, 1) {
		return layout.Word("jolts").In("N m")
	}
	return layout.Scaled(torqueIn(nm, in), nm).In("N m")
}

func ofRating(share float64) layout.Cell {
	if share == 0 {
		return layout.Unseen().In("%")
	}
	return layout.Measure(100*share, 0, "%")
}

func pulses(perSecond float64) layout.Cell {
	if perSecond == 0 {
		return layout.Unseen().In("1/s")
	}
	return layout.Number(perSecond, 0).In("1/s")
}

// strokeUnit is that of an axis' stroke.
func strokeUnit(turns bool) string { return map[bool]string{false: "m", true: "rad"}[turns] }

// interlockSection lists the smallest margin of every interlock.
func interlockSection(t *scenarios.Timing) layout.Section {
	s := layout.Section{Key: "interlock", Heading: "Smallest margins of the interlocks, over the whole revolution"}
	table := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("interlock"), layout.Figures("angle", "angle"), layout.Figures("time", "time"),
		layout.Figures("at", "at"), layout.Figures("distance", "distance"), layout.Figures("at", "distance_at"), layout.Told("", "verdict")}}
	margins := slices.Clone(t.Margins)
	slices.SortStableFunc(margins, func(a, b scenarios.PlacedMargin) int { // those violated first
		return cmp.Compare(rank(a), rank(b))
	})
	for _, m := range margins {
		table.Add(marginCells(m)...)
	}
	s.Table = table
	return s
}

func rank(m scenarios.PlacedMargin) int {
	if m.Kept() {
		return 1
	}
	return 0
}

func marginCells(m scenarios.PlacedMargin) []layout.Cell {
	angle, time, at := angleCell(m.Angle), inMilliseconds(m.Time), angleCell(m.AngleAt)
	if m.Angle >= 360 {
		angle, time, at = layout.Word("always"), layout.Unseen().In("s"), layout.Unseen().In("deg")
	}
	distance := layout.Scaled(lengthIn(m.Distance, m.Units, 1), m.Distance).In("m")
	if m.Turns {
		distance = layout.Scaled(degrees(motion.Degrees(m.Distance*180/math.Pi)), m.Distance).In("rad")
	}
	if math.Abs(m.Distance) >= 1 && !m.Turns || math.IsNaN(m.Distance) || math.IsInf(m.Distance, 0) {
		distance = layout.Word("ample")
	}
	verdict := layout.Blank
	if !m.Kept() {
		verdict = layout.Word("VIOLATED")
	}
	return []layout.Cell{layout.Word(m.Where), layout.Word(m.Name), angle, time, at, distance, angleCell(m.DistanceAt), verdict}
}

// solvedSection says what phases could be won.
func solvedSection(t *scenarios.Timing) layout.Section {
	s := layout.Section{Key: "phase", Heading: "What could be moved, all interlocks kept"}
	table := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("phase"), layout.Figures("now", "now"), layout.Figures("could be", "could_be"), layout.Told("", "fault")}}
	for _, p := range t.Solved {
		unit := func(x float64) layout.Cell { return angleCell(motion.Degrees(x)) }
		if p.Seconds {
			unit = func(x float64) layout.Cell { return secondsCell(motion.Seconds(x)) }
		}
		could := unit(p.Could)
		if p.Fault != "" && p.Could == 0 {
			could = layout.Unseen()
		}
		table.Add(layout.Word(p.Where), layout.Word(p.What), unit(p.Now), could, layout.Word(strings.TrimSpace(p.Fault)))
	}
	s.Table = table
	return s
}

// sloshSection is the wave in the open carton.
func sloshSection(c *scenarios.ConveyorTiming, n *notes) layout.Section {
	w := c.Slosh
	if w == nil {
		return layout.Section{}
	}
	s := layout.Section{Heading: "Slosh in the open carton"}
	high := func(wave float64) string { return lengthIn(wave, w.Units, 1) }
	worst := "without bound"
	if !math.IsInf(w.WorstPhase, 0) {
		worst = high(w.WorstPhase)
	}
	s.Text = append(s.Text, fmt.Sprintf("Wave at the wall %s at the most, of a freeboard of %s%s, over the %s that a carton makes while it is open; %s when the conveyor has come to a stand",
		high(w.Open.Peak), high(w.Tank.Freeboard), n.mark("slosh"), indexWords(w.Indexes), high(w.Open.Standing)))
	s.Text = append(s.Text, fmt.Sprintf("Under endless indexes it would settle at %s", high(w.Steady.Peak)))
	s.Text = append(s.Text, fmt.Sprintf("From rest a single index raises %s and leaves %s in the first mode; in the worst phase of many, %s; "+
		"by tilt alone %s", high(w.Once.Peak), high(w.Residual), worst, high(w.QuasiStatic)))
	s.Text = append(s.Text, fmt.Sprintf("First mode at %s Hz, a period of %s; the index of %s lasts %s periods, the cycle %s",
		layout.Fixed(w.First.Frequency, 2), ms(motion.Seconds(1/w.First.Frequency)), seconds(w.Move.Time),
		layout.Fixed(float64(w.Move.Time)*w.First.Frequency, 2), layout.Fixed(float64(w.Move.Cycle)*w.First.Frequency, 2)))
	var quiet []string
	for _, q := range []motion.QuietIndex{w.Quieter, w.Slower} {
		if q.Time > 0 {
			quiet = append(quiet, fmt.Sprintf("%s (leaves %s)", seconds(q.Time), high(q.Residual)))
		}
	}
	if len(quiet) > 0 {
		s.Text = append(s.Text, "Index times that leave the first mode nearly still: "+strings.Join(quiet, ", "))
	}
	s.Notes = n.take()
	return s
}

func indexWords(n int) string {
	if n == 1 {
		return "one index"
	}
	return fmt.Sprintf("%d indexes", n)
}

// dosingSection is what a dose comes to.
func dosingSection(st *scenarios.StationTiming, n *notes) layout.Section {
	d := st.Dosing
	if d == nil {
		return layout.Section{}
	}
	s := layout.Section{Heading: "Dosing of " + st.Name}
	words := fmt.Sprintf("%s with a piston stroke of %s (bore of %s), to a level of %s", volumeIn(d.Dose, d.Units), lengthIn(d.Stroke, d.CylinderUnits, 1), lengthIn(d.Bore, d.CylinderUnits, 1), lengthIn(d.Level, d.LevelUnits, 1))
	if !math.IsInf(d.Capacity, 1) {
		words += "; the cylinder holds " + volumeIn(d.Capacity, d.Units)
	}
	s.Text = append(s.Text, words)
	if d.Flows.Dispense.Value > 0 {
		words = fmt.Sprintf("Peak flow %s when dosing, at %s, and %s when drawing", flowIn(d.Flows.Dispense.Value, d.Units),
			degrees(d.Flows.Dispense.At), flowIn(d.Flows.Draw.Value, d.Units))
		if d.Exit > 0 {
			words += fmt.Sprintf("; %s out of the nozzle", velocityIn(d.Exit, d.SplashUnits))
		}
		if d.Splash > 0 {
			words += fmt.Sprintf(", where %s splash", velocityIn(d.Splash, d.SplashUnits))
		}
		s.Text = append(s.Text, words+fmt.Sprintf("; the level rises by up to %s", velocityIn(d.LevelSpeed, d.LevelUnits)))
	}
	if d.Declared > 0 {
		s.Text = append(s.Text, contentWords(d)+n.mark("dose "+st.Name))
	}
	s.Notes = n.take()
	return s
}

func contentWords(d *scenarios.DosingTiming) string {
	words := fmt.Sprintf("Declared %s, spread %s, giveaway %s", volumeIn(d.Declared, d.Units), volumeIn(d.Spread, d.SpreadUnits), volumeIn(d.Giveaway, d.Units))
	if d.TolerableBy == "" {
		return words
	}
	return words + fmt.Sprintf("; short by more than the tolerable %s (%s): %s of cartons, by more than twice that: %s",
		volumeIn(d.Tolerable, d.Units), d.TolerableBy, shareWords(d.ShareShort), shareWords(d.ShareShortTwice))
}

// shareWords prints a small share; one in a thousand million counts as none.
func shareWords(share float64) string {
	if share < 1e-9 {
		return "none"
	}
	if share < 1e-4 {
		return fmt.Sprintf("%.1g %%", 100*share)
	}
	return quantity.FormatRatio(share)
}

// sealingSection is what the jaws do and the seal needs.
func sealingSection(st *scenarios.StationTiming, n *notes) layout.Section {
	seal := st.Sealing
	if seal == nil || seal.Jaws == nil && seal.Least == 0 {
		return layout.Section{}
	}
	s := layout.Section{Heading: "Sealing of " + st.Name}
	if j := seal.Jaws; j != nil {
		s.Text = append(s.Text, fmt.Sprintf("Jaws of %s stroke close in %s and open in %s; from the carton's stand to jaws clear %s",
			lengthIn(j.Stroke, seal.JawUnits, 0), ms(j.Close.Time), ms(j.Open.Time), seconds(j.Needed())))
	}
	if seal.Least > 0 {
		dwell := "Dwell " + seconds(seal.Dwell)
		if seal.Short != seal.Dwell {
			dwell += fmt.Sprintf(" on the average, and %s or more in all but one act of a thousand", seconds(seal.Short))
		}
		words := fmt.Sprintf("%s, the seal needs %s at least: margin %s%s", dwell, seconds(seal.Least), ms(seal.Margin), n.mark("seal "+st.Name))
		s.Text = append(s.Text, words+"; rejects "+quantity.FormatRatio(seal.Reject))
	}
	if seal.Heat != nil {
		v := seal.Sensitivity
		degree, kelvins := "a kelvin", motion.Seconds(1)
		if seal.HeatUnits == scenarios.US {
			degree, kelvins = "1 °F", 5.0/9
		}
		s.Text = append(s.Text, fmt.Sprintf("Interface at %s after the dwell, %s wanted; the least dwell moves by %s for %s at the jaws, %s for %s wanted, %s for 1 %% of board",
			temperatureIn(seal.Interface, seal.HeatUnits), temperatureIn(seal.Heat.Wanted, seal.HeatUnits), signedMs(kelvins*v.PerJawKelvin), degree,
			signedMs(kelvins*v.PerWantedKelvin), degree, signedMs(v.PerThicknessPercent)))
	}
	if g := seal.Glue; g != nil {
		words := fmt.Sprintf("Glue: open time %s, set time %s", seconds(g.Open), seconds(g.Set))
		if seal.Laid != "" {
			words += fmt.Sprintf("; laid at %s %s before, it is closed after %s", seal.Laid, cycleWords(seal.LaidBefore), seconds(seal.LiesOpen))
		}
		s.Text = append(s.Text, words)
	}
	s.Notes = n.take()
	return s
}

func cycleWords(n int) string {
	if n == 1 {
		return "one cycle"
	}
	return fmt.Sprintf("%d cycles", n)
}

func signedMs(s motion.Seconds) string { return fmt.Sprintf("%+.1f ms", 1000*float64(s)) }
