package scenarios

import (
	"cmp"
	"slices"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// defaultShift is the length of a shift where the file gives none.
const defaultShift = 8 * time.Hour

// readShift reads the planned time, and the long run if the file asks for one.
func (r *lineReader) readShift(shift, run *document.Node) {
	r.line.Shift.Length = defaultShift
	f := shift.Map(&r.p)
	if n := f.Take("length"); n != nil {
		r.line.Shift.Length = n.PositiveDuration(&r.p, document.Limit{Min: "1 s"}, document.Limit{Max: "744 h", Hint: "for long-run figures write run: {length: 1000 h}"})
	}
	planned := r.readPlanned(f)
	f.Done()
	if run != nil {
		r.readRun(run, planned)
	}
}

// plannedStop is a planned stop and where it was written.
type plannedStop struct {
	stations.Window
	node *document.Node
}

// readPlanned reads start-up, breaks and cleaning, and lays them into the shift.
func (r *lineReader) readPlanned(f *document.Fields) []plannedStop {
	var planned []plannedStop
	length := r.line.Shift.Length
	add := func(n *document.Node, name string, from, lasts time.Duration) {
		if lasts <= 0 || length <= 0 {
			return
		}
		if from+lasts > length {
			r.p.Add(n, "reaches beyond the shift of "+quantity.FormatDuration(length), "make it shorter, or the shift longer")
			return
		}
		planned = append(planned, plannedStop{stations.Window{Name: name, From: from, To: from + lasts}, n})
	}
	startUp := f.Take("start_up")
	add(startUp, "start-up", 0, startUp.Duration(&r.p))
	for _, n := range f.Take("breaks").List(&r.p) {
		b := n.Map(&r.p)
		name := "break"
		if given := b.Take("name"); given != nil {
			name = r.name(given)
		}
		add(n, name, b.Require("after", "4 h").Duration(&r.p), b.Require("length", "20 min").PositiveDuration(&r.p))
		b.Done()
	}
	cleaning := f.Take("cleaning")
	lasts := cleaning.Duration(&r.p)
	add(cleaning, "cleaning", max(0, length-lasts), lasts)
	r.layPlanned(f.Node(), planned)
	return planned
}

// layPlanned puts planned stops in order, and reports those that overlap or leave no time to run.
func (r *lineReader) layPlanned(shift *document.Node, planned []plannedStop) {
	slices.SortStableFunc(planned, func(a, b plannedStop) int { return cmp.Compare(a.From, b.From) })
	left := r.line.Shift.Length
	for i, stop := range planned {
		if i > 0 && stop.From < planned[i-1].To {
			r.p.Add(stop.node, "overlaps the "+planned[i-1].Name+", which ends "+quantity.FormatDuration(planned[i-1].To)+" into the shift",
				"after counts from the start of the shift; make them follow one another")
		}
		left -= stop.To - stop.From
		r.line.Shift.Planned = append(r.line.Shift.Planned, stop.Window)
	}
	if left <= 0 && len(planned) > 0 {
		r.p.Add(shift, "planned stops leave no time to run", "make the stops shorter, or the shift longer")
	}
}

// defaultBatches is the number of batches where the file gives none; 20 is common practice (Schmeiser 1982 advises 10 to 30).
const defaultBatches = 20

// readRun reads what a long run is to be like. Figures per shift are then long-run figures for the length of a shift.
func (r *lineReader) readRun(n *document.Node, planned []plannedStop) {
	f := n.Map(&r.p)
	spec := &SteadySpec{Batches: defaultBatches, Shift: r.line.Shift.Length}
	spec.Length = f.Require("length", "200 h").PositiveDuration(&r.p, document.Limit{Min: "1 min"}, document.Limit{Max: "10 years", Hint: "more shows no more: give a shorter run"})
	if warmUp := f.Take("warm_up"); warmUp != nil && warmUp.Raw() != "auto" {
		spec.WarmUp = warmUp.PositiveDuration(&r.p, document.Limit{Above: "0 s", Hint: "leave warm_up out to have it found"})
		if spec.WarmUp >= spec.Length && spec.Length > 0 {
			r.p.Add(warmUp, "is not shorter than the run of "+quantity.FormatDuration(spec.Length), "a run is counted from its warm-up on")
		}
	}
	if batches := f.Take("batches"); batches != nil {
		spec.Batches = batches.Count(&r.p, document.Limit{Min: "2", Max: "1000"})
	}
	f.Done()
	for _, stop := range planned {
		r.p.Add(stop.node, "is a planned stop, and a long run has none", "take out run for figures of shifts, or the planned stops for long-run figures")
	}
	r.file.Steady = spec
	r.line.Shift = stations.Shift{Length: spec.Length}
}

// readCrew reads who clears stops and reloads. Without it there is always somebody free, and at once.
func (r *lineReader) readCrew(n *document.Node) {
	f := n.Map(&r.p)
	attendants := f.Require("attendants", "1")
	if attendants != nil && attendants.Raw() != unlimited {
		r.line.Crew.Attendants = attendants.Count(&r.p, document.Limit{Min: "1", Hint: "write a number of 1 or more, or unlimited if there is always one free"},
			document.Limit{Max: "1000"})
	}
	r.line.Crew.Reaction = r.time(f.Take("reaction"), upTo(8*time.Hour))
	f.Done()
}

// unlimited is the word for a number without a limit.
const unlimited = "unlimited"
