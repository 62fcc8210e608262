package decisions

import (
	"math"
	"slices"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

// removal is a cause of loss and how to leave it out. Removals of one line can all be made, in any order.
type removal struct {
	Worth
	remove func(*stations.Line)
}

// loss is a row of the loss sheet. Its kind tells it from a row that bears the same words, such as a stop named "missed".
type loss struct {
	kind         stations.ReasonKind
	where, cause string
}

// removalsOf lists the causes that cost anything in the forecast and can be left out. A line that fills at the start of a shift,
// and what is left on it at the end, can't.
func removalsOf(line *stations.Line, forecast *scenarios.Forecast) []removal {
	charged := map[loss]float64{}
	for _, l := range forecast.Losses {
		charged[loss{l.Kind, l.Where, l.Cause}] += l.Cartons.Mean
	}
	var list []removal
	add := func(l loss, without string, remove func(*stations.Line), more ...loss) {
		var sum float64
		seen := false
		for _, one := range append(more, l) {
			x, ok := charged[one]
			sum, seen = sum+x, seen || ok
		}
		if seen {
			list = append(list, removal{Worth{Where: l.where, Cause: l.cause, Without: without, Planned: l.kind == stations.PlannedStop, Charged: sum}, remove})
		}
	}
	named := map[string]bool{}
	for _, w := range line.Shift.Planned {
		if !named[w.Name] {
			named[w.Name] = true
			add(loss{stations.PlannedStop, "plan", w.Name}, "worked through", withoutPlanned(w.Name))
		}
	}
	for i := range line.Stations {
		removalsAt(line, i, add)
	}
	add(loss{stations.SlowMaster, "conveyor", "master revolution longer than the pace"}, "a master as fast as its stations", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Revolution, l.Conveyors[k].Release = 0, stations.WhenClear
		}
	})
	add(loss{stations.CamGate, "conveyor", "waits for the next cam zero"}, "released when all are clear", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Release = stations.WhenClear
		}
	})
	return list
}

// removalsAt lists the causes of one station.
func removalsAt(line *stations.Line, i int, add func(l loss, without string, remove func(*stations.Line), more ...loss)) {
	st := &line.Stations[i]
	for _, stop := range st.Stops {
		add(loss{stations.Stoppage, st.Name, stop.Cause}, "no such stop", func(l *stations.Line) {
			l.Stations[i].Stops = slices.DeleteFunc(l.Stations[i].Stops, func(s stations.Stop) bool { return s.Cause == stop.Cause })
		})
	}
	noMiss := func(l *stations.Line) { l.Stations[i].Miss = stations.Miss{} }
	missed := loss{stations.Missed, st.Name, "missed"}
	if st.Miss.Stop != nil {
		add(loss{stations.MissStop, st.Name, st.Miss.Stop.Cause}, "no misses", noMiss, missed)
	} else {
		add(missed, "no misses", noMiss)
	}
	for _, m := range st.Materials {
		add(loss{stations.Reload, st.Name, "waits for " + m.Name}, "never runs dry", func(l *stations.Line) {
			l.Stations[i].Materials = slices.DeleteFunc(l.Stations[i].Materials, func(k stations.Material) bool { return k.Name == m.Name })
		})
	}
	add(loss{stations.Rejected, st.Name, "rejected"}, "no rejects", func(l *stations.Line) { l.Stations[i].Reject = 0 })
	add(loss{stations.Stood, st.Name, "stood too long"}, "no limit", func(l *stations.Line) { l.Stations[i].StandLimit = 0 })
	if k := fitting(line, i); k < 1 {
		fit := func(l *stations.Line) {
			for p := range l.Stations[i].Parts {
				l.Stations[i].Parts[p].Time = l.Stations[i].Parts[p].Time.Scale(k)
			}
			l.Stations[i].Away = times(l.Stations[i].Away, k)
		}
		add(loss{stations.SlowAct, st.Name, "act longer than the pace"}, "fits the pace", fit)
		add(loss{stations.SlowAct, st.Name, "own cycle"}, "fits the pace", fit)
	}
}

// fitting is how much shorter the act of station i must be to fit the pace, three standard deviations of it included; 1 where it
// does, or where nothing sets a pace.
func fitting(line *stations.Line, i int) float64 {
	st := &line.Stations[i]
	var act, variance float64
	for _, part := range st.Parts {
		act += part.Time.Mean().Seconds()
		variance += part.Time.Variance()
	}
	room := line.Pace().Seconds()
	if c := st.Feed.Conveyor; c >= 0 {
		room -= line.Conveyors[c].Index.Seconds()
	} else {
		room *= float64(st.Units) / float64(line.Lanes)
	}
	act += 3 * math.Sqrt(variance)
	if room <= 0 || act <= room {
		return 1
	}
	return room / act
}

func withoutPlanned(name string) func(*stations.Line) {
	return func(l *stations.Line) {
		l.Shift.Planned = slices.DeleteFunc(l.Shift.Planned, func(w stations.Window) bool { return w.Name == name })
	}
}
