package decisions

import (
	"dwellcast/scenarios"
	"dwellcast/sim/stats"
)

// Holder is who may hold the bottleneck: a station, the setting or the master. The zero value is nobody.
type Holder struct {
	Kind HolderKind
	// Station is the index of the station, if it is one.
	Station int
	// Name is for a reader; it tells no holder from another, as a station may be called anything.
	Name string
}

// HolderKind is what sort of holder one is.
type HolderKind uint8

// The sorts of holder.
const (
	NoHolder HolderKind = iota
	AStation
	TheSetting
	TheMaster
)

// SettingHolds and MasterHolds are the holders that are no station.
var (
	SettingHolds = Holder{Kind: TheSetting, Name: "the setting"}
	MasterHolds  = Holder{Kind: TheMaster, Name: "the master"}
)

// StationHolds is the holder that is the station of that index and name.
func StationHolds(i int, name string) Holder { return Holder{AStation, i, name} }

// Nobody says that there is no holder.
func (h Holder) Nobody() bool { return h.Kind == NoHolder }

// String is the name.
func (h Holder) String() string { return h.Name }

// shareOf is the holder's share of the bottleneck.
func (h Holder) shareOf(r *scenarios.Forecast) stats.Interval {
	switch h.Kind {
	case TheSetting:
		return r.SettingShare
	case TheMaster:
		return r.MasterShare
	case AStation:
		return r.Stations[h.Station].BottleneckShare
	}
	return stats.MeanInterval(nil, r.Confidence)
}

// topHolder is who holds most of the bottleneck, and how much of it; among equals the setting, then the first.
func topHolder(r *scenarios.Forecast) (Holder, float64) {
	top := SettingHolds
	candidates := []Holder{MasterHolds}
	for i, st := range r.Stations {
		candidates = append(candidates, StationHolds(i, st.Name))
	}
	for _, h := range candidates {
		if h.shareOf(r).Mean > top.shareOf(r).Mean {
			top = h
		}
	}
	return top, top.shareOf(r).Mean
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
