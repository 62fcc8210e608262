package scenarios

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// readStation reads what a station does, now that its conveyor is known.
func (r *lineReader) readStation(d *draft) {
	if d.fields.Node() == nil {
		return
	}
	r.readUnits(d)
	r.readMotion(d)
	r.readAct(d)
	d.Miss = r.readMiss(d.fields.Take("miss"))
	d.Reject = r.chance(d.fields.Take("reject"))
	r.readRejectByMargin(d)
	d.Ejects = d.fields.Take("ejects").Bool(&r.p)
	if limit := d.fields.Take("stand_limit"); limit != nil {
		d.StandLimit = limit.PositiveDuration(&r.p, document.Limit{Max: "24 h", Hint: "leave stand_limit out where a carton may stand for ever"})
	}
	r.readStops(d)
	r.readMaterials(d)
	if d.known {
		r.refuseKeysOfOthers(d)
		d.fields.Done()
	}
}

// kindKeys are the keys that only some kinds of station have.
var kindKeys = map[string][]stations.Kind{
	"bottom_seal":      {stations.Erect},
	"turns":            {stations.Erect},
	"blanks":           {stations.Erect},
	"drop":             {stations.Erect},
	"fill":             {stations.Fill},
	"dosing":           {stations.Fill},
	"lag":              {stations.Seal},
	"close":            {stations.Seal},
	"dwell":            {stations.Seal},
	"open":             {stations.Seal},
	"jaws":             {stations.Seal},
	"heat":             {stations.Seal},
	"glue":             {stations.Seal},
	"away":             {stations.Offload},
	"moves":            {stations.Offload},
	"pallet":           {stations.Offload, stations.Machine},
	"steps":            {stations.Machine},
	"reject_by_margin": {stations.Seal},
	"cycle":            {stations.Erect, stations.Fill, stations.Offload, stations.Machine},
}

// refuseKeysOfOthers reports keys that belong to another kind of station.
func (r *lineReader) refuseKeysOfOthers(d *draft) {
	for _, key := range d.node.Keys() {
		kinds, special := kindKeys[key.Raw()]
		if !special || slices.Contains(kinds, d.Kind) {
			continue
		}
		d.fields.Take(key.Raw())
		words := make([]string, len(kinds))
		for i, kind := range kinds {
			words[i] = kind.String()
		}
		r.p.Report(document.Problem{At: key.At(), Path: d.node.Path(), Text: key.Raw(), Message: "is no key of kind " + d.Kind.String(),
			Hint: "it belongs to kind " + strings.Join(words, " or ")})
	}
}

// readUnits reads how many identical units work side by side.
func (r *lineReader) readUnits(d *draft) {
	n := d.fields.Take("units")
	if n == nil {
		return
	}
	d.Units = max(1, n.Count(&r.p, document.Limit{Min: "1"}, document.Limit{Max: fmt.Sprint(mostUnits)}))
	if d.onConveyor() && d.Kind != stations.Offload && d.Units > 1 && d.known {
		r.p.Add(n.Assumed(&r.p), "units side by side can't share one place on a conveyor", "write lanes: at the top of the file for cartons side by side")
	}
}

func (d *draft) onConveyor() bool { return d.Feed.Conveyor >= 0 }

// readAct reads the parts of a station's act, and whether it acts on an empty pitch.
func (r *lineReader) readAct(d *draft) {
	if !d.known {
		return
	}
	empty := d.fields.Take("acts_empty")
	d.ActsEmpty = empty.Bool(&r.p)
	if d.ActsEmpty && !d.onConveyor() {
		r.p.Add(empty, "is for a station on a conveyor, where a pitch may be empty", "take it out")
	}
	kindForms[d.Kind].read(r, d)
}

// defaultTurns is how many cycles an erector's arm takes from the pick to the drop: three turns of 90 degrees.
const defaultTurns = 3

