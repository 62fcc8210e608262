package scenarios

import (
	"fmt"
	"strconv"
	"strings"

	"dwellcast/scenarios/document"
	"dwellcast/stations"
	"dwellcast/stations/motion"
)

// draft is a station while it is read.
type draft struct {
	stations.Station
	node   *document.Node
	fields *document.Fields
	// known says that the kind is one that there is, so that its keys are known too.
	known bool
	// byPitches says that the station stands on the conveyor of the one before.
	byPitches bool
	// own is the conveyor map of the station, nil where it has none.
	own *document.Node
	// buffer is where the capacity was written.
	buffer *document.Node
	// motion is how the station moves, and margin what a derived dwell has above the least one.
	motion StationMotion
	margin motion.Seconds
}

// readStations reads the stations in flow order, then the conveyors that they stand on, then what each does.
func (r *lineReader) readStations(f *document.Fields) {
	list := f.Require("stations")
	r.list = list
	items := list.List(&r.p)
	switch {
	case list != nil && list.Kind() == document.List && len(items) == 0:
		r.p.Add(list, "has no stations", "give at least one, as in - {name: sealer, kind: seal, ...}")
	case len(items) > mostStations:
		r.p.Add(list, fmt.Sprintf("has %d stations", len(items)), fmt.Sprintf("a line may have %d", mostStations))
		return
	}
	for i, n := range items {
		r.drafts = append(r.drafts, r.startStation(n, i == 0))
	}
	r.layConveyors(f.Take("conveyor"))
	for _, d := range r.drafts {
		r.readStation(d)
		r.line.Stations = append(r.line.Stations, d.Station)
		r.file.Mechanics.Stations = append(r.file.Mechanics.Stations, d.motion)
	}
	r.checkNames()
}

// startStation reads what a station is and where it stands.
func (r *lineReader) startStation(n *document.Node, first bool) *draft {
	d := &draft{node: n, fields: n.Map(&r.p)}
	d.Feed.Conveyor, d.Units = -1, 1
	d.Name = r.name(d.fields.Require("name", "sealer"))
	kind := d.fields.Require("kind", "seal").OneOf(&r.p, stations.KindNames()...)
	for k, word := range stations.KindNames() {
		if word == kind {
			d.Kind, d.known = stations.Kind(k), true
		}
	}
	d.own = d.fields.Take("conveyor")
	switch after := d.fields.Take("after"); {
	case first && after != nil:
		r.p.Add(after, "stands at the first station, which has none before it", "take it out; the first station never lacks material")
	case first:
	case after == nil && d.fields.Node() != nil:
		r.p.Report(document.Problem{At: n.At(), Path: n.Path(), Text: "after", Message: "is missing",
			Hint: "add after: {pitches: 2} on the conveyor of the station before, or after: {buffer: 24 cartons}"})
	default:
		r.readAfter(d, after)
	}
	return d
}

// mostBuffer is the largest capacity that a buffer may have.
const mostBuffer = 1_000_000

// readAfter reads what links a station to the one before it.
func (r *lineReader) readAfter(d *draft, n *document.Node) {
	f := n.Map(&r.p)
	if f.Node() == nil {
		return
	}
	pitches := f.Take("pitches")
	d.buffer = f.Take("buffer")
	transit := f.Take("transit")
	f.Done()
	switch {
	case pitches != nil && d.buffer != nil:
		r.p.Add(n, "gives both pitches and a buffer", "pitches is for the same conveyor, buffer for a station that runs on its own")
	case pitches != nil:
		d.byPitches = true
		d.Feed.Pitches = pitches.Count(&r.p, document.Limit{Min: "1", Hint: "write 1 or more: two stations can't stand at one pitch"},
			document.Limit{Max: fmt.Sprint(mostPitches)})
		if transit != nil {
			r.p.Add(transit, "is the time through a buffer, but there is none", "take it out; the conveyor's index moves the cartons")
		}
	case d.buffer != nil:
		d.Feed.Buffer = &stations.Buffer{Capacity: r.readCapacity(d.buffer), Transit: transit.Duration(&r.p, document.Limit{Max: "24 h"})}
	default:
		r.p.Add(n, "gives neither pitches nor a buffer", "write after: {pitches: 2} or after: {buffer: 24 cartons}")
	}
}

func (r *lineReader) readCapacity(n *document.Node) int {
	if n.Raw() == unlimited {
		return stations.Unlimited
	}
	return n.Count(&r.p, document.Limit{Min: "0", Hint: "write 0 for stations that hand over directly, or unlimited"},
		document.Limit{Max: fmt.Sprint(mostBuffer), Hint: "write unlimited for a buffer that is never full"})
}

// checkNames finds stations of one name. Units side by side are numbered, and a number may make a name of another station.
func (r *lineReader) checkNames() {
	seen := map[string]*draft{}
	for _, d := range r.drafts {
		if d.Name == "" {
			continue
		}
		if first := seen[d.Name]; first != nil {
			r.p.Add(d.fields.Take("name"), "is the name of two stations", "the first is at "+first.node.At().String()+"; give each its own")
			continue
		}
		seen[d.Name] = d
	}
	for _, d := range r.drafts {
		word, number, found := cutLast(d.Name, " ")
		k, err := strconv.Atoi(number)
		if other := seen[word]; found && err == nil && other != nil && 1 <= k && k <= other.Units && other.Units > 1 {
			r.p.Add(d.fields.Take("name"), "is what unit "+number+" of "+word+" is called", "give it another name")
		}
	}
}

// cutLast cuts a text at the last separator.
func cutLast(text, separator string) (before, after string, found bool) {
	if i := strings.LastIndex(text, separator); i >= 0 {
		return text[:i], text[i+len(separator):], true
	}
	return text, "", false
}
