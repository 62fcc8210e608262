package decisions

import (
	"fmt"
	"math"
	"time"

	"dwellcast/stations"
)

// speed is something that takes time, and can be made faster.
type speed struct {
	name string
	// ours says that the name is our own words, and not one out of the file.
	ours bool
	// holder is who the active-period share would charge with it: a station, the setting, the master, or nobody.
	holder Holder
	// scale makes every time of it k times as long.
	scale func(l *stations.Line, k float64)
}

// speedsOf lists all that takes time in a line, each time in exactly one of them, so that their elasticities sum to that of the
// shift. Planned time is no speed.
func speedsOf(line *stations.Line) []speed {
	var list []speed
	if line.Setting > 0 {
		list = append(list, speed{"pace of the setting", true, SettingHolds, func(l *stations.Line, k float64) { l.Setting /= k }})
	}
	for i, c := range line.Conveyors {
		name := "conveyor (index)"
		if c.Revolution > 0 {
			name = "conveyor (index and revolution)"
		}
		if len(line.Conveyors) > 1 {
			name = fmt.Sprintf("%s %d", name, i+1)
		}
		list = append(list, speed{name, true, MasterHolds, func(l *stations.Line, k float64) {
			l.Conveyors[i].Index, l.Conveyors[i].Revolution = times(l.Conveyors[i].Index, k), times(l.Conveyors[i].Revolution, k)
		}})
	}
	for i := range line.Stations {
		if b := line.Stations[i].Feed.Buffer; i > 0 && b != nil && b.Transit > 0 {
			list = append(list, speed{"buffer before " + line.Stations[i].Name + " (transit)", true, Holder{}, func(l *stations.Line, k float64) {
				l.Stations[i].Feed.Buffer.Transit = times(l.Stations[i].Feed.Buffer.Transit, k)
			}})
		}
		list = append(list, speed{line.Stations[i].Name, false, StationHolds(i, line.Stations[i].Name), func(l *stations.Line, k float64) { scaleStation(&l.Stations[i], k) }})
	}
	if line.Crew.Reaction.Mean() > 0 {
		list = append(list, speed{"crew (reaction)", true, Holder{}, func(l *stations.Line, k float64) { l.Crew.Reaction = l.Crew.Reaction.Scale(k) }})
	}
	return list
}

// scaleStation makes every time of a station k times as long: acts, intervals between stops by time, clearing, reloading.
func scaleStation(st *stations.Station, k float64) {
	for i := range st.Parts {
		st.Parts[i].Time = st.Parts[i].Time.Scale(k)
	}
	for i := range st.Stops {
		scaleStop(&st.Stops[i], k)
	}
	if st.Miss.Stop != nil {
		scaleStop(st.Miss.Stop, k)
	}
	for i := range st.Materials {
		st.Materials[i].Takes = st.Materials[i].Takes.Scale(k)
	}
	st.Away, st.StandLimit = times(st.Away, k), times(st.StandLimit, k)
	if st.Glue != nil {
		st.Glue.Open = times(st.Glue.Open, k)
	}
}

func scaleStop(stop *stations.Stop, k float64) {
	stop.Clear = stop.Clear.Scale(k)
	if stop.Trigger != stations.ByCartons {
		stop.Every = stop.Every.Scale(k)
	}
}

// scaleShift makes the shift, and all that is planned in it, k times as long.
func scaleShift(l *stations.Line, k float64) {
	l.Shift.Length = times(l.Shift.Length, k)
	for i := range l.Shift.Planned {
		w := &l.Shift.Planned[i]
		w.From, w.To = times(w.From, k), times(w.To, k)
	}
}

// times is a length of time k times as long, to the nanosecond.
func times(d time.Duration, k float64) time.Duration {
	return time.Duration(math.Round(float64(float64(d) * k)))
}
