package scenarios

import (
	"math"
	"slices"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations/motion"
)

// readCarton reads the inside of the open carton.
func (r *lineReader) readCarton(n *document.Node) {
	if r.carton = n; n == nil {
		return
	}
	f := n.Map(&r.p)
	side := func(key, example string) float64 {
		return f.Require(key, example).Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "2 m"})
	}
	c := &Carton{Length: side("length", "95 mm"), Width: side("width", "95 mm"), Height: side("height", "240 mm")}
	level := f.Take("level")
	c.Level = level.Length(&r.p, document.Limit{Above: "0 m"})
	if level != nil && c.Height > 0 && c.Level >= c.Height {
		r.p.Add(level.Assumed(&r.p), "is not below the rim of the carton", "write less than its height")
	}
	c.Units = unitsOf(f.Take("height"))
	f.Done()
	if c.Length > 0 && c.Width > 0 && c.Height > 0 {
		r.file.Mechanics.Carton = c
	}
}

// readLiquid reads what sloshes in the open carton. Its level may come from the dose, so the tank is completed when the stations
// are known.
func (r *lineReader) readLiquid(n *document.Node) {
	if n == nil {
		return
	}
	r.described()
	f := n.Map(&r.p)
	tank := &motion.Tank{}
	tank.Damping = f.Require("damping", "1 %").Measure(&r.p, quantity.Ratio, "fraction",
		document.Limit{Min: "0 %", Hint: "0.5 % to 2 % is usual for a thin liquid in a carton"}, document.Limit{Max: "50 %"})
	freeboard := f.Take("freeboard")
	tank.Freeboard = freeboard.Length(&r.p, document.Limit{Above: "0 m"})
	if modes := f.Take("modes"); modes != nil {
		tank.Modes = modes.Count(&r.p, document.Limit{Min: "1"}, document.Limit{Max: "50"})
	}
	f.Done()
	carton := r.file.Mechanics.Carton
	if carton == nil {
		r.needCarton(n, "sloshes in a carton")
		return
	}
	tank.Length, tank.Height, tank.Depth = carton.Length, carton.Height, carton.Level
	r.file.Mechanics.Liquid, r.file.Mechanics.Wave = tank, carton.Units
	if freeboard != nil {
		r.file.Mechanics.Wave = unitsOf(freeboard)
	}
	r.liquid, r.freeboard = n, freeboard
}

// needCarton reports that the carton is missing; one with mistakes was reported before.
func (r *lineReader) needCarton(n *document.Node, what string) {
	if r.carton == nil {
		r.p.Add(n, what+", but none is given", "add carton: {length: 95 mm, width: 95 mm, height: 240 mm} at the top of the file")
	}
}

// completeLiquid gives the liquid its level and freeboard, from the carton or from the dose.
func (r *lineReader) completeLiquid() {
	tank := r.file.Mechanics.Liquid
	if tank == nil {
		return
	}
	for _, d := range r.drafts {
		if dosing := d.motion.Dosing; dosing != nil && tank.Depth == 0 {
			tank.Depth = motion.FillHeight(dosing.Dose, r.file.Mechanics.Carton.Area())
		}
	}
	room := tank.Height - tank.Depth
	switch {
	case tank.Depth == 0 && slices.ContainsFunc(r.drafts, func(d *draft) bool { return d.fields.Has("dosing") }):
		return // the dose was refused
	case tank.Depth == 0:
		r.p.Add(r.liquid, "has no level", "add carton.level: 200 mm, or dosing.dose: 64 fl oz at the filler")
		return
	case tank.Freeboard > 0 && tank.Freeboard > room+1e-9:
		r.p.Add(r.freeboard.Assumed(&r.p), "reaches above the carton: between level and rim there are "+
			lengthText(room, unitsOf(r.freeboard)), "write less, or leave it out to take all of it")
		return
	case tank.Freeboard == 0:
		tank.Freeboard = math.Max(room, 0)
	}
	for _, p := range tank.Problems() {
		r.addMotion(r.liquid, p)
	}
}
