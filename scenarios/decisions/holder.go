package decisions

import "dwellcast/scenarios"

// SettingHolds and MasterHolds stand for the setting and the master where a station's name would stand.
const (
	SettingHolds = "the setting"
	MasterHolds  = "the master"
)

// holder is who holds the bottleneck, and for which share of the bottleneck.
type holder struct {
	name  string
	share float64
}

// topHolder is who holds most of the bottleneck; among equals the setting, then the first.
func topHolder(r *scenarios.Forecast) holder {
	top := holder{SettingHolds, r.SettingShare.Mean}
	if r.MasterShare.Mean > top.share {
		top = holder{MasterHolds, r.MasterShare.Mean}
	}
	for _, st := range r.Stations {
		if st.BottleneckShare.Mean > top.share {
			top = holder{st.Name, st.BottleneckShare.Mean}
		}
	}
	return top
}

// isOneConveyor says that all stations of a line stand along one conveyor.
func isOneConveyor(f *scenarios.File) bool {
	for i := range f.Line.Stations {
		if f.Line.Stations[i].Feed.Conveyor < 0 {
			return false
		}
	}
	return len(f.Line.Conveyors) == 1
}
