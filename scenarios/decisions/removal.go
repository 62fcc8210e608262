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

// loss is a row of the loss sheet: its kind, the station or -1, and which of its stops, materials or planned stops.
type loss struct {
	kind          stations.ReasonKind
	station, item int
}

// lossOfCause is the row of a cause.
func lossOfCause(c stations.Cause) loss { return loss{c.Kind, c.Station, c.Item} }

// removals collects what costs anything and can be left out.
type removals struct {
	rows map[loss]scenarios.Loss
	list []removal
}

// add notes a row of the sheet, if it is there, and how to leave it out; or else, or in addition, the others that go with it.
func (r *removals) add(l loss, without string, remove func(*stations.Line), more ...loss) {
	var sum float64
	var shown *scenarios.Loss
	for _, one := range append([]loss{l}, more...) {
		row, seen := r.rows[one]
		if !seen {
			continue
		}
		sum += row.Cartons.Mean
		if shown == nil {
			shown = &row
		}
	}
	if shown != nil {
		r.list = append(r.list, removal{Worth{Where: shown.Where, Cause: shown.Cause, Without: without, Planned: l.kind == stations.PlannedStop, Charged: sum}, remove})
	}
}

// removalsOf lists the causes that cost anything in the forecast and can be left out. A line that fills at the start of a shift,
// and what is left on it at the end, can't.
func removalsOf(line *stations.Line, forecast *scenarios.Forecast) []removal {
	r := &removals{rows: map[loss]scenarios.Loss{}}
	for _, l := range forecast.Losses {
		r.rows[lossOfCause(l.Of)] = l
	}
	for i, w := range line.Shift.Planned { // of several of one name the first stands for all
		r.add(loss{stations.PlannedStop, -1, i}, "worked through", withoutPlanned(w.Name))
	}
	for i := range line.Stations {
		r.at(line, i)
	}
	r.add(loss{stations.SlowMaster, -1, 0}, "a master as fast as its stations", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Revolution, l.Conveyors[k].Release = 0, stations.WhenClear
		}
	})
	r.add(loss{stations.CamGate, -1, 0}, "released when all are clear", func(l *stations.Line) {
		for k := range l.Conveyors {
			l.Conveyors[k].Release = stations.WhenClear
		}
	})
	return r.list
}

// at lists the causes of one station.
func (r *removals) at(line *stations.Line, i int) {
	st := &line.Stations[i]
	for k, stop := range st.Stops {
		r.add(loss{stations.Stoppage, i, k}, "no such stop", func(l *stations.Line) {
			l.Stations[i].Stops = slices.DeleteFunc(l.Stations[i].Stops, func(s stations.Stop) bool { return s.Cause == stop.Cause })
		})
	}
	r.add(loss{stations.MissStop, i, 0}, "no misses", func(l *stations.Line) { l.Stations[i].Miss = stations.Miss{} }, loss{stations.Missed, i, 0})
	for k, m := range st.Materials {
		r.add(loss{stations.Reload, i, k}, "never runs dry", func(l *stations.Line) {
			l.Stations[i].Materials = slices.DeleteFunc(l.Stations[i].Materials, func(k stations.Material) bool { return k.Name == m.Name })
		})
	}
	r.add(loss{stations.Rejected, i, 0}, "no rejects", func(l *stations.Line) { l.Stations[i].Reject = 0 })
	r.add(loss{stations.Stood, i, 0}, "no limit", func(l *stations.Line) { l.Stations[i].StandLimit = 0 })
	r.add(loss{stations.Dried, i, 0}, "glue that stays open", func(l *stations.Line) { l.Stations[i].Glue = nil })
	if k := fitting(line, i); k < 1 {
		r.add(loss{stations.SlowAct, i, 0}, "fits the pace", func(l *stations.Line) {
			for p := range l.Stations[i].Parts {
				l.Stations[i].Parts[p].Time = l.Stations[i].Parts[p].Time.Scale(k)
			}
			l.Stations[i].Away = times(l.Stations[i].Away, k)
		})
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
