package scenarios

import (
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// readSealing reads how the jaws move and what the seal needs.
func (r *lineReader) readSealing(d *draft) {
	jaws := d.fields.Take("jaws")
	d.motion.Jaws = r.readJaws(jaws)
	if d.motion.Jaws != nil {
		d.motion.JawUnits = unitsOf(jaws.Map(&r.p).Take("stroke"))
	}
	heat, glue := d.fields.Take("heat"), d.fields.Take("glue")
	if heat != nil && glue != nil {
		r.p.Add(glue, "stands beside heat", "a seal is made by heat or by glue")
		return
	}
	r.readHeat(d, heat)
	r.readGlue(d, glue)
}

// readJaws reads the jaws' servo move; nil where there is none.
func (r *lineReader) readJaws(n *document.Node) *motion.Jaws {
	if n == nil {
		return nil
	}
	r.described()
	before := r.p.Len()
	f := n.Map(&r.p)
	stroke := f.Require("stroke", "80 mm")
	move := motion.Move{Distance: stroke.Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "5 m"})}
	r.readMoveLimits(f, &move)
	jaws := &motion.Jaws{Stroke: move.Distance}
	clear := f.Take("clear_at")
	jaws.ClearAt = clear.Length(&r.p, document.Limit{Above: "0 m"})
	f.Done()
	if clear != nil && jaws.ClearAt > jaws.Stroke && r.p.Len() == before {
		r.p.Add(clear.Assumed(&r.p), "is more than the stroke", "write the opening from which the carton may move")
	}
	if r.p.Len() > before || !r.checkMove(n, move) {
		return nil
	}
	jaws.Close, jaws.Open = move.Timed(), move.Timed()
	return jaws
}

// readMoveLimits reads the limits of a servo's move along a line.
func (r *lineReader) readMoveLimits(f *document.Fields, move *motion.Move) {
	move.Speed = r.readAlong(f.Require("speed", "0.6 m/s"), "m/s")
	move.Acceleration = r.readAlong(f.Require("acceleration", "6 m/s2"), "m/s2")
	move.Deceleration = r.readAlong(f.Take("deceleration"), "m/s2")
	move.Jerk = r.readAlong(f.Take("jerk"), "m/s3")
}

// checkMove reports limits of a move that make no sense together.
func (r *lineReader) checkMove(n *document.Node, move motion.Move) bool {
	problems := move.Problems()
	for _, p := range problems {
		r.addMotion(n, p)
	}
	return len(problems) == 0
}

// readHeat reads what a heat seal needs: the least dwell for a temperature at the interface.
func (r *lineReader) readHeat(d *draft, n *document.Node) {
	if n == nil {
		return
	}
	r.described()
	before := r.p.Len()
	f := n.Map(&r.p)
	celsius := func(n *document.Node) float64 {
		return n.Measure(&r.p, quantity.Temperature, "degC", document.Limit{Min: "-50 degC"}, document.Limit{Max: "500 degC"})
	}
	s := &motion.HeatSeal{Start: 20}
	s.Thickness = f.Require("board", "0.6 mm").Length(&r.p, document.Limit{Above: "0 m"}, document.Limit{Max: "20 mm"})
	s.Diffusivity = f.Require("diffusivity", "0.12 mm2/s").Measure(&r.p, quantity.Diffusivity, "m2/s", document.Limit{Above: "0 m2/s"})
	s.Jaws = celsius(f.Require("jaws", "190 degC"))
	wanted := f.Require("wanted", "120 degC")
	s.Wanted = celsius(wanted)
	if start := f.Take("start"); start != nil {
		s.Start = celsius(start)
	}
	s.OneJaw = f.Take("hot").OneOf(&r.p, "both jaws", "one jaw") == "one jaw"
	r.readContact(f, s)
	margin := r.readMargin(f.Take("margin"))
	d.motion.HeatUnits = unitsOf(wanted)
	f.Done()
	if r.p.Len() > before {
		return
	}
	least, err := s.LeastDwell()
	if err != nil {
		r.addError(wanted, err, "raise the jaws' temperature, or want less")
		return
	}
	d.motion.Heat, d.motion.LeastDwell, d.margin = s, least, margin
}

