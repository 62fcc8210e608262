package scenarios

import (
	"fmt"
	"math"
	"time"

	"dwellcast/scenarios/quantity"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// warningsOf lists what is legal in a line but odd.
func warningsOf(b *Budget) []Warning {
	w := &oddities{budget: b}
	w.setting()
	w.order()
	b.each(func(s *SectionBudget, st *StationBudget) {
		w.buffer(s, st)
		w.stand(s, st)
		w.materials(st)
		w.rejects(st)
	})
	w.rareStops()
	w.crew()
	w.plan()
	w.nothing()
	return w.list
}

// oddities collects warnings on a budget.
type oddities struct {
	budget *Budget
	list   []Warning
}

func (w *oddities) add(about, format string, values ...any) {
	w.list = append(w.list, Warning{About: about, Text: fmt.Sprintf(format, values...)})
}

func (w *oddities) name(station int) string { return w.budget.Line.Stations[station].Name }

func (w *oddities) setting() {
	b := w.budget
	if b.Pace == 0 || math.IsInf(b.Ceiling, 1) {
		return
	}
	switch {
	case b.Line.Setting > b.Ceiling*1.000001 && b.Next >= 0:
		w.add("setting", "the setting of %s is beyond %s, the most that %s allows", quantity.FormatRate(b.Line.Setting),
			quantity.FormatRate(b.Ceiling), w.name(b.Next))
	case b.Line.Setting > b.Ceiling*1.000001:
		w.add("setting", "the setting of %s is beyond %s, the most that the master allows", quantity.FormatRate(b.Line.Setting),
			quantity.FormatRate(b.Ceiling))
	case b.Limit.Kind == ByCamZero:
		w.add("setting", "the pace period of %s is no whole number of revolutions, so each cycle waits for the next cam zero",
			quantity.FormatDuration(b.Pace))
	}
}

// order finds kinds of stations in an order that makes no carton.
func (w *oddities) order() {
	sealed, filled, off := "", "", ""
	for _, st := range w.budget.Line.Stations {
		about := "station " + st.Name
		switch {
		case off != "":
			w.add(about, "%s comes after %s has offloaded the carton", st.Name, off)
		case st.Kind == stations.Erect && (sealed != "" || filled != ""):
			w.add(about, "%s erects cartons that %s has already worked on", st.Name, filled+sealed)
		case st.Kind == stations.Fill && sealed != "":
			w.add(about, "%s fills a carton that %s has already sealed", st.Name, sealed)
		}
		switch st.Kind {
		case stations.Fill:
			filled = st.Name
		case stations.Seal:
			sealed, filled = st.Name, ""
		case stations.Offload:
			off = st.Name
		}
	}
}

func (w *oddities) buffer(s *SectionBudget, st *StationBudget) {
	spec := &w.budget.Line.Stations[st.Station]
	buffer := spec.Feed.Buffer
	if buffer == nil || buffer.Capacity == stations.Unlimited {
		return
	}
	about := "buffer " + spec.Name
	if lanes := w.budget.Line.Lanes; buffer.Capacity < lanes && lanes > 1 {
		w.add(about, "the buffer before %s has room for %s, fewer than the %d lanes that feed it", spec.Name,
			quantity.FormatCount(int64(buffer.Capacity), "carton"), lanes)
	}
	if through := perHour(buffer.Capacity, buffer.Transit); buffer.Transit > 0 && through < w.budget.Rate {
		w.add(about, "a transit of %s with room for %s lets at most %s through to %s", quantity.FormatDuration(buffer.Transit),
			quantity.FormatCount(int64(buffer.Capacity), "carton"), quantity.FormatRate(through), spec.Name)
	}
}

// stand finds a carton that would be scrapped in a cycle that nothing disturbs.
func (w *oddities) stand(s *SectionBudget, st *StationBudget) {
	spec := &w.budget.Line.Stations[st.Station]
	stands := st.Act
	if s.Conveyor >= 0 {
		stands = st.Cycle - s.Index
	}
	if spec.StandLimit > 0 && spec.StandLimit < stands {
		w.add("station "+spec.Name, "a carton may stand in %s for %s, but an undisturbed cycle keeps it there for %s: all are scrapped",
			spec.Name, quantity.FormatDuration(spec.StandLimit), quantity.FormatDuration(stands.Round(time.Millisecond)))
	}
}

// materials finds a magazine that runs dry before an attendant who is free could fill it.
func (w *oddities) materials(st *StationBudget) {
	b := w.budget
	spec := &b.Line.Stations[st.Station]
	for _, m := range spec.Materials {
		takes := m.Takes.Mean()
		if !m.Unattended {
			takes += b.Line.Crew.Reaction.Mean()
		}
		if math.IsInf(b.Rate, 1) || m.Low <= 0 {
			continue
		}
		lasts := time.Duration(float64(m.Low) * 3600e9 / b.Rate)
		if lasts < takes {
			w.add("station "+spec.Name, "%s of %s run out: called for at %d, they last %s, but a reload takes %s", m.Name, spec.Name,
				m.Low, quantity.FormatDuration(lasts.Round(time.Second)), quantity.FormatDuration(takes.Round(time.Second)))
		}
	}
}

// rejects finds an ejector with nothing to eject, and rejects in such number that they are hardly meant.
func (w *oddities) rejects(st *StationBudget) {
	all := w.budget.Line.Stations
	spec := &all[st.Station]
	about := "station " + spec.Name
	if spec.Reject >= 0.5 {
		w.add(about, "%s rejects %s of its cartons", spec.Name, quantity.FormatRatio(spec.Reject))
	}
	if !spec.Ejects {
		return
	}
	for _, before := range all[:st.Station+1] {
		missed := before.Miss.Chance > 0 && before.Miss.Tries != stations.Endless && before.Miss.Stop == nil && before.Kind != stations.Erect
		if before.Reject > 0 || missed {
			return
		}
	}
	w.add(about, "%s ejects rejects, but no station up to it rejects a carton", spec.Name)
}

// rareShifts is the number of shifts in which a stop that is not rare happens once.
const rareShifts = 100

func (w *oddities) rareStops() {
	b := w.budget
	hours := (b.Line.Shift.Length - b.PlannedTime).Hours()
	for _, call := range b.Crew.Calls {
		perShift := call.PerHour * hours
		if perShift > 0 && perShift < 1.0/rareShifts {
			w.add("stop "+w.name(call.Station)+"/"+call.What, "%s of %s comes once in %.0f shifts: a run of fewer will hardly show it",
				call.What, w.name(call.Station), 1/perShift)
		}
	}
}

func (w *oddities) crew() {
	c := w.budget.Crew
	switch {
	case c.Attendants == 0:
	case c.Load > 1:
		w.add("crew", "stops and reloads at full rate ask for %.0f %% of the time of %s: the line will wait for the crew", 100*c.Load,
			quantity.FormatCount(int64(c.Attendants), "attendant"))
	case c.Load > 0.8:
		w.add("crew", "stops and reloads at full rate take %.0f %% of the time of %s: stops will often wait for another to be cleared",
			100*c.Load, quantity.FormatCount(int64(c.Attendants), "attendant"))
	}
}

func (w *oddities) plan() {
	b := w.budget
	if b.PlannedTime*2 > b.Line.Shift.Length {
		w.add("shift", "%s of the %s of the shift are planned stops", quantity.FormatDuration(b.PlannedTime),
			quantity.FormatDuration(b.Line.Shift.Length))
	}
}

// nothing finds what is sure to let not one good carton out.
func (w *oddities) nothing() {
	for i := range w.budget.Line.Stations {
		st := &w.budget.Line.Stations[i]
		if st.Reject == 1 {
			w.add("station "+st.Name, "rejects every carton: not one good carton comes out")
		}
		var least, most time.Duration
		for _, part := range st.Parts {
			least += part.Time.Min()
			most = min(most+part.Time.Max(), random.Longest)
		}
		for _, s := range st.Stops {
			switch longest := s.Every.Max(); {
			case !s.Repeat || longest == random.Longest:
			case longest <= least:
				w.add("stop "+st.Name+"/"+s.Cause, "%s comes at least every %s and makes the act of %s start again: none ever ends, and not one good carton comes out", s.Cause,
					quantity.FormatDuration(longest), quantity.FormatDuration(least))
			case !s.Afresh && longest <= most:
				w.add("stop "+st.Name+"/"+s.Cause, "%s comes at least every %s and makes the act start again with the same time: one longer than that never ends; after: again draws another time", s.Cause,
					quantity.FormatDuration(longest))
			}
		}
	}
}
