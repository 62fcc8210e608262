package scenarios

import (
	"math"
	"time"

	"dwellcast/stations"
)

// CrewBudget is the work that stops and reloads bring when the line runs without pause at its undisturbed rate: the most
// that an average hour asks for.
type CrewBudget struct {
	// Attendants is 0 for a crew without limit.
	Attendants int
	Calls      []CallBudget
	// Seconds of work per hour, reaction included.
	Seconds float64
	// Load is the share of the attendants' time; 0 for a crew without limit.
	Load float64
}

// CallBudget is one reason for which an attendant is called.
type CallBudget struct {
	Station int
	What    string
	Reload  bool
	// PerHour is the expected number of calls in an hour of running.
	PerHour float64
	// Takes is the mean time of one, reaction included.
	Takes time.Duration
	// Attended is false for what clears or fills by itself.
	Attended bool
}

// Seconds of attendant's work per hour.
func (c CallBudget) Seconds() float64 {
	if !c.Attended {
		return 0
	}
	return c.PerHour * c.Takes.Seconds()
}

// Share is the part of one attendant's time.
func (c CallBudget) Share() float64 { return c.Seconds() / 3600 }

func crewOf(b *Budget) CrewBudget {
	crew := CrewBudget{Attendants: b.Line.Crew.Attendants}
	if math.IsInf(b.Rate, 1) {
		return crew
	}
	b.each(func(s *SectionBudget, st *StationBudget) {
		crew.Calls = append(crew.Calls, callsOf(b, s, st)...)
	})
	for _, call := range crew.Calls {
		crew.Seconds += call.Seconds()
	}
	if crew.Attendants > 0 {
		crew.Load = crew.Seconds / 3600 / float64(crew.Attendants)
	}
	return crew
}

// callsOf lists the calls of one station.
func callsOf(b *Budget, s *SectionBudget, st *StationBudget) []CallBudget {
	spec := &b.Line.Stations[st.Station]
	reaction := b.Line.Crew.Reaction.Mean()
	var calls []CallBudget
	add := func(what string, reload bool, perHour float64, takes time.Duration, attended bool) {
		if attended {
			takes += reaction
		}
		calls = append(calls, CallBudget{st.Station, what, reload, perHour, takes, attended})
	}
	for i := range spec.Stops {
		stop := &spec.Stops[i]
		add(stop.Cause, false, stopsPerHour(b, s, st, stop), stop.Clear.Mean(), !stop.Unattended)
	}
	if stop := spec.Miss.Stop; stop != nil && spec.Miss.Tries != stations.Endless {
		given := math.Pow(spec.Miss.Chance, float64(max(spec.Miss.Tries, 1)))
		add(stop.Cause, false, b.Rate*given, stop.Clear.Mean(), !stop.Unattended)
	}
	for _, m := range spec.Materials {
		if m.Reload > 0 {
			add(m.Name, true, b.Rate/float64(m.Reload), m.Takes.Mean(), !m.Unattended)
		}
	}
	return calls
}

// stopsPerHour is the expected number of stops of one cause in an hour of running: per carton, per time in which the station
// works (the index included), or per clock time between clearing and stop.
func stopsPerHour(b *Budget, s *SectionBudget, st *StationBudget, stop *stations.Stop) float64 {
	switch stop.Trigger {
	case stations.ByCartons:
		if stop.Acts != nil {
			return b.Rate / stop.Acts.Mean()
		}
		return b.Rate * stop.Chance
	case stations.ByRunning:
		return runningPerHour(b, s, st).Seconds() / stop.Every.Mean().Seconds()
	}
	apart := stop.Every.Mean() + stop.Clear.Mean()
	if !stop.Unattended {
		apart += b.Line.Crew.Reaction.Mean()
	}
	clocks := 1
	if s.Conveyor < 0 {
		clocks = s.Cartons
	}
	return float64(clocks) * 3600 / apart.Seconds()
}

// runningPerHour is how long a station works in an hour, its parallel units summed.
func runningPerHour(b *Budget, s *SectionBudget, st *StationBudget) time.Duration {
	if s.Conveyor < 0 {
		return time.Duration(b.Rate * float64(st.Act))
	}
	return time.Duration(b.Rate / float64(s.Cartons) * float64(s.Index+st.Act))
}
