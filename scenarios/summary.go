package scenarios

import (
	"cmp"
	"slices"
	"time"

	"dwellcast/sim/stats"
	"dwellcast/stations"
)

// forecast turns the sample into the answer.
func (s *sample) forecast(f *File, o Options) *Forecast {
	n := len(s.good)
	out := &Forecast{
		Title: f.Line.Title, File: f.Name, Changes: f.Overrides, Seed: o.Seed, Replications: n, Confidence: o.Confidence,
		Setting: f.Line.Setting, Scheduled: s.length, IdealPerShift: s.ideal,
		SettingShare: s.interval(s.layout.setting, o), MasterShare: s.interval(s.layout.master, o),
		ByCycles: len(f.Line.Sections()) == 1,
		CrewLoad: s.interval(s.layout.crew, o), Attendants: f.Line.Crew.Attendants,
	}
	out.GoodPerShift = s.spread(o)
	out.GoodRate = scale(out.GoodPerShift.Interval, 1/s.length.Hours())
	if f.Target > 0 {
		out.Target = s.target(f.Target, o)
	}
	for i := range f.Line.Stations {
		out.Stations = append(out.Stations, s.station(i, o))
	}
	out.Losses = s.lossSheet(o)
	out.Indicators = s.production(s.ideal).Indicators()
	out.Stops = s.stops(o)
	out.Buffers = s.buffers(o)
	out.Warnings = append(f.Cautions(), s.warnings(out, o)...)
	return out
}

func (s *sample) interval(figure int, o Options) stats.Interval {
	return s.moment[figure].Interval(o.Confidence)
}

// scale multiplies an interval by a positive factor.
func scale(i stats.Interval, factor float64) stats.Interval {
	i.Mean *= factor
	i.Low *= factor
	i.High *= factor
	return i
}

func (s *sample) spread(o Options) Spread {
	sorted := slices.Sorted(slices.Values(s.good))
	return Spread{
		Interval: s.interval(s.layout.good, o),
		SD:       s.moment[s.layout.good].StdDev(),
		P10:      stats.Quantile(sorted, 0.1), P50: stats.Quantile(sorted, 0.5), P90: stats.Quantile(sorted, 0.9),
	}
}

func (s *sample) target(perShift float64, o Options) *Target {
	made := 0
	for _, good := range s.good {
		if good >= perShift {
			made++
		}
	}
	return &Target{PerShift: perShift, Chance: stats.Wilson(made, len(s.good), o.Confidence)}
}

func (s *sample) station(i int, o Options) StationForecast {
	spec := &s.sim.Line.Stations[i]
	n := float64(len(s.good))
	out := StationForecast{Name: spec.Name, Kind: spec.Kind.String(), Units: spec.Units,
		BottleneckShare: s.interval(s.layout.bottleneck+i, o),
		Acts:            float64(*s.total.At(i, stations.Acts)) / n,
		Misses:          float64(*s.total.At(i, stations.Misses)) / n,
		Rejects:         float64(*s.total.At(i, stations.Rejects)) / n,
	}
	for state := range stations.NumStates {
		out.Shares[state] = s.interval(s.layout.state(i, state), o)
	}
	for r, cause := range s.sim.Causes() {
		out.addWait(stations.Starved, cause, s.total.Starved[i*s.layout.reasons+r], n)
		out.addWait(stations.Blocked, cause, s.total.Blocked[i*s.layout.reasons+r], n)
	}
	slices.SortStableFunc(out.Waits, func(a, b Wait) int { return cmp.Compare(b.Minutes, a.Minutes) })
	return out
}

func (out *StationForecast) addWait(state stations.State, cause stations.Cause, ns, n float64) {
	if ns > 0 {
		out.Waits = append(out.Waits, Wait{state, cause.Where, cause.What, ns / float64(time.Minute) / n})
	}
}

// lossSheet lists where the cartons between ideal and good went, in the order of the line.
func (s *sample) lossSheet(o Options) []Loss {
	var sheet []Loss
	for r, cause := range s.sim.Causes() {
		if s.losses[r] == 0 {
			continue
		}
		sheet = append(sheet, Loss{
			Where: cause.Where, Cause: cause.What, Kind: cause.Kind, Of: cause,
			Cartons: s.exact(r, o), Total: s.losses[r],
		})
	}
	return sheet
}

// exact is the interval of a loss around its exact mean, so that the sheet adds up.
func (s *sample) exact(r int, o Options) stats.Interval {
	i := s.interval(s.layout.losses+r, o)
	mean := float64(s.losses[r]) / float64(len(s.good))
	i.Low += mean - i.Mean
	i.High += mean - i.Mean
	i.Mean = mean
	return i
}

func (s *sample) stops(o Options) []StopForecast {
	var list []StopForecast
	n := float64(len(s.good))
	for r, cause := range s.sim.Causes() {
		if cause.Kind.Stands() {
			list = append(list, StopForecast{
				Where: cause.Where, Cause: cause.What, Of: cause, Reload: cause.Kind == stations.Reload,
				PerShift: s.interval(s.layout.stops+r, o), Seen: int64(s.total.Stops[r]),
				AwaitingMinutes: s.total.Awaited[r] / float64(time.Minute) / n,
				ClearingMinutes: s.total.Cleared[r] / float64(time.Minute) / n,
				CartonsLost:     float64(s.losses[r]) / n,
			})
		}
	}
	return list
}

func (s *sample) buffers(o Options) []BufferForecast {
	var list []BufferForecast
	time := float64(s.length) * float64(len(s.good))
	for k, g := range s.sim.Line.Sections() {
		spec := s.sim.Line.Stations[g.First].Feed.Buffer
		if k == 0 || spec == nil {
			continue
		}
		list = append(list, BufferForecast{
			Before: s.sim.Line.Stations[g.First].Name, Capacity: spec.Capacity,
			MeanContent: s.interval(s.layout.content+k, o),
			EmptyShare:  float64(*s.total.Buffer(k, stations.Empty)) / time,
			FullShare:   float64(*s.total.Buffer(k, stations.Full)) / time,
			MeanWait:    s.meanWait(k),
			WaitedShare: float64(*s.total.Buffer(k, stations.Waited)) / max(1, float64(*s.total.Buffer(k, stations.Through))),
			Through:     float64(*s.total.Buffer(k, stations.Through)) / float64(len(s.good)),
		})
	}
	return list
}

// meanWait is the mean time from entry to exit, by Little's law (1961) from the mean content.
func (s *sample) meanWait(k int) time.Duration {
	through := *s.total.Buffer(k, stations.Through)
	if through == 0 {
		return 0
	}
	return time.Duration(s.total.Content(k) / through)
}
