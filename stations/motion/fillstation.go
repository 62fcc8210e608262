package motion

import "fmt"

// FillStation is what the filler's interlocks need. The nozzle is home at the top and rises, in the words of a cam,
// by going down; the piston is home when empty, rises by drawing and returns by dispensing.
type FillStation struct {
	Conveyor *Cam // feeds
	Nozzle   *Cam // reciprocates
	Piston   *Cam // reciprocates; nil: interlocks of the dose are left out

	RimBelowTop    float64 // m, more than 0: how far the nozzle goes down until its tip passes the carton's rim
	TopAboveBottom float64 // m: tip in its top position above the inside bottom of the carton, or above the liquid already in it
	PistonArea     float64 // m2 (m3 per m of piston travel), more than 0 with a piston
	CartonArea     float64 // m2, inside, more than 0 with a piston
	DoseStroke     float64 // m of piston travel that the dose needs; 0: all that the piston draws

	LeastAboveLevel float64 // m: the tip stays at least so far above the rising level
	MostAboveLevel  float64 // m: and at most so far while it doses; 0: no limit (top fill)
	ValveLag        Seconds // that the valve needs between the end of drawing and the start of dosing
}

// Interlocks are the margins of the station, for a revolution that lasts revolution: nozzle out while the conveyor
// moves; and with a piston: dose inside the carton, dose drawn, tip above the level by at least and at most the
// stated distances.
func (f FillStation) Interlocks(revolution Seconds) []Margin {
	margins := []Margin{f.NozzleOutWhileMoving(revolution)}
	if f.Piston == nil {
		return margins
	}
	margins = append(margins, f.DoseInsideCarton(revolution), f.DoseDrawn(revolution), f.TipAboveLevel(revolution))
	if f.MostAboveLevel > 0 {
		margins = append(margins, f.TipNearLevel(revolution))
	}
	return margins
}

// Problems are mistakes in the station itself; its cams were checked when they were made.
func (f FillStation) Problems() []Problem {
	var found []Problem
	add := func(path, message, hint string) {
		found = append(found, Problem{Axis: "fill", Path: path, Message: message, Hint: hint})
	}
	if f.Conveyor == nil || !f.Conveyor.Feeds() {
		add("conveyor", "needs an axis with index segments", "index, then stand")
	}
	if f.Nozzle == nil || f.Nozzle.Feeds() {
		add("nozzle", "needs an axis that goes down and up", "a rise (down) and a return (up)")
	} else if !(f.RimBelowTop > 0 && f.RimBelowTop < f.Nozzle.Stroke()) {
		add("rim_below_top", fmt.Sprintf("rim %g m below the top position, nozzle stroke %g m", f.RimBelowTop, f.Nozzle.Stroke()),
			"the tip must start above the rim and end below it")
	}
	if f.Piston == nil {
		return found
	}
	if f.Piston.Feeds() {
		add("piston", "needs an axis that draws and dispenses", "a rise (draw) and a return (dispense)")
	}
	if !(f.PistonArea > 0) || !(f.CartonArea > 0) {
		add("piston_area", fmt.Sprintf("piston area %g m2, carton area %g m2", f.PistonArea, f.CartonArea), "both are more than 0")
	}
	if f.LeastAboveLevel < 0 || f.MostAboveLevel < 0 || (f.MostAboveLevel > 0 && f.MostAboveLevel < f.LeastAboveLevel) {
		add("above_level", fmt.Sprintf("tip at least %g m and at most %g m above the level", f.LeastAboveLevel, f.MostAboveLevel),
			"at least must be 0 or more and below at most")
	}
	if f.ValveLag < 0 {
		add("valve_lag", fmt.Sprintf("valve lag of %g s", float64(f.ValveLag)), "0 or more")
	}
	return found
}

// NozzleOutWhileMoving: the tip is not below the rim while the conveyor moves. Distance is the tip's least height
// above the rim then.
func (f FillStation) NozzleOutWhileMoving(revolution Seconds) Margin {
	return during("nozzle out of the carton while the conveyor moves", f.Conveyor.Moving(), f.tipAboveRim(), aTurnAround, revolution)
}

// DoseInsideCarton: the tip is below the rim while the piston dispenses. Distance is its least depth below the rim
// then.
func (f FillStation) DoseInsideCarton(revolution Seconds) Margin {
	return during("dose only inside the carton", f.Piston.Returning(), f.tipAboveRim().negated(), aTurnAround, revolution)
}

func (f FillStation) tipAboveRim() curve {
	return curve{f.RimBelowTop, []curveTerm{{-1, f.Nozzle}}}
}