// readContact reads how well heat passes into the board: a conductance and the board's conductivity; perfectly without them.
func (r *lineReader) readContact(f *document.Fields, s *motion.HeatSeal) {
	contact, conductivity := f.Take("contact"), f.Take("conductivity")
	h := contact.Measure(&r.p, quantity.Conductance, "W/m2K", document.Limit{Above: "0 W/m2K"})
	k := conductivity.Measure(&r.p, quantity.Conductivity, "W/mK", document.Limit{Above: "0 W/mK"})
	switch {
	case contact != nil && conductivity == nil:
		r.p.Add(contact, "needs the board's conductivity", "add conductivity: 0.18 W/mK")
	case contact == nil && conductivity != nil:
		r.p.Add(conductivity, "is asked for with a contact conductance only", "add contact: 2000 W/m2K, or take it out")
	case contact != nil && k > 0:
		s.Biot = h * s.Thickness / k
	}
}

// readMargin reads the time that a derived dwell is longer than the least one.
func (r *lineReader) readMargin(n *document.Node) motion.Seconds {
	return motion.SecondsOf(n.Duration(&r.p, document.Limit{Max: "1 min"}))
}

// sealTimes are the jaws' parts of a seal: close, dwell and open; given, or derived from the jaws' move and the seal's needs.
func (r *lineReader) sealTimes(d *draft) []stations.Part {
	minute := actUpTo(time.Minute)
	jaws := d.motion.Jaws
	closing, opening := d.fields.Take("close"), d.fields.Take("open")
	if jaws == nil && !d.fields.Has("jaws") {
		closing, opening = d.fields.Require("close", "0.28 s"), d.fields.Require("open", "0.28 s")
	}
	shut, open := r.time(closing, minute), r.time(opening, minute)
	dwell := r.dwellTime(d, d.fields.Require("dwell", "0.95 s"))
	if jaws != nil {
		if closing == nil {
			shut = random.Fixed(jaws.Close.Time.Duration())
		} else {
			jaws.Close = motion.TimedMove{Time: motion.SecondsOf(shut.Mean())}
		}
		if opening != nil {
			jaws.Open = motion.TimedMove{Time: motion.SecondsOf(open.Mean())}
		}
		jaws.Dwell, jaws.SensorLag = motion.SecondsOf(dwell.Mean()), 0
		for _, part := range d.Parts {
			jaws.SensorLag += motion.SecondsOf(part.Time.Mean())
		}
		if opening == nil {
			closed := jaws.SensorLag + jaws.Close.Time + jaws.Dwell
			open = random.Fixed((jaws.Needed() - closed).Duration())
		}
	}
	return []stations.Part{{Name: "close", Does: stations.ClosePart, Time: shut}, {Name: "dwell", Does: stations.DwellPart, Time: dwell}, {Name: "open", Does: stations.OpenPart, Time: open}}
}

// dwellTime is the dwell as given, or derived from heat or glue.
func (r *lineReader) dwellTime(d *draft, n *document.Node) random.Sampler {
	if n == nil || n.Raw() != "derived" {
		return r.time(n, actUpTo(time.Minute).aboveZero())
	}
	if d.motion.LeastDwell == 0 {
		if !d.fields.Has("heat") && !d.fields.Has("glue") {
			r.p.Add(n, "has nothing to be derived from", "add heat: {...} or glue: {...}, or write dwell: 0.95 s")
		}
		return random.Sampler{}
	}
	dwell := (d.motion.LeastDwell + d.margin).Duration()
	if dwell > time.Minute {
		r.p.Add(n, "comes to "+quantity.FormatDuration(dwell.Round(time.Millisecond))+", which can't be right here", "look at board, diffusivity and temperatures")
	}
	return random.Fixed(dwell)
}