func (r *lineReader) readErect(d *draft) {
	d.Parts = r.erectTimes(d, r.actOf(d, "bottom_seal", "bottom seal", "0.85 s"))
	turns := d.fields.Take("turns")
	count := turns.Count(&r.p, document.Limit{Max: "20"})
	switch {
	case d.onConveyor() && turns == nil:
		d.Turns = defaultTurns
	case d.onConveyor():
		d.Turns = count
	case turns != nil:
		r.p.Add(turns.Assumed(&r.p), "counts cycles of a conveyor, but the station stands on none", "take it out")
	}
}

// readFill reads the time of a fill. On a conveyor with a master it may be left out: nozzle and piston then ride on the
// master, with or without a carton, until its revolution is done.
func (r *lineReader) readFill(d *draft) {
	if d.onConveyor() && !d.fields.Has("fill") && !d.fields.Has("cycle") {
		if c := r.line.Conveyors[d.Feed.Conveyor]; c.Revolution > c.Index {
			d.ActsEmpty = true
			d.Parts = r.fillTimes(d, c)
			return
		}
		if r.groundless {
			return
		}
	}
	d.Parts = r.actOf(d, "fill", "fill", "1.3 s")
}

func (r *lineReader) readSeal(d *draft) {
	if lag := d.fields.Take("lag"); lag != nil {
		d.Parts = append(d.Parts, stations.Part{Name: "lag", Does: stations.LagPart, Time: r.time(lag, upTo(10*time.Second))})
	}
	d.Parts = append(d.Parts, r.sealTimes(d)...)
	d.closeGlue()
}

func (r *lineReader) readOffload(d *draft) {
	d.Parts = r.offloadTimes(d)
	n := d.fields.Take("away")
	if n == nil {
		return
	}
	d.Away = n.PositiveDuration(&r.p)
	var cycle time.Duration
	for _, part := range d.Parts {
		cycle += part.Time.Mean()
	}
	switch {
	case !d.onConveyor():
		r.p.Add(n.Assumed(&r.p), "is when the gripper clears the conveyor, but the station stands on none", "take it out")
	case cycle > 0 && d.Away > cycle:
		r.p.Add(n.Assumed(&r.p), "is longer than the cycle", "the gripper is away before the cycle ends")
	}
}

// readMachine reads a cycle, as a whole or in named steps.
func (r *lineReader) readMachine(d *draft) {
	steps, cycle := d.fields.Take("steps"), d.fields.Take("cycle")
	switch {
	case steps != nil && cycle != nil:
		r.p.Add(cycle, "stands beside steps", "keep cycle or steps")
	case steps == nil:
		d.Parts = []stations.Part{{Name: "cycle", Time: r.time(d.fields.Require("cycle", "2 s"), actUpTo(24*time.Hour))}}
	}
	seen := map[string]bool{}
	for _, n := range steps.List(&r.p) {
		f := n.Map(&r.p)
		name := f.Require("name", "tighten")
		part := stations.Part{Name: r.name(name), Time: r.time(f.Require("takes", "0.4 s"), actUpTo(24*time.Hour))}
		if seen[part.Name] && name != nil {
			r.p.Add(name, "is the name of two steps", "give each its own")
		}
		seen[part.Name] = true
		f.Done()
		d.Parts = append(d.Parts, part)
	}
}

// actOf reads an act of one part, by the kind's own word or as a cycle.
func (r *lineReader) actOf(d *draft, key, name, example string) []stations.Part {
	own, cycle := d.fields.Take(key), d.fields.Take("cycle")
	switch {
	case own != nil && cycle != nil:
		r.p.Add(cycle, "stands beside "+key, "keep one of them")
	case own == nil && cycle == nil:
		own = d.fields.Require(key, example)
	case own == nil:
		own, name = cycle, "cycle"
	}
	return []stations.Part{{Name: name, Time: r.time(own, actUpTo(10*time.Minute))}}
}
