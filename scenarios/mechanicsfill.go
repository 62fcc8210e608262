package scenarios

import (
	"fmt"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// readDosing reads what a filler meters, with what, and how near the level its nozzle stays.
func (r *lineReader) readDosing(d *draft, n *document.Node) {
	if n == nil {
		return
	}
	r.described()
	before := r.p.Len()
	f := n.Map(&r.p)
	volume := func(n *document.Node) float64 {
		return n.Measure(&r.p, quantity.Volume, "L", document.Limit{Above: "0 L"}) / 1000
	}
	dose := f.Require("dose", "64 fl oz")
	m := &DosingMotion{Dose: volume(dose), Declared: volume(f.Take("declared")), Tolerable: volume(f.Take("tolerable"))}
	m.Spread = f.Take("spread").Measure(&r.p, quantity.Volume, "L", document.Limit{Min: "0 L"}) / 1000
	m.Piston, m.CylinderUnits = r.readCylinder(f.Require("cylinder", "{volume: 10 floz/in, travel: 7 in}"))
	m.Units, m.SpreadUnits, m.SplashUnits = unitsOf(dose), unitsOf(f.Take("spread"), dose), unitsOf(f.Take("splash"))
	if bore := f.Take("nozzle_bore"); bore != nil {
		m.NozzleArea = motion.CircleArea(bore.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "1 m"}))
	}
	splash := f.Take("splash")
	m.Splash = r.readAlong(splash, "m/s")
	fill := &motion.FillStation{}
	fill.ValveLag = motion.SecondsOf(f.Take("valve_lag").Duration(&r.p, document.Limit{Max: "10 s"}))
	r.readTip(f.Take("tip"), fill)
	f.Done()
	switch carton := r.file.Mechanics.Carton; {
	case r.p.Len() > before:
		return
	case carton == nil:
		r.needCarton(n, "fills a carton")
		return
	case motion.FillHeight(m.Dose, carton.Area()) >= carton.Height:
		r.p.Add(dose.Assumed(&r.p), "is more than the carton holds", "it holds "+volumeText(carton.Area()*carton.Height, m.Units)+" to the rim")
		return
	case splash != nil && m.NozzleArea == 0:
		r.p.Add(splash, "needs the nozzle's opening", "add nozzle_bore: 2 in")
		return
	}
	if _, err := m.Piston.Stroke(m.Dose); err != nil {
		r.p.Add(dose.Assumed(&r.p), "is larger than the cylinder, which holds "+volumeText(m.Piston.Capacity(), m.Units), "give a smaller dose or a longer travel")
		return
	}
	d.motion.Dosing, d.motion.Fill = m, fill
}

// readCylinder reads the dosing cylinder, by its bore or by its volume per length of travel.
func (r *lineReader) readCylinder(n *document.Node) (motion.Piston, Units) {
	f := n.Map(&r.p)
	bore, volume := f.Take("bore"), f.Take("volume")
	var p motion.Piston
	switch {
	case bore != nil && volume != nil:
		r.p.Add(bore, "stands beside volume", "keep bore or volume")
	case bore != nil:
		p.Area = motion.CircleArea(bore.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "2 m"}))
	case f.Node() != nil:
		p.Area = f.Require("volume", "10 floz/in").Measure(&r.p, quantity.VolumePerLength, "L/m", document.Limit{Above: "0 L/m"}) / 1000
	}
	p.Travel = f.Take("travel").Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "5 m"})
	f.Done()
	return p, unitsOf(f.Take("travel"), bore, volume)
}

