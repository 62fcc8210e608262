package reports

import (
	"io"
	"strconv"

	"dwellcast/scenarios"
	"dwellcast/stations"
)

func forecastCSV(w io.Writer, f *scenarios.Forecast) error {
	s := newSheet()
	s.text("run", "", "title", f.Title, "")
	s.text("run", "", "version", f.Version, "")
	s.text("run", "", "file", f.File, "")
	for _, change := range f.Changes {
		s.text("run", "", "change", change, "")
	}
	if f.Repeat != "" {
		s.text("run", "", "repeat", f.Repeat, "")
	}
	s.text("run", "", "seed", strconv.FormatUint(f.Seed, 10), "")
	s.figure("run", "", "shifts", float64(f.Replications), "1")
	s.figure("run", "", "confidence", f.Confidence, "1")
	s.text("run", "", "interrupted", strconv.FormatBool(f.Interrupted), "")
	csvAnswer(s, f)
	for _, st := range f.Stations {
		csvStation(s, st)
	}
	for _, l := range f.Losses {
		s.interval("loss", l.Where, l.Cause, l.Cartons, "cartons/shift")
	}
	for _, stop := range f.Stops {
		csvStop(s, stop)
	}
	for _, b := range f.Buffers {
		csvBuffer(s, b)
	}
	s.interval("crew", "", "load", f.CrewLoad, "1")
	s.warnings(f.Warnings)
	s.text("caution", "", "text", caution, "")
	return s.writeTo(w)
}

func csvAnswer(s *sheet, f *scenarios.Forecast) {
	s.figure("line", "", "setting", f.Setting, "cartons/h")
	s.figure("line", "", "scheduled", f.Scheduled.Seconds(), "s")
	s.interval("line", "", "good_rate", f.GoodRate, "cartons/h")
	s.interval("line", "", "good_per_shift", f.GoodPerShift.Interval, "cartons/shift")
	for _, q := range []struct {
		item  string
		value float64
	}{{"p10", f.GoodPerShift.P10}, {"p50", f.GoodPerShift.P50}, {"p90", f.GoodPerShift.P90}, {"sd", f.GoodPerShift.SD}} {
		s.figure("line", "", "good_per_shift_"+q.item, q.value, "cartons/shift")
	}
	s.figure("line", "", "ideal_per_shift", f.IdealPerShift, "cartons/shift")
	if f.Target != nil {
		s.figure("line", "", "target", f.Target.PerShift, "cartons/shift")
		s.interval("line", "", "target_chance", f.Target.Chance, "1")
	}
	s.figure("line", "", "availability", f.Indicators.Availability, "1")
	s.figure("line", "", "effectiveness", f.Indicators.Effectiveness, "1")
	s.figure("line", "", "quality", f.Indicators.Quality, "1")
	s.figure("line", "", "oee", f.Indicators.OEE, "1")
	s.interval("line", "", "setting_share", f.SettingShare, "1")
	s.interval("line", "", "master_share", f.MasterShare, "1")
	if st := f.Steady; st != nil {
		s.figure("steady", "", "length", st.Length.Seconds(), "s")
		s.figure("steady", "", "warm_up", st.WarmUp.Seconds(), "s")
		s.figure("steady", "", "batches", float64(st.Batches), "1")
		s.figure("steady", "", "batch_length", st.BatchLength.Seconds(), "s")
	}
}

func csvStation(s *sheet, st scenarios.StationForecast) {
	s.text("station", st.Name, "kind", st.Kind, "")
	s.figure("station", st.Name, "units", float64(st.Units), "1")
	for state := range stations.NumStates {
		s.interval("station", st.Name, state.String(), st.Shares[state], "1")
	}
	s.interval("station", st.Name, "bottleneck_share", st.BottleneckShare, "1")
	s.figure("station", st.Name, "acts", st.Acts, "1/shift")
	s.figure("station", st.Name, "misses", st.Misses, "1/shift")
	s.figure("station", st.Name, "rejects", st.Rejects, "cartons/shift")
	for _, wait := range st.Waits {
		s.figure("wait", st.Name, wait.State.String()+": "+wait.Where+"/"+wait.What, wait.Minutes, "min/shift")
	}
}

func csvStop(s *sheet, stop scenarios.StopForecast) {
	section := "stop"
	if stop.Reload {
		section = "reload"
	}
	name := stop.Where + "/" + stop.Cause
	s.interval(section, name, "per_shift", stop.PerShift, "1/shift")
	s.figure(section, name, "seen", float64(stop.Seen), "1")
	s.figure(section, name, "awaiting", stop.AwaitingMinutes, "min/shift")
	s.figure(section, name, "clearing", stop.ClearingMinutes, "min/shift")
	s.figure(section, name, "cartons_lost", stop.CartonsLost, "cartons/shift")
}

func csvBuffer(s *sheet, b scenarios.BufferForecast) {
	if b.Capacity == stations.Unlimited {
		s.text("buffer", b.Before, "capacity", "no limit", "cartons")
	} else {
		s.figure("buffer", b.Before, "capacity", float64(b.Capacity), "cartons")
	}
	s.interval("buffer", b.Before, "mean_content", b.MeanContent, "cartons")
	s.figure("buffer", b.Before, "empty_share", b.EmptyShare, "1")
	s.figure("buffer", b.Before, "full_share", b.FullShare, "1")
	s.figure("buffer", b.Before, "mean_wait", b.MeanWait.Seconds(), "s")
	s.figure("buffer", b.Before, "waited_share", b.WaitedShare, "1")
	s.figure("buffer", b.Before, "through", b.Through, "cartons/shift")
}
