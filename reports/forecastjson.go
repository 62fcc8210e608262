package reports

import (
	"io"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

func forecastJSON(w io.Writer, f *scenarios.Forecast) error {
	about := func(name string) []string { return warningsAbout(f.Warnings, name) }
	g := f.GoodPerShift
	out := jsonForecast{
		Schema: forecastSchema, Title: f.Title, Version: f.Version, File: f.File, Changes: f.Changes, Repeat: f.Repeat, Seed: f.Seed, Replications: f.Replications,
		Interrupted: f.Interrupted, Confidence: f.Confidence, Setting: f.Setting, ScheduledSeconds: f.Scheduled.Seconds(),
		GoodRate:      jsonFigure{jsonOf(f.GoodRate), about("good_rate")},
		GoodPerShift:  jsonSpread{jsonOf(g.Interval), number(g.P10), number(g.P50), number(g.P90), number(g.SD), about("good_per_shift")},
		IdealPerShift: number(f.IdealPerShift),
		SharesOf:      map[bool]string{false: "time", true: "cycles"}[f.ByCycles],
		SettingShare:  number(f.SettingShare.Mean), SettingInterval: jsonOf(f.SettingShare),
		MasterShare: number(f.MasterShare.Mean), MasterInterval: jsonOf(f.MasterShare),
		Stations: []jsonStation{}, Losses: []jsonLoss{}, Stops: []jsonStop{}, Buffers: []jsonBuffer{},
		Attendants: f.Attendants, CrewLoad: number(f.CrewLoad.Mean), CrewLoadInterval: jsonOf(f.CrewLoad),
		Warnings: jsonWarnings(f.Warnings), SafetyCaution: caution,
	}
	if f.Target != nil {
		out.Target = &jsonTarget{number(f.Target.PerShift), jsonOf(f.Target.Chance), about("target")}
	}
	i := f.Indicators
	out.Indicators = jsonOEE{number(i.Availability), number(i.Effectiveness), number(i.Quality), number(i.OEE)}
	if s := f.Steady; s != nil {
		out.Steady = &jsonSteady{s.Length.Seconds(), s.WarmUp.Seconds(), s.WarmUpGiven, s.Batches, s.BatchLength.Seconds()}
	}
	for _, st := range f.Stations {
		out.Stations = append(out.Stations, stationJSON(st, about("station "+st.Name)))
	}
	for _, l := range f.Losses {
		out.Losses = append(out.Losses, jsonLoss{l.Where, l.Cause, number(l.Cartons.Mean), jsonOf(l.Cartons), l.Total,
			about("loss " + l.Where + "/" + l.Cause)})
	}
	for _, s := range f.Stops {
		out.Stops = append(out.Stops, jsonStop{s.Where, s.Cause, s.Reload, jsonOf(s.PerShift), s.Seen, number(s.AwaitingMinutes),
			number(s.ClearingMinutes), number(s.CartonsLost), about("stop " + s.Where + "/" + s.Cause)})
	}
	for _, b := range f.Buffers {
		out.Buffers = append(out.Buffers, bufferJSON(b, about("buffer "+b.Before)))
	}
	return writeJSON(w, out)
}

func stationJSON(st scenarios.StationForecast, warnings []string) jsonStation {
	out := jsonStation{
		Name: st.Name, Kind: st.Kind, Units: st.Units,
		Shares: map[string]number{}, ShareIntervals: map[string]jsonInterval{},
		BottleneckShare: number(st.BottleneckShare.Mean), BottleneckInterval: jsonOf(st.BottleneckShare),
		Acts: number(st.Acts), Misses: number(st.Misses), Rejects: number(st.Rejects), Waits: []jsonWait{}, Warnings: warnings,
	}
	for state := range stations.NumStates {
		out.Shares[state.String()] = number(st.Shares[state].Mean)
		out.ShareIntervals[state.String()] = jsonOf(st.Shares[state])
	}
	for _, wait := range st.Waits {
		out.Waits = append(out.Waits, jsonWait{wait.State.String(), wait.Where, wait.What, number(wait.Minutes)})
	}
	return out
}

func bufferJSON(b scenarios.BufferForecast, warnings []string) jsonBuffer {
	out := jsonBuffer{
		Before: b.Before, MeanContent: jsonOf(b.MeanContent), EmptyShare: number(b.EmptyShare), FullShare: number(b.FullShare),
		MeanWaitSeconds: number(b.MeanWait.Seconds()), WaitedShare: number(b.WaitedShare), Through: number(b.Through),
		Warnings: warnings,
	}
	if b.Capacity != stations.Unlimited {
		out.Capacity = &b.Capacity
	}
	return out
}
