package scenarios

import (
	"fmt"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// readRejectByMargin reads the table from the margin of the dwell to the share of rejects, and adds the rejects at the file's
// dwell to those that do not depend on it: both chances are independent.
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
	var dwell time.Duration
	for _, part := range d.Parts {
		if part.Name == "dwell" {
			dwell = part.Time.Mean()
		}
	}
	margin := dwell.Seconds() - float64(d.motion.LeastDwell)
	if first, last := rows[0], rows[len(rows)-1]; margin < first.at || margin > last.at {
		r.warn("station "+d.Name, "the dwell of %s has a margin of %.3g s, beyond the rows of reject_by_margin; the nearest is used", d.Name, margin)
	}
	d.Reject = 1 - (1-d.Reject)*(1-interpolate(rows, margin))
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
