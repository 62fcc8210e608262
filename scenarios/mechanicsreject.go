package scenarios

import (
	"fmt"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// readRejectByMargin reads the table from the margin of a dwell to the share of rejects, and adds these to those that do not depend on it:
// both chances are independent. The table holds for each carton by the dwell that it has: where the dwell varies, the share of rejects is
// the mean over its law, as the limit of the seal counts the acts whose own dwell is too short.
func (r *lineReader) readRejectByMargin(d *draft) {
	n := d.fields.Take("reject_by_margin")
	if n == nil {
		return
	}
	rows := r.readMarginRows(n)
	if len(rows) == 0 {
		return
	}
	if d.motion.LeastDwell == 0 {
		if !d.fields.Has("heat") && !d.fields.Has("glue") {
			r.p.Add(n, "needs the least dwell", "add heat: {...} or glue: {...}")
		}
		return
	}
	var dwell random.Sampler
	for _, part := range d.Parts {
		if part.Does == stations.DwellPart {
			dwell = part.Time
		}
	}
	margin := func(dwell time.Duration) float64 { return dwell.Seconds() - float64(d.motion.LeastDwell) }
	for _, usual := range []float64{0.5, shortSeals, 1 - shortSeals} {
		if m := margin(dwell.Quantile(usual)); m < rows[0].at || m > rows[len(rows)-1].at {
			r.warn("station "+d.Name, "the dwell of %s may have a margin of %.3g s, beyond the rows of reject_by_margin; the nearest is used", d.Name, m)
			break
		}
	}
	share := dwell.Average(func(dwell time.Duration) float64 { return interpolate(rows, margin(dwell)) })
	d.Reject = 1 - (1-d.Reject)*(1-share)
}

// readMarginRows reads rows such as {margin: 0.1 s, reject: 0.5 %}, in rising order of margin.
func (r *lineReader) readMarginRows(n *document.Node) []row {
	items := n.List(&r.p)
	if n.Kind() == document.List && (len(items) == 0 || len(items) > mostRows) {
		r.p.Add(n, fmt.Sprintf("has %d rows", len(items)), "give rows such as {margin: 0.1 s, reject: 0.5 %}")
		return nil
	}
	before := r.p.Len()
	var rows []row
	for _, item := range items {
		f := item.Map(&r.p)
		at := f.Require("margin", "0.1 s")
		next := row{at.Measure(&r.p, quantity.Time, "s", document.Limit{Min: "-60 s"}, document.Limit{Max: "60 s"}), f.Require("reject", "0.5 %").Ratio(&r.p)}
		f.Done()
		if k := len(rows); k > 0 && at != nil && next.at <= rows[k-1].at {
			r.p.Add(at.Assumed(&r.p), "is not above the row before", "write the rows in rising order of margin")
		}
		rows = append(rows, next)
	}
	if r.p.Len() > before {
		return nil
	}
	return rows
}
