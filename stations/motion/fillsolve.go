package motion

import "fmt"

// EarliestDescent is the earliest angle at which the first downward move of the nozzle may start, its length kept, so
// that the tip passes the rim no sooner than keep after the conveyor stands. Exact, by the inverse of the law.
func (f FillStation) EarliestDescent(keep Degrees) (Degrees, error) {
	down, ok := f.enters(f.Conveyor.Moving()[0].To)
	if !ok {
		return 0, fmt.Errorf("nozzle never goes below the rim, %g m below its top position", f.RimBelowTop)
	}
	start, segment := f.moveUnderWay(f.Nozzle, down)
	stands := f.stoppedBefore(down)
	from := (stands + keep - (down - start).Within()).Within()
	shifted, problems := NewCam(f.Nozzle.Axis().Shifted(from-start, func(s Segment) bool { return s == segment }))
	if len(problems) > 0 {
		return from, fmt.Errorf("earliest descent at %.6g deg: %w", float64(from), problems[0])
	}
	f.Nozzle = shifted
	if f.Piston != nil {
		if m := f.TipAboveLevel(1); !m.Kept() {
			return from, fmt.Errorf("earliest descent at %.6g deg: %s is violated by %.6g m", float64(from), m.Name, -m.Distance)
		}
	}
	return from, nil
}

// stoppedBefore is where the conveyor last came to a stand before an angle.
func (f FillStation) stoppedBefore(at Degrees) Degrees {
	stopped, since := Degrees(0), Degrees(fullTurn)
	for _, w := range f.Conveyor.Moving() {
		if d := (at - w.To).Within(); d < since {
			stopped, since = w.To, d
		}
	}
	return stopped
}

// LatestReversal is the latest angle at which the piston may begin to dispense, the move's length kept, so that every
// interlock of the dose holds, with keep degrees between the last drop and the tip leaving the carton. Later dosing
// lowers the level at every angle, so each interlock gives one bound, and the bounds are found by bisection on the
// proved margins.
func (f FillStation) LatestReversal(keep Degrees, revolution Seconds) (Degrees, error) {
	dose := f.dosing()
	leaves, ok := f.leaves(dose.From)
	if !ok {
		return 0, fmt.Errorf("nozzle never leaves the carton")
	}
	earliest, latest := f.reversalRange(dose, leaves-keep)
	late := func(by float64) bool { // what only gets worse with later dosing
		g, ok := f.withDoseShifted(Degrees(by))
		if !ok {
			return false
		}
		inside := g.DoseInsideCarton(revolution)
		return inside.Kept() && (f.MostAboveLevel == 0 || g.TipNearLevel(revolution).Kept())
	}
	by := latest
	if !late(latest) {
		if late(0) {
			earliest = 0 // before that the nozzle may still be on its way down
		} else if !late(earliest) {
			return 0, fmt.Errorf("no reversal of the piston keeps the dose in the carton and near the level")
		}
		by = lastAllowed(late, earliest, latest, 1e-7)
	}
	g, _ := f.withDoseShifted(Degrees(by))
	for _, m := range []Margin{g.DoseDrawn(revolution), g.TipAboveLevel(revolution)} {
		if !m.Kept() {
			return 0, fmt.Errorf("even the latest reversal does not keep: %s", m.Name)
		}
	}
	return (dose.From + Degrees(by)).Within(), nil
}

// reversalRange is how far the dose may move back, to the end of the drawing, and on, to end at last.
func (f FillStation) reversalRange(dose Window, last Degrees) (earliest, latest float64) {
	back := Degrees(fullTurn)
	for _, in := range f.Piston.Rising() {
		back = min(back, (dose.From - in.To).Within())
	}
	return -float64(back), float64(last - dose.To)
}

// withDoseShifted is the station with all dispensing moves shifted; false where the piston's segments would then
// overlap.
func (f FillStation) withDoseShifted(by Degrees) (FillStation, bool) {
	cam, problems := NewCam(f.Piston.Axis().Shifted(by, func(s Segment) bool { return s.Kind == Return }))
	f.Piston = cam
	return f, len(problems) == 0
}

// moveUnderWay is where the move that is under way at an angle started, and its segment.
func (f FillStation) moveUnderWay(c *Cam, at Degrees) (Degrees, Segment) {
	m, _, _ := c.find(at)
	return Degrees(c.start + m.from).Within(), c.axis.Segments[m.segment]
}
