package scenarios

import (
	"fmt"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// chance reads a probability: a share alone, or a map {chance, by_setting}.
func (r *lineReader) chance(n *document.Node) float64 {
	if n == nil || n.Kind() == document.Scalar || n.IsAssumption() {
		return n.Ratio(&r.p)
	}
	f := n.Map(&r.p)
	chance := f.Require("chance", "0.2 %")
	factor := r.factor(f.Take("by_setting"))
	f.Done()
	return r.scaledChance(chance, factor)
}

func (r *lineReader) scaledChance(n *document.Node, factor float64) float64 {
	return r.within1(n, float64(n.Ratio(&r.p)*factor))
}

// scaledMiss is the chance of a miss at the setting, which must leave some acts that succeed.
func (r *lineReader) scaledMiss(n *document.Node, chance, factor float64) float64 {
	chance = float64(chance * factor)
	if chance > 0.99 && n != nil {
		r.p.Add(n.Assumed(&r.p), "comes to "+quantity.FormatRatio(chance)+" at this setting", "an act that always misses makes nothing; make the factors of by_setting smaller")
		return 0
	}
	return chance
}

// within1 reports a probability that its factor has raised above 1.
func (r *lineReader) within1(n *document.Node, p float64) float64 {
	if p > 1 {
		r.p.Add(n.Assumed(&r.p), "comes to a chance of "+quantity.FormatRatio(p)+" at this setting", "make the factors of by_setting smaller")
		return 1
	}
	return p
}

// factor reads a table from setting to factor, and gives the factor at the line's setting: on the straight line between
// its rows, and that of the nearest row beyond its ends. It is 1 without a table.
func (r *lineReader) factor(n *document.Node) float64 {
	rows := r.readTable(n)
	if len(rows) == 0 {
		return 1
	}
	setting := r.line.Setting
	if setting == 0 {
		if !r.groundless {
			r.p.Add(n, "depends on the setting, but there is none", "add setting: 1450 cartons/h, or take it out")
		}
		return 1
	}
	first, last := rows[0], rows[len(rows)-1]
	if setting < first.at || setting > last.at {
		r.warn("setting", "%s is given from %s to %s; at the setting of %s the nearest of its rows is used", n.Path(),
			quantity.FormatRate(first.at), quantity.FormatRate(last.at), quantity.FormatRate(setting))
	}
	return interpolate(rows, setting)
}

// row is one line of a table from setting to factor.
type row struct{ at, factor float64 }

func interpolate(rows []row, setting float64) float64 {
	if setting <= rows[0].at {
		return rows[0].factor
	}
	for i := 1; i < len(rows); i++ {
		a, b := rows[i-1], rows[i]
		if setting <= b.at {
			share := (setting - a.at) / (b.at - a.at)
			return a.factor + float64((b.factor-a.factor)*share)
		}
	}
	return rows[len(rows)-1].factor
}

// mostRows is how long a table may be.
const mostRows = 200

func (r *lineReader) readTable(n *document.Node) []row {
	items := n.List(&r.p)
	if n != nil && n.Kind() == document.List && (len(items) == 0 || len(items) > mostRows) {
		r.p.Add(n, fmt.Sprintf("has %d rows", len(items)), "give rows such as {at: 1200 cartons/h, factor: 0.6}")
		return nil
	}
	before := r.p.Len()
	var rows []row
	for _, item := range items {
		f := item.Map(&r.p)
		at := f.Require("at", "1200 cartons/h")
		next := row{at.Rate(&r.p), f.Require("factor", "0.6").Number(&r.p, document.Limit{Min: "0"}, document.Limit{Max: "1000"})}
		f.Done()
		if k := len(rows); k > 0 && at != nil && next.at > 0 && next.at <= rows[k-1].at {
			r.p.Add(at.Assumed(&r.p), "is not above the row before", "write the rows in rising order of setting")
		}
		rows = append(rows, next)
	}
	if r.p.Len() > before {
		return nil
	}
	return rows
}