// DoseDrawn: when it begins to dispense the piston has stood still for the valve lag, and holds at least the dose.
// Angle and Time are the stand between drawing and dispensing, less the lag; Distance is piston travel beyond the
// dose.
func (f FillStation) DoseDrawn(revolution Seconds) Margin {
	const name = "dose drawn before it is dispensed"
	m := Margin{Name: name, Angle: fullTurn}
	for _, out := range f.Piston.Returning() {
		for _, in := range f.Piston.Rising() {
			if stand := (out.From - in.To).Within(); stand < m.Angle {
				m.Angle, m.AngleAt = stand, out.From.Within()
			}
		}
	}
	m.Angle -= f.ValveLag.Angle(revolution)
	m.Time = m.Angle.Time(revolution)
	dose := f.dosing()
	drawn := f.Piston.Position(dose.From)
	m.Distance, m.DistanceAt = drawn-f.doseStroke(), dose.From.Within()
	return m
}

func (f FillStation) doseStroke() float64 {
	if f.DoseStroke > 0 {
		return f.DoseStroke
	}
	return f.Piston.Stroke()
}

// dosing is the window from the first to the last drop: all dispensing moves of one stand of the conveyor.
func (f FillStation) dosing() Window {
	out := f.Piston.Returning()
	first, last := out[0], out[len(out)-1]
	in := f.Piston.Rising()
	for i, w := range out { // the dose begins at the dispensing move that follows the drawing
		before := out[(i+len(out)-1)%len(out)]
		for _, draw := range in {
			if (draw.From - before.To).Within() < (w.From - before.To).Within() {
				first, last = w, before
			}
		}
	}
	to := last.To
	for to <= first.From {
		to += fullTurn
	}
	for to > first.From+fullTurn {
		to -= fullTurn
	}
	return Window{first.From, to}
}

// TipAboveLevel: from the first drop until the tip has left the carton it stays above the rising level by at least
// the stated distance.
func (f FillStation) TipAboveLevel(revolution Seconds) Margin {
	w := f.dosing()
	if out, ok := f.leaves(w.From); ok && out > w.To {
		w.To = out
	}
	q := f.tipAboveLevel(w.From).minus(f.LeastAboveLevel)
	return f.withinStand("nozzle tip above the level, at least", w, q, revolution)
}

// TipNearLevel: while it doses the tip is above the level by at most the stated distance.
func (f FillStation) TipNearLevel(revolution Seconds) Margin {
	w := f.dosing()
	q := f.tipAboveLevel(w.From).minus(f.MostAboveLevel).negated()
	return f.withinStand("nozzle tip above the level, at most", w, q, revolution)
}

// withinStand is during one window, with unsafe angles looked for in the stand of the conveyor around it: before and
// after it another carton is under the nozzle.
func (f FillStation) withinStand(name string, w Window, q curve, revolution Seconds) Margin {
	around := func(w Window) Window {
		for _, stand := range f.Conveyor.Standing() {
			from := w.From - (w.From - stand.From).Within()
			if to := from + stand.Span(); to > w.From {
				return Window{from, max(to, w.To)}
			}
		}
		return w
	}
	return during(name, []Window{w}, q, around, revolution)
}

// tipAboveLevel is the height of the tip above a level that rises with all that is dispensed from an angle on.
func (f FillStation) tipAboveLevel(from Degrees) curve {
	delivered := f.Piston.delivered()
	rise := f.PistonArea / f.CartonArea
	return curve{f.TopAboveBottom + rise*delivered.Position(from), []curveTerm{{-1, f.Nozzle}, {-rise, delivered}}}
}

// leaves is the next angle after an angle at which the tip passes the rim on its way up.
func (f FillStation) leaves(after Degrees) (Degrees, bool) { return f.passesRim(after, false) }

// enters is the next angle after an angle at which the tip passes the rim on its way down.
func (f FillStation) enters(after Degrees) (Degrees, bool) { return f.passesRim(after, true) }

func (f FillStation) passesRim(after Degrees, down bool) (Degrees, bool) {
	best, found := Degrees(0), false
	for _, c := range f.Nozzle.Crossings(f.RimBelowTop) {
		if at := after + (c.At - after).Within(); c.Away == down && (!found || at < best) {
			best, found = at, true
		}
	}
	return best, found
}

// delivered is a feeding axis that goes forward whenever c goes home: what a piston has dispensed in all.
func (c *Cam) delivered() *Cam {
	d := *c
	d.moves = append([]camMove(nil), c.moves...)
	position := 0.0
	for i := range d.moves {
		m := &d.moves[i]
		m.base, m.travel = position, max(0, -m.travel)
		position += m.travel
	}
	d.perTurn = position
	return &d
}
