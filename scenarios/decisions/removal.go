package decisions

import (
	"slices"

	"dwellcast/scenarios"
	"dwellcast/sim/random"
	"dwellcast/stations"
)

// removal is a cause of loss and how to leave it out. Removals of one line can all be made, in any order.
type removal struct {
	Worth
	remove func(*stations.Line)
}

// removalsOf lists the causes that cost anything in the forecast and can be left out. A line that fills at the start of a shift,
// and what is left on it at the end, can't.
func removalsOf(line *stations.Line, forecast *scenarios.Forecast) []removal {
	charged := map[[2]string]float64{}
	for _, l := range forecast.Losses {
		charged[[2]string{l.Where, l.Cause}] += l.Cartons.Mean
	}
	var list []removal
	add := func(where, cause, without string, remove func(*stations.Line), causes ...string) {
		var sum float64
		seen := false
		for _, c := range append(causes, cause) {
			x, ok := charged[[2]string{where, c}]
			sum, seen = sum+x, seen || ok
		}
		if seen {
			list = append(list, removal{Worth{Where: where, Cause: cause, Without: without, Charged: sum}, remove})
		}
	}
	named := map[string]bool{}
	for _, w := range line.Shift.Planned {
		if !named[w.Name] {
			named[w.Name] = true
			add("plan", w.Name, "worked through", withoutPlanned(w.Name))
		}
	}
	for i := range line.Stations {
		removalsAt(line, i, add)
	}
	add("conveyor", "master revolution longer than the pace", "a master as fast as its stations", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Revolution, l.Conveyors[k].Release = 0, stations.WhenClear
		}
	})
	add("conveyor", "waits for the next cam zero", "released when all are clear", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Release = stations.WhenClear
		}
	})
	return list
}

// removalsAt lists the causes of one station.
func removalsAt(line *stations.Line, i int, add func(where, cause, without string, remove func(*stations.Line), causes ...string)) {
	st := &line.Stations[i]
	for _, stop := range st.Stops {
		add(st.Name, stop.Cause, "no such stop", func(l *stations.Line) {
			l.Stations[i].Stops = slices.DeleteFunc(l.Stations[i].Stops, func(s stations.Stop) bool { return s.Cause == stop.Cause })
		})
	}
	noMiss := func(l *stations.Line) { l.Stations[i].Miss = stations.Miss{} }
	if st.Miss.Stop != nil {
		add(st.Name, st.Miss.Stop.Cause, "no misses", noMiss, "missed")
	} else {
		add(st.Name, "missed", "no misses", noMiss)
	}
	for _, m := range st.Materials {
		add(st.Name, "waits for "+m.Name, "never runs dry", func(l *stations.Line) {
			l.Stations[i].Materials = slices.DeleteFunc(l.Stations[i].Materials, func(k stations.Material) bool { return k.Name == m.Name })
		})
	}
	add(st.Name, "rejected", "no rejects", func(l *stations.Line) { l.Stations[i].Reject = 0 })
	add(st.Name, "stood too long", "no limit", func(l *stations.Line) { l.Stations[i].StandLimit = 0 })
	if line.Setting > 0 {
		noTime := func(l *stations.Line) {
			for k := range l.Stations[i].Parts {
				l.Stations[i].Parts[k].Time = random.Sampler{}
			}
			l.Stations[i].Away = 0
		}
		add(st.Name, "act longer than the pace", "an act of no time", noTime)
		add(st.Name, "own cycle", "a cycle of no time", noTime)
	}
}

func withoutPlanned(name string) func(*stations.Line) {
	return func(l *stations.Line) {
		l.Shift.Planned = slices.DeleteFunc(l.Shift.Planned, func(w stations.Window) bool { return w.Name == name })
	}
}
