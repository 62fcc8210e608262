package scenarios

import (
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// readGlue reads what a glue needs: the times of its maker, in the terms of ASTM D4497, and how long before the jaws close it was applied.
func (r *lineReader) readGlue(d *draft, n *document.Node) {
	if n == nil {
		return
	}
	r.described()
	before := r.p.Len()
	f := n.Map(&r.p)
	g := &motion.Glue{Open: r.glueTime(f.Require("open", "8 s")), Set: r.glueTime(f.Require("set", "0.9 s")), Compression: r.glueTime(f.Take("compression"))}
	applied := f.Take("applied")
	margin := r.readMargin(f.Take("margin"))
	f.Done()
	if r.p.Len() > before {
		r.appliedAt(d, applied)
		return
	}
	problems := g.Problems()
	for _, p := range problems {
		r.addMotion(n, p)
	}
	if len(problems) > 0 {
		return
	}
	if isMap(applied) {
		if d.Glue = r.appliedAt(d, applied); d.Glue != nil {
			d.Glue.Open = g.Open.Duration()
		}
	} else if left := g.OpenTimeLeft(r.glueTime(applied)); left < 0 {
		r.p.Add(applied.Assumed(&r.p), "is longer than the open time of "+quantity.FormatDuration(g.Open.Duration()), "the glue no longer wets the board when the jaws close")
	}
	d.motion.Glue, d.motion.LeastDwell, d.margin = g, g.Dwell(), margin
}

// isMap says that a value is a map, and not a quantity written with its source.
func isMap(n *document.Node) bool { return n != nil && n.Kind() == document.Map && !n.IsAssumption() }

func (r *lineReader) glueTime(n *document.Node) motion.Seconds {
	return motion.SecondsOf(n.PositiveDuration(&r.p, document.Limit{Max: "1 h"}))
}

// appliedAt reads which station lays the glue, and what becomes of a carton that is closed too late; nil where it is not said so.
func (r *lineReader) appliedAt(d *draft, n *document.Node) *stations.Glue {
	if !isMap(n) {
		return nil
	}
	f := n.Map(&r.p)
	at := f.Require("at", "erector")
	glue := &stations.Glue{From: r.laidBy(d, at), Scraps: f.Take("then").OneOf(&r.p, "reject", "scrap") == "scrap"}
	f.Done()
	if glue.From < 0 {
		return nil
	}
	return glue
}

// laidBy finds the station that lays the glue of another, on the same conveyor and before it or the same; -1 where there is none such.
func (r *lineReader) laidBy(d *draft, at *document.Node) int {
	name := at.Text(&r.p)
	if at == nil || name == "" {
		return -1
	}
	for i, other := range r.drafts {
		if other.Name == name && d.onConveyor() && other.Feed.Conveyor == d.Feed.Conveyor {
			return i
		}
		if other == d {
			break
		}
	}
	r.p.Add(at, "is no station of this conveyor up to "+d.Name, "glue is followed along one conveyor; or write how long before the jaws close it is applied, as in applied: 3 s")
	return -1
}

// closeGlue notes which parts of the act pass until the jaws are closed.
func (d *draft) closeGlue() {
	if d.Glue == nil {
		return
	}
	for _, part := range d.Parts {
		if part.Does == stations.DwellPart {
			return
		}
		d.Glue.Closes++
	}
}
