package scenarios

import (
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// longestWork bounds the mean time of clearing a stop or reloading a material.
const longestWork = 24 * time.Hour

// leastEvery keeps a mistyped interval from making a run endless.
const leastEvery = 100 * time.Millisecond

func (r *lineReader) readStops(d *draft) {
	for _, n := range d.fields.Take("stops").List(&r.p) {
		d.Stops = append(d.Stops, r.readStop(n))
	}
	seen := map[string]bool{}
	for i, n := range d.fields.Take("stops").List(&r.p) {
		if cause := d.Stops[i].Cause; cause != "" && seen[cause] {
			r.p.Add(n.Map(&r.p).Take("cause"), "is the cause of two stops of "+d.Name, "give each its own, or make them one")
		} else {
			seen[cause] = true
		}
	}
	if stop := d.Miss.Stop; stop != nil && seen[stop.Cause] {
		r.p.Add(d.fields.Take("miss"), "has a cause that is also among the stops: "+stop.Cause, "give each its own")
	}
}

// readStop reads a cause of stops.
func (r *lineReader) readStop(n *document.Node) stations.Stop {
	f := n.Map(&r.p)
	stop := r.readClearing(f)
	chance, every := f.Take("chance"), f.Take("every")
	clock := f.Take("clock")
	word := clock.OneOf(&r.p, "running", "calendar")
	factor := r.factor(f.Take("by_setting"))
	switch {
	case f.Node() == nil:
	case chance != nil && every != nil:
		r.p.Add(chance, "stands beside every", "keep one of them")
	case chance != nil:
		stop.Chance = r.scaledChance(chance, factor)
	case every == nil:
		f.Require("every", "900 cartons")
	default:
		r.readEvery(every, factor, &stop)
	}
	switch {
	case word == "calendar" && stop.Trigger == stations.ByRunning:
		stop.Trigger = stations.ByClock
	case word != "" && stop.Trigger == stations.ByCartons && factor > 0 && (chance != nil || every != nil):
		r.p.Add(clock, "is for a stop by time, but this one counts cartons", "take it out, or write every: 40 min")
	}
	after := f.Take("after")
	again := after.OneOf(&r.p, "resume", "repeat", "again")
	stop.Repeat, stop.Afresh = again == "repeat" || again == "again", again == "again"
	if stop.Repeat && stop.Trigger != stations.ByRunning && factor > 0 {
		r.p.Add(after, "is for a stop by running time, which interrupts an act", "take it out, or write every: 40 min")
	}
	f.Done()
	return stop
}

// readClearing reads what a stop is and costs.
func (r *lineReader) readClearing(f *document.Fields) stations.Stop {
	return stations.Stop{
		Cause:      r.name(f.Require("cause", "jam")),
		Clear:      r.time(f.Require("clear", "55 s"), upTo(longestWork)),
		Scrap:      f.Take("scrap").Count(&r.p, document.Limit{Max: "1000"}),
		Unattended: !r.boolOr(f.Take("attendant"), true),
	}
}

func (r *lineReader) boolOr(n *document.Node, absent bool) bool {
	if n == nil {
		return absent
	}
	return n.Bool(&r.p)
}

// readEvery reads how far apart stops are, by cartons or by time. A quantity alone is the mean of a stop that comes by
// chance alone; a law says how the intervals are spread. A factor of the rate divides them.
func (r *lineReader) readEvery(n *document.Node, factor float64, stop *stations.Stop) {
	inner := n.Assumed(&r.p)
	dimension, ok := r.cartonsOrTime(inner)
	if !ok {
		return
	}
	before := r.p.Len()
	switch {
	case dimension == quantity.Count && inner.Kind() == document.Scalar:
		mean := n.Measure(&r.p, quantity.Count, "cartons", document.Limit{Min: "1 carton"})
		if r.p.Len() == before {
			stop.Chance = r.within1(n, factor/mean)
		}
		return
	case dimension == quantity.Count:
		stop.Acts = r.law(inner, quantity.Count)
		if stop.Acts != nil && stop.Acts.Mean() < 1 {
			r.p.Add(inner, "comes more than once a carton", "write a mean of 1 carton or more")
		}
	case inner.Kind() == document.Scalar:
		stop.Trigger, stop.Every = stations.ByRunning, r.memoryless(n)
	default:
		stop.Trigger, stop.Every = stations.ByRunning, r.drawnTime(inner)
	}
	if r.p.Len() > before {
		return
	}
	if dimension == quantity.Time && stop.Every.Mean() < leastEvery {
		r.p.Add(inner, "comes more often than every "+quantity.FormatDuration(leastEvery), "write a longer time")
		return
	}
	scaleInterval(stop, factor)
}

// scaleInterval divides the intervals of a stop by the factor of its rate; at a factor of 0 it never comes.
func scaleInterval(stop *stations.Stop, factor float64) {
	switch {
	case factor == 1:
	case factor == 0:
		stop.Trigger, stop.Acts, stop.Every = stations.ByCartons, nil, random.Sampler{}
	case stop.Acts != nil:
		stop.Acts = scaledLaw{stop.Acts, 1 / factor}
	default:
		stop.Every = stop.Every.Scale(1 / factor)
	}
}

// memoryless reads the mean of a time after which an event comes by chance alone.
func (r *lineReader) memoryless(n *document.Node) random.Sampler {
	law, err := random.Exponential(n.Measure(&r.p, quantity.Time, "s", document.Limit{Above: "0 s"}, document.Limit{Max: "100 years"}))
	if err != nil {
		return random.Sampler{} // reported by the reader of the mean
	}
	return random.Drawn(law)
}

// cartonsOrTime says what an interval counts, by the first quantity in it that has a unit.
func (r *lineReader) cartonsOrTime(n *document.Node) (quantity.Dimension, bool) {
	offer := func(number string) string {
		return "write " + number + " cartons, or a time such as " + number + " min"
	}
	var bare *document.Node
	for _, leaf := range n.Leaves() {
		q, err := quantity.Parse(leaf.Raw())
		switch {
		case err == nil && q.Is(quantity.Time):
			return quantity.Time, true
		case err == nil && q.Is(quantity.Count):
			return quantity.Count, true
		case err == nil || bare == nil:
			bare = leaf
		}
	}
	if bare == nil {
		r.p.Add(n, "has no value", "write every: 900 cartons, or every: 40 min")
		return 0, false
	}
	if q, err := quantity.Parse(bare.Raw()); err != nil {
		r.addQuantity(bare, err, offer)
	} else {
		r.p.Add(bare, "is neither a number of cartons nor a time", "write every: 900 cartons, or every: 40 min; "+q.Unit()+" is neither")
	}
	return 0, false
}