// readTip reads where the nozzle's tip is: in its top position above the carton's bottom, and how near the level it may come.
func (r *lineReader) readTip(n *document.Node, fill *motion.FillStation) {
	if n == nil {
		return
	}
	f := n.Map(&r.p)
	top := f.Require("top", "270 mm")
	fill.TopAboveBottom = top.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "5 m"})
	fill.LeastAboveLevel = f.Take("at_least").Length(&r.p, document.Limit{Min: "0 m"})
	most := f.Take("at_most")
	fill.MostAboveLevel = most.Length(&r.p, document.Limit{Above: "0 m"})
	f.Done()
	if most != nil && fill.MostAboveLevel > 0 && fill.MostAboveLevel < fill.LeastAboveLevel {
		r.p.Add(most.Assumed(&r.p), "is less than at_least", "the tip stays between the two above the level")
	}
	carton := r.file.Mechanics.Carton
	if carton == nil {
		return
	}
	fill.RimBelowTop = fill.TopAboveBottom - carton.Height
	if top != nil && fill.TopAboveBottom > 0 && fill.RimBelowTop <= 0 {
		r.p.Add(top.Assumed(&r.p), "is not above the rim of the carton", "the nozzle must be out of the carton in its top position")
	}
}

// completeFill puts cams and dosing of a filler together.
func (r *lineReader) completeFill(d *draft, cams *document.Node) {
	fill := d.motion.Fill
	nozzle, piston := d.motion.axis("nozzle"), d.motion.axis("piston")
	switch {
	case fill == nil && cams != nil && nozzle != nil && !d.fields.Has("dosing"):
		r.p.Add(cams, "has a nozzle, but nothing says where the rim is", "add dosing: {dose: 64 fl oz, cylinder: {...}, tip: {top: 270 mm, at_least: 10 mm}}")
	case fill == nil:
	case nozzle == nil:
		d.motion.Fill = nil // a dose without a cam of the nozzle: flows and contents only
	case fill.TopAboveBottom == 0:
		r.p.Add(cams, "has a nozzle, but dosing does not say where its tip is", "add tip: {top: 270 mm, at_least: 10 mm} to dosing")
		d.motion.Fill = nil
	default:
		r.joinFill(d, cams, nozzle, piston)
	}
}

// joinFill checks what only shows when nozzle, piston and carton are seen together.
func (r *lineReader) joinFill(d *draft, cams *document.Node, nozzle, piston *AxisMotion) {
	fill, dosing := d.motion.Fill, d.motion.Dosing
	fill.Conveyor, fill.Nozzle = r.conveyorMotion(d).Cam, nozzle.Cam
	fill.CartonArea, fill.PistonArea = r.file.Mechanics.Carton.Area(), dosing.Piston.Area
	if piston != nil {
		fill.Piston = piston.Cam
		fill.DoseStroke, _ = dosing.Piston.Stroke(dosing.Dose)
		if t := dosing.Piston.Travel; t > 0 && piston.Cam.Stroke() > t*(1+1e-9) {
			r.p.Add(cams, fmt.Sprintf("move the piston by %s, further than its travel of %s",
				lengthText(piston.Cam.Stroke(), dosing.CylinderUnits), lengthText(t, dosing.CylinderUnits)), "make the stroke shorter, or write by: dose")
			d.motion.Fill = nil
			return
		}
	}
	if problems := fill.Problems(); len(problems) > 0 {
		for _, p := range problems {
			r.addMotion(cams, p)
		}
		d.motion.Fill = nil
	}
}

// fillTimes are the parts of a fill that rides on the master: until the tip is out of the carton, and the rest of the turn.
func (r *lineReader) fillTimes(d *draft, c stations.Conveyor) []stations.Part {
	stand := c.Revolution - c.Index
	fill := d.motion.Fill
	if fill == nil {
		return []stations.Part{fixedPart("fill", stations.OtherPart, stand)}
	}
	stands := fill.Conveyor.Moving()[0].To
	var out motion.Degrees
	for _, crossing := range fill.Nozzle.Crossings(fill.RimBelowTop) {
		if !crossing.Away {
			out = max(out, (crossing.At - stands).Within())
		}
	}
	inside := min(time.Duration(float64(out)/360*float64(c.Revolution)+0.5), stand)
	return []stations.Part{fixedPart("fill", stations.OtherPart, inside), fixedPart("rest of the turn", stations.OtherPart, stand-inside)}
}
