package scenarios

import (
	"fmt"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// checkLine finds what is wrong with the line as a whole.
func (r *lineReader) checkLine(root *document.Node) {
	if len(r.drafts) == 0 || len(r.drafts) != len(r.line.Stations) {
		return
	}
	r.checkPitches(root)
	r.checkOrder()
	r.checkRoom()
	if r.p.Len() == 0 {
		r.checkMoves()
	}
}

// checkPitches bounds the number of places on conveyors.
func (r *lineReader) checkPitches(root *document.Node) {
	pitches := 0
	for _, d := range r.drafts {
		pitches += d.Feed.Pitches + d.Turns
	}
	for _, c := range r.line.Conveyors {
		pitches += c.RunOut
	}
	if pitches > mostPitches {
		r.p.Add(root, fmt.Sprintf("describes a line of %d pitches", pitches), fmt.Sprintf("a line may have %d", mostPitches))
	}
}

// checkOrder finds stations behind the one that takes the cartons away.
func (r *lineReader) checkOrder() {
	for _, d := range r.drafts[:len(r.drafts)-1] {
		if d.known && d.Kind == stations.Offload {
			r.p.Add(d.fields.Take("kind"), "is not the last station", "cartons leave the line here; make it kind: machine, or put it last")
		}
	}
}

// checkRoom finds buffers that can't hold what a conveyor of several lanes moves in one cycle, so that the line would
// come to a standstill for good.
func (r *lineReader) checkRoom() {
	lanes := r.line.Lanes
	for i, d := range r.drafts {
		if lanes == 1 || i == 0 || d.Feed.Buffer == nil || d.Feed.Buffer.Capacity == stations.Unlimited {
			continue
		}
		from, to := r.drafts[i-1].onConveyor(), d.onConveyor()
		to = to && !r.line.Conveyors[d.Feed.Conveyor].RunsEmpty
		need := 0
		switch {
		case from && to:
			need = 2*lanes - 1 // one short of a full pitch may be left in it
		case from || to:
			need = lanes
		}
		if capacity := d.Feed.Buffer.Capacity; capacity < need {
			r.p.Add(d.buffer, fmt.Sprintf("has room for %s, but the conveyor has %d lanes: the line would come to a standstill",
				quantity.FormatCount(int64(capacity), "carton"), lanes), "write "+quantity.FormatCount(int64(need), "carton")+" or more")
		}
	}
}

// checkMoves finds a line in which time would stand still because something takes none.
func (r *lineReader) checkMoves() {
	groups := r.line.Sections()
	timeless := true // of all sections so far
	for k, g := range groups {
		d := r.drafts[g.First]
		if g.Conveyor >= 0 && !r.conveyorTakesTime(g) {
			r.p.Add(d.node, "stands on a conveyor whose cycle may take no time", "give the conveyor an index time, or the line a setting")
			return
		}
		if !timeless {
			continue
		}
		if k > 0 && d.Feed.Buffer.Capacity == stations.Unlimited {
			r.p.Add(d.buffer, "would fill without end: the stations before it take no time", "give them a time, or the buffer a capacity")
			return
		}
		timeless = g.Conveyor < 0 && r.actTime(g.First) == 0 && !r.pacesHead(groups)
	}
	switch {
	case timeless:
		r.p.Add(r.list, "take no time at all, so that nothing paces the line", "give a station a time, or the line a setting")
	case r.line.Setting == 0 && r.unpaced(groups):
		r.p.Add(r.drafts[0].node, "takes no time, and there is no setting, so that nothing paces the head of the line", "give it a time, or the line a setting")
	}
}

// pacesHead says that the setting paces the head of a line without a conveyor.
func (r *lineReader) pacesHead(groups []stations.Group) bool {
	return r.line.Setting > 0 && !hasConveyor(groups)
}

// unpaced says that what would pace a line without a setting takes no time: its head.
func (r *lineReader) unpaced(groups []stations.Group) bool {
	return !hasConveyor(groups) && r.actTime(groups[0].First) == 0
}

// conveyorTakesTime says that no cycle of a conveyor, empty ones included, takes no time.
func (r *lineReader) conveyorTakesTime(g stations.Group) bool {
	c := r.line.Conveyors[g.Conveyor]
	if c.Index > 0 || r.line.Setting > 0 || c.Release == stations.AtCamZero {
		return true
	}
	if c.RunsEmpty && g.First > 0 {
		return false
	}
	return r.actTime(g.First) > 0
}

// actTime is the longest that an act of a station can take.
func (r *lineReader) actTime(station int) time.Duration {
	var sum time.Duration
	for _, part := range r.line.Stations[station].Parts {
		sum += min(part.Time.Max(), time.Hour)
	}
	return sum
}

// fixedPart is a part of an act that always takes the same time.
func fixedPart(name string, does stations.PartKind, d time.Duration) stations.Part {
	return stations.Part{Name: name, Does: does, Time: random.Fixed(d)}
}
